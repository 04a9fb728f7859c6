"""``head_compared@1``: the head that was found against the one that was specified, over a slot.

Over a slot of width w a flat head of diameter D bears on the two segments outside the slot:
D²/2·acos(w/D) − w/2·√(D² − w²) (plane geometry). Less of it was never tested; more of it, or another form, was not
either: both are against the approval, and what they are worth is the engineer's to say.
"""

import math

from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused

INPUTS = {
    "specified": wanted("length", most_mm=100.0, above_zero=True),
    "found": wanted("length", most_mm=100.0, above_zero=True),
    "slot_width": wanted("length", most_mm=100.0, above_zero=True),
    "tolerance": wanted("length", required=False, most_mm=10.0),
}
ORDER = ("specified", "found", "slot_width")


def judge(given: dict, system: str) -> dict:
    """``ratio`` of the bearing found to the bearing specified; ``tolerance`` of the diameter, none unless said.
    Raises Refused ``head_through_slot`` for a specified head that its slot lets through."""
    width, specified, found = given["slot_width"], given["specified"], given["found"]
    if at_most(specified, width):
        raise Refused("head_through_slot", "specified", None)
    ratio = _bearing(found, width) / _bearing(specified, width)
    values = {"ratio": measured(ratio, "")}
    tolerance = given["tolerance"] or 0.0
    if at_most(found, width):
        return answer(values, "fail", reason("head_falls_through"))
    if not at_most(specified - tolerance, found, specified):
        return answer(values, "fail", reason("head_smaller"))
    if not at_most(found, specified + tolerance, specified):
        return answer(values, "fail", reason("head_larger"))
    return answer(values, "pass")


def _bearing(head: float, width: float) -> float:
    if head <= width:
        return 0.0
    return head * head / 2.0 * math.acos(width / head) - width / 2.0 * math.sqrt(head * head - width * width)
