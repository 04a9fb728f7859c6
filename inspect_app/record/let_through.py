"""What a plan lets through: how bad a lot may be that still passes 95, 50 and 10 times in 100."""

from inspect_app.rules.risk import defectives_accepted, share_accepted

POINTS = (("95", 0.95), ("50", 0.5), ("10", 0.1))
REMEMBERED = 500
_known: dict = {}  # the same few plans come back for every lot of a job, and each takes a phone some milliseconds


def let_through(n: int, accept: int, lot: int) -> dict:
    """``{"share": {"95", "50", "10"}, "count": {…}}``: the bad share of a long series that passes with that probability
    (binomial, as the standard's own curves are; MIL-STD-105E 4.11), and the largest number of bad in this very ``lot``
    that does with at least that probability (hypergeometric, exact).

    Where every panel of the lot is looked at nothing is left to chance: what passes is what may be found.
    """
    key = (n, accept, lot)
    if key not in _known:
        if len(_known) >= REMEMBERED:
            _known.clear()
        _known[key] = _points(n, accept, lot)
    found = _known[key]
    return {"share": dict(found["share"]), "count": dict(found["count"])}


def _points(n: int, accept: int, lot: int) -> dict:
    if n >= lot > 0:
        most = min(accept, lot)
        return {"share": {name: most / lot for name, _ in POINTS}, "count": {name: most for name, _ in POINTS}}
    return {
        "share": {name: share_accepted(n, accept, chance) for name, chance in POINTS},
        "count": {name: defectives_accepted(lot, n, accept, chance) for name, chance in POINTS},
    }
