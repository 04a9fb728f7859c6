"""``share_bound@1``: between which shares the bad may be, from what was found among so many looked at.

The exact limits of C. J. Clopper and E. S. Pearson (Biometrika 26, 1934): the high one is the share at which so few or
fewer would be found with the probability left over, the low one at which so many or more would. With two sides each
gets half of what the confidence leaves; with one side the high one gets all of it, and the low one is 0.
"""

from inspect_app.rules.answer import answer, measured
from inspect_app.rules.inputs import wanted
from inspect_app.rules.probability import confidence_of
from inspect_app.rules.refused import Refused
from inspect_app.rules.tail import binomial

INPUTS = {
    "found": wanted("integer"),
    "n": wanted("integer", above_zero=True),
    "confidence": wanted("number", least=None),
    "sides": wanted("integer"),
}
ORDER = ()


def judge(given: dict, system: str) -> dict:
    """``low high``, 0 to 1. Raises Refused ``found_above_n``, ``confidence_outside`` and ``sides_one_or_two``."""
    found, n, sides = int(given["found"]), int(given["n"]), int(given["sides"])
    if found > n:
        raise Refused("found_above_n", "found")
    if sides not in (1, 2):
        raise Refused("sides_one_or_two", "sides")
    low, high = share_bound(found, n, confidence_of(given["confidence"]), sides)
    return answer({"low": measured(low, ""), "high": measured(high, "")})


def share_bound(found: int, n: int, confidence: float, sides: int) -> tuple:
    """``(low, high)`` for ``found`` bad of ``n``; ``confidence`` between 0 and 1, ``sides`` 1 (high alone) or 2."""
    left = (1.0 - confidence) / sides
    high = 1.0 if found >= n else _share_where(n, found, 0, left)
    low = 0.0 if found <= 0 or sides == 1 else _share_where(n, found - 1, 1, left)
    return low, high


def _share_where(n: int, most: int, side: int, probability: float) -> float:
    """The share at which at most ``most`` (side 0) or more (side 1) are found with that ``probability``."""
    low, high = 0.0, 1.0
    while True:
        middle = (low + high) / 2.0
        if not low < middle < high:
            return middle
        beyond = binomial(n, most, middle)[side] < probability
        if beyond == (side == 0):
            high = middle
        else:
            low = middle
