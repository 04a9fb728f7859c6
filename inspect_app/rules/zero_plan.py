"""``zero_plan@1``: how many to look at so that finding none bad says with that confidence that fewer are bad.

The least n with which a lot as bad as named would show none with at most the probability that the confidence leaves:
C(N−D, n)/C(N, n) for D bad in a lot of N, (1 − p)ⁿ for a share p of a long series. A share of a lot is the least whole
number that is no smaller share.
"""

import math

from inspect_app.rules.answer import answer, measured
from inspect_app.rules.compare import at_most
from inspect_app.rules.inputs import wanted
from inspect_app.rules.probability import bad_in, confidence_of
from inspect_app.rules.refused import Refused

INPUTS = {
    "defective": wanted("number", above_zero=True),
    "confidence": wanted("number", least=None),
    "lot": wanted("integer", required=False, above_zero=True),
}
ORDER = ()


def judge(given: dict, system: str) -> dict:
    """``n``. ``defective`` below 1 is a share, from 1 on a count in the ``lot``. Raises Refused ``lot_missing``,
    ``not_integer``, ``more_bad_than_lot``, ``out_of_range`` and ``confidence_outside``."""
    bad, confidence = given["defective"], confidence_of(given["confidence"])
    lot = None if given["lot"] is None else int(given["lot"])
    if bad < 1.0:
        return answer({"n": measured(zero_plan(bad, confidence, lot, None), "")})
    if lot is None:
        raise Refused("lot_missing", "lot")
    if bad > lot:
        raise Refused("more_bad_than_lot", "defective")
    if int(bad) != bad:
        raise Refused("not_integer", "defective")
    return answer({"n": measured(zero_plan(None, confidence, lot, int(bad)), "")})


def zero_plan(share: "float | None", confidence: float, lot: "int | None", defectives: "int | None") -> int:
    """The sample for ``defectives`` in a ``lot``, or for a ``share`` (between 0 and 1) of a ``lot`` or of a series
    (``lot`` None)."""
    left = 1.0 - confidence
    if lot is None:
        assert share is not None
        return _of_a_series(share, left)
    if defectives is None:
        assert share is not None
        defectives = bad_in(lot, share)
    return _of_a_lot(lot, defectives, left)


def _of_a_series(share: float, left: float) -> int:
    good = math.log(1.0 - share)
    if good == 0.0:  # too small a share to tell from none
        raise Refused("out_of_range", "defective", None)
    n = max(1, int(math.log(left) / good) - 1)
    while not at_most((1.0 - share) ** n, left):
        n += 1
    return n


def _of_a_lot(lot: int, defectives: int, left: float) -> int:
    if defectives * defectives > lot:  # a few looked at will do: one more at a time
        n, none_found = 0, 1.0
        while n == 0 or not at_most(none_found, left):
            none_found = none_found * float(lot - defectives - n) / float(lot - n)
            n += 1
        return n
    low, high = 1, lot - defectives + 1
    while low < high:
        middle = (low + high) // 2
        if at_most(_none_found(lot, defectives, middle), left):
            high = middle
        else:
            low = middle + 1
    return low


def _none_found(lot: int, defectives: int, n: int) -> float:
    """Each bad one in turn lies outside the sample."""
    chance = 1.0
    for k in range(defectives):
        chance = chance * float(max(lot - n - k, 0)) / float(lot - k)
    return chance
