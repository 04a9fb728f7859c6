"""``zone_spacing@1``: a zone's approved spacing is there, and the slots of this flange can reach it.

Screws go into slots, so their spacing is a whole number of pitches: the widest that does not pass the approved one.
Where one pitch is wider already, the approved spacing cannot be had (arithmetic). The spacing itself is the approved
assembly's, for the engineer's zone; it is never taken from another zone.
"""

import math

from inspect_app.rules.answer import all_measured, answer, reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.inputs import wanted
from inspect_app.rules.unit import SYSTEMS

INPUTS = {
    "spacing": wanted("length", above_zero=True),
    "pitch": wanted("length", required=False, above_zero=True),
}
ORDER = ("spacing", "pitch")
MOST_PITCHES = 1e6  # beyond, the pitch is no slot's, and every spacing can be had


def judge(given: dict, system: str) -> dict:
    """``spacing`` and, with a slot's ``pitch``, ``reached``: what the slots can give, with its ``margin``."""
    length, spacing, pitch = SYSTEMS[system]["length"], given["spacing"], given["pitch"]
    values = all_measured({"spacing": spacing}, length)
    if pitch is None:
        return answer(values, "pass")
    pitches = min(spacing / pitch, MOST_PITCHES) + 1e-9
    reached = spacing if pitches > MOST_PITCHES else max(math.floor(pitches), 1) * pitch
    values.update(all_measured({"reached": reached, "margin": spacing - reached}, length))
    if at_most(reached, spacing):
        return answer(values, "pass")
    return answer(values, "fail", reason("slots_too_far_apart"))
