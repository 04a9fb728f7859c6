"""``fold_return@1``: whether the folded end of a panel can hold any gap at all, at whatever temperature it is folded.

The return must hold the whole movement and still stay behind the edge: at least engagement + α·d·(Thigh − Tlow).
First principles; no published rule. ``end_gap`` then judges the gap that was left.
"""

from inspect_app.rules.answer import all_measured, answer, reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.thermal import movement_of
from inspect_app.rules.unit import SYSTEMS

INPUTS = {
    "return": wanted("length", most_mm=300.0, above_zero=True),
    "engagement": wanted("length", most_mm=300.0),
    "distance": wanted("length"),
    "expansion": wanted("expansion"),
    "metal_low": wanted("temperature", least=None),
    "metal_high": wanted("temperature", least=None),
}
ORDER = ("return", "engagement", "distance", "expansion")


def judge(given: dict, system: str) -> dict:
    """``needed movement margin``. Raises Refused ``range_reversed``."""
    if not given["metal_low"] < given["metal_high"]:
        raise Refused("range_reversed", "metal_high", None)
    moves = movement_of(given["expansion"], given["distance"], given["metal_high"] - given["metal_low"])
    needed, long = given["engagement"] + moves, given["return"]
    values = all_measured({"needed": needed, "movement": moves, "margin": long - needed}, SYSTEMS[system]["length"])
    if at_most(needed, long):
        return answer(values, "pass")
    return answer(values, "fail", reason("return_too_short"))
