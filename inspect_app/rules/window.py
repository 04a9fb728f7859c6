"""``window@1``: where in its slot a screw stays free over the whole temperature range of the metal.

Slot S, shank D, half-play P = (S − D)/2. With grow g and shrink s still to come, the screw's offset x from the
slot's middle (positive toward the free end) is free over the range when g − P ≤ x ≤ P − s; the aim is
(g − s)/2. No published rule exists for this: it is first principles.
"""

from inspect_app.rules.answer import all_measured, answer, reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.thermal import grow_and_shrink, outside_range
from inspect_app.rules.unit import SYSTEMS

INPUTS = {
    "distance": wanted("length"),
    "expansion": wanted("expansion"),
    "metal_low": wanted("temperature", least=None),
    "metal_high": wanted("temperature", least=None),
    "metal_now": wanted("temperature", least=None),
    "slot": wanted("length", most_mm=300.0, above_zero=True),
    "shank": wanted("length", most_mm=50.0, above_zero=True),
    "placing_error": wanted("length", required=False, most_mm=100.0),
}
ORDER = ("distance", "slot", "shank", "expansion", "metal_now")


def half_play(given: dict) -> float:
    """P = (S − D)/2. Raises Refused ``shank_fills_slot`` where the screw has no play at all, and
    ``range_reversed`` where the metal's low is not below its high."""
    if not given["metal_low"] < given["metal_high"]:
        raise Refused("range_reversed", "metal_high", None)
    play = (given["slot"] - given["shank"]) / 2.0
    if not play > 0.0:
        raise Refused("shank_fills_slot", "shank", None)
    return float(play)


def judge(given: dict, system: str) -> dict:
    """``low high aim grow shrink play``. Verdict: ``fail`` with ``no_window`` where run and slot do not go
    together at any position, ``too_close`` where the window does not hold the crew's placing error,
    ``not_determinable`` where the metal is outside the job's range."""
    play = half_play(given)
    grow, shrink = grow_and_shrink(given, given["distance"])
    low, high = grow - play, play - shrink
    values = all_measured(
        {"low": low, "high": high, "aim": (grow - shrink) / 2.0, "grow": grow, "shrink": shrink, "play": play},
        SYSTEMS[system]["length"],
    )
    if outside_range(given):
        return answer(values, "not_determinable", reason("metal_outside_range"))
    if not at_most(low, high, play):
        return answer(values, "fail", reason("no_window"))
    error = given["placing_error"]
    if error is not None and not at_most(error, (high - low) / 2.0, play):
        return answer(values, "too_close", reason("window_below_placing_error"))
    return answer(values, "pass")
