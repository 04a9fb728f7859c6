"""``kappa@1``: how far two people agree about the same places beyond what chance alone would give.

Cohen's kappa (Educational and Psychological Measurement 20, 1960): (po − pe) / (1 − pe), po the share of places on
which both say the same, pe the share on which they would by chance, each keeping to how often they say "bad". Its
large-sample standard error is that of J. L. Fleiss, J. Cohen and B. S. Everitt (Psychological Bulletin 72, 1969); the
interval is kappa and so many of it on each side, cut off at −1 and 1.

Where the error comes out as nothing (they never differed, or one of them never said "bad") there is no interval: that
would be certainty from a few places. Where fewer than five of either kind are expected somewhere by chance, the answer
says that the interval is rough (the rule of five, common practice, no source).
"""

import math

from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.inputs import wanted
from inspect_app.rules.probability import confidence_of

INPUTS = {
    "both_bad": wanted("integer"),
    "first_only": wanted("integer"),
    "second_only": wanted("integer"),
    "both_good": wanted("integer"),
    "confidence": wanted("number", least=None),
}
ORDER = ()
NOTHING = 1e-6  # of an error: the root of what floats leave of a difference that is none
FEW = 5.0


def judge(given: dict, system: str) -> dict:
    """``kappa agreement by_chance``, and ``error low high`` where there is an interval. ``not_determinable``: nothing
    was looked at by both (``kappa_none``), or both said the same of every place (``kappa_one_kind``: 0 divided by 0).
    Raises Refused ``confidence_outside``."""
    table = [
        [int(given["both_bad"]), int(given["first_only"])],
        [int(given["second_only"]), int(given["both_good"])],
    ]
    told = kappa(table, confidence_of(given["confidence"]))
    values = {
        name: measured(told[name], "")
        for name in ("kappa", "agreement", "by_chance", "error", "low", "high") if told[name] is not None
    }  # fmt: skip
    if told["kappa"] is None:
        return answer(values, "not_determinable", told["because"])
    return answer(values, None, told["because"])


def kappa(table: list, confidence: float) -> dict:
    """``{"n", "agreement", "by_chance", "kappa", "error", "low", "high", "because"}``; what cannot be said is None.

    ``table[i][j]``: of how many the first said kind i and the second kind j; square, of any number of kinds.
    ``because``: a reason, or None where the interval stands as it is.
    """
    kinds = range(len(table))
    rows = [sum(table[i]) for i in kinds]
    columns = [sum([table[i][j] for i in kinds]) for j in kinds]
    n = sum(rows)
    told: dict = {
        "n": n, "agreement": None, "by_chance": None, "kappa": None, "error": None, "low": None, "high": None,
        "because": None,
    }  # fmt: skip
    if n == 0:
        told["because"] = reason("kappa_none")
        return told
    same = sum([table[i][i] for i in kinds])
    chance = sum([rows[i] * columns[i] for i in kinds])  # of n squared: whole numbers, so that 0 is 0
    told["agreement"], told["by_chance"] = same / n, chance / (n * n)
    if chance == n * n:
        told["because"] = reason("kappa_one_kind", {"n": n})
        return told
    told["kappa"] = (same * n - chance) / (n * n - chance)
    error = _error(table, rows, columns, n, told["agreement"], told["by_chance"])
    if error <= NOTHING:
        told["because"] = reason("kappa_no_interval", {"n": n})
        return told
    reach = _normal(confidence) * error
    told["error"] = error
    told["low"], told["high"] = max(told["kappa"] - reach, -1.0), min(told["kappa"] + reach, 1.0)
    if min([rows[i] * columns[j] / n for i in kinds for j in kinds]) < FEW:
        told["because"] = reason("kappa_rough", {"n": n})
    return told


def _error(table: list, rows: list, columns: list, n: int, same: float, chance: float) -> float:
    """The standard error when kappa need not be 0 (Fleiss, Cohen and Everitt)."""
    kinds = range(len(table))
    total = 0.0
    for i in kinds:
        for j in kinds:
            share = table[i][j] / n
            if i == j:
                total += share * ((1.0 - chance) - (rows[i] + columns[i]) / n * (1.0 - same)) ** 2
            else:
                total += share * ((columns[i] + rows[j]) / n * (1.0 - same)) ** 2
    total -= (same * chance - 2.0 * chance + same) ** 2
    return math.sqrt(max(total, 0.0) / n) / (1.0 - chance) ** 2


def _normal(confidence: float) -> float:
    """How many standard errors on each side hold so much of a normal distribution."""
    low, high = 0.0, 40.0
    while True:
        middle = (low + high) / 2.0
        if not low < middle < high:
            return middle
        if math.erfc(middle / math.sqrt(2.0)) > 1.0 - confidence:
            low = middle
        else:
            high = middle
