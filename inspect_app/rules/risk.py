"""``risk@1``: with what probability a plan accepts a lot: at most ``accept`` bad among ``n`` looked at.

Binomial for a share of a long series, hypergeometric for so many bad in one lot: the plan's operating characteristic
(MIL-STD-105E, Table X; for a lot by itself its 1.2 says to look at this curve).
"""

from inspect_app.rules.answer import answer, measured
from inspect_app.rules.inputs import wanted
from inspect_app.rules.probability import bad_in, share_of
from inspect_app.rules.refused import Refused
from inspect_app.rules.tail import binomial, hypergeometric

INPUTS = {
    "n": wanted("integer", above_zero=True),
    "accept": wanted("integer"),
    "share": wanted("number", required=False),
    "defectives": wanted("integer", required=False),
    "lot": wanted("integer", required=False, above_zero=True),
}
ORDER = ()


def judge(given: dict, system: str) -> dict:
    """``acceptance``, 0 to 1. Either ``share`` or ``defectives`` in a ``lot``; a share of a lot is so many of it.
    Raises Refused ``one_of missing lot_missing share_outside sample_too_large more_bad_than_lot``."""
    n, accept, share, defectives = int(given["n"]), int(given["accept"]), given["share"], given["defectives"]
    if (share is None) == (defectives is None):
        raise Refused("missing" if share is None else "one_of", "share")
    lot = None if given["lot"] is None else int(given["lot"])
    if lot is not None and n > lot:
        raise Refused("sample_too_large", "n")
    if lot is None and share is not None:
        return answer({"acceptance": measured(acceptance(n, accept, share_of(share, "share")), "")})
    if lot is None:
        raise Refused("lot_missing", "lot")
    bad = int(defectives) if share is None else bad_in(lot, share_of(share, "share"))
    if bad > lot:
        raise Refused("more_bad_than_lot", "defectives")
    chance = acceptance_in_lot(lot, n, accept, bad)
    return answer({"acceptance": measured(chance, "")}, understood={"defectives": bad})


def acceptance(n: int, accept: int, share: float) -> float:
    """The probability of at most ``accept`` bad among ``n`` from a series with so bad a ``share``, 0 to 1."""
    at_most: float = binomial(n, accept, share)[0]
    return at_most


def acceptance_in_lot(lot: int, n: int, accept: int, defectives: int) -> float:
    """The same among ``n`` of a ``lot`` with so many ``defectives`` in it."""
    at_most: float = hypergeometric(lot, n, accept, defectives)[0]
    return at_most


def share_accepted(n: int, accept: int, probability: float) -> float:
    """The bad share that is accepted with that ``probability`` (between 0 and 1); 1.0 where all is accepted."""
    if accept >= n:
        return 1.0
    low, high = 0.0, 1.0
    while True:
        middle = (low + high) / 2.0
        if not low < middle < high:
            return middle
        if acceptance(n, accept, middle) >= probability:
            low = middle
        else:
            high = middle


def defectives_accepted(lot: int, n: int, accept: int, probability: float) -> int:
    """The largest number of bad in a ``lot`` that is still accepted with at least that ``probability``."""
    low, high = 0, lot
    while low < high:
        middle = (low + high + 1) // 2
        if acceptance_in_lot(lot, n, accept, middle) >= probability:
            low = middle
        else:
            high = middle - 1
    return low
