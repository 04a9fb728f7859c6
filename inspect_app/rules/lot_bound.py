"""``lot_bound@1``: how many bad a lot may still hold, from what was found in a sample of it.

The largest number D with which so few or fewer would be found with more than the probability that the confidence leaves
(hypergeometric, exact, one side). Some tables print the first D that is ruled out, which is one more.
"""

from inspect_app.rules.answer import answer, measured
from inspect_app.rules.compare import at_most
from inspect_app.rules.inputs import wanted
from inspect_app.rules.probability import confidence_of
from inspect_app.rules.refused import Refused
from inspect_app.rules.tail import hypergeometric

INPUTS = {
    "lot": wanted("integer", above_zero=True),
    "n": wanted("integer", above_zero=True),
    "found": wanted("integer"),
    "confidence": wanted("number", least=None),
}
ORDER = ()


def judge(given: dict, system: str) -> dict:
    """``defectives``. Raises Refused ``sample_too_large``, ``found_above_n`` and ``confidence_outside``."""
    lot, n, found = int(given["lot"]), int(given["n"]), int(given["found"])
    if n > lot:
        raise Refused("sample_too_large", "n")
    if found > n:
        raise Refused("found_above_n", "found")
    bad = lot_bound(lot, n, found, confidence_of(given["confidence"]))
    return answer({"defectives": measured(bad, "")})


def lot_bound(lot: int, n: int, found: int, confidence: float) -> int:
    """The largest number of bad not ruled out by ``found`` among ``n`` of a ``lot``; with n = 0 all may be bad."""
    left = 1.0 - confidence
    low, high = found, lot - (n - found)  # what was found is there; what was found good is not bad
    while low < high:
        middle = (low + high + 1) // 2
        if at_most(hypergeometric(lot, n, found, middle)[0], left):
            high = middle - 1
        else:
            low = middle
    return low
