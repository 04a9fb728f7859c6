"""``slope@1``: a slope as rise in 12, degrees and percent, against the seam's minimum.

Compared as rise in 12: the codes' rounded percents (1/4:12 is 2.083 %, printed "2 percent"; IBC 1507.4.2) would
let through less. The uncertainty is an angle.
"""

from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.compare import settle
from inspect_app.rules.inputs import wanted
from inspect_app.rules.unit import from_rise, to_rise

INPUTS = {
    "slope": wanted("slope"),
    "minimum": wanted("slope", required=False),
    "uncertainty": wanted("slope", required=False),
}
ORDER = ("slope", "minimum")


def judge(given: dict, system: str) -> dict:
    """``rise degrees percent`` and ``minimum`` where given; a verdict only against a minimum."""
    rise = given["slope"]
    degrees = from_rise(rise, "deg")
    values = {
        "rise": measured(rise, "/12"),
        "degrees": measured(degrees, "deg"),
        "percent": measured(from_rise(rise, "%"), "%"),
    }
    if given["minimum"] is None:
        return answer(values)
    values["minimum"] = measured(given["minimum"], "/12")
    least = most = rise
    if given["uncertainty"]:
        bound = from_rise(given["uncertainty"], "deg")
        values["bound"] = measured(bound, "deg")
        least = to_rise(max(degrees - bound, 0.0), "deg")
        most = to_rise(min(degrees + bound, 89.0), "deg")
    verdict = settle(least, most, given["minimum"], None)
    why = {"pass": None, "fail": reason("slope_too_low"), "too_close": reason("slope_too_close")}[verdict]
    return answer(values, verdict, why)
