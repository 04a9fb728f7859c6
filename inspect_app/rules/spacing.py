"""``spacing@1``: fastener or clip spacing against the approved spacing of the zone.

The widest gap decides, by simple acceptance: the approved spacing is the target and the reading is a tape's. A count
over a length gives the mean, which the widest gap is never below: too wide a mean fails, a good one alone decides
nothing. The limit comes from the tested assembly; spacing is never scaled from one tested point.
"""

from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import SYSTEMS

INPUTS = {
    "gaps": wanted("lengths", required=False, above_zero=True),
    "count": wanted("integer", required=False),
    "over": wanted("length", required=False, above_zero=True),
    "limit": wanted("length", above_zero=True),
}
ORDER = ("gaps", "over", "limit")


def judge(given: dict, system: str) -> dict:
    """``longest mean limit``: of ``gaps``, or ``mean limit`` of ``count`` fasteners from the first to the last
    over a length."""
    values, widest = told(given, system)
    if not at_most(widest, given["limit"]):
        return answer(values, "fail", reason("gap_too_wide"))
    if given["gaps"] is None:
        return answer(values, "not_determinable", reason("widest_gap_needed"))
    return answer(values, "pass")


def told(given: dict, system: str) -> tuple:
    """``(values, widest)``: what the answer shows, and what stands against the limit."""
    length = SYSTEMS[system]["length"]
    values = {"limit": measured(given["limit"], length)}
    mean = _mean_of_count(given)
    gaps = given["gaps"]
    if gaps is None and mean is None:
        raise Refused("missing", "gaps")
    if gaps is not None:
        total = 0.0
        for gap in gaps:
            total = total + gap
        values["longest"] = measured(max(gaps), length)
        if mean is None:
            mean = total / len(gaps)
    assert mean is not None
    values["mean"] = measured(mean, length)
    return values, mean if gaps is None else max(max(gaps), mean)


def _mean_of_count(given: dict) -> "float | None":
    if given["count"] is None and given["over"] is None:
        return None
    for name in ("count", "over"):
        if given[name] is None:
            raise Refused("missing", name)
    if given["count"] < 2:
        raise Refused("too_few", "count", int(given["count"]))
    return float(given["over"] / (given["count"] - 1.0))
