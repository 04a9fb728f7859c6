"""``window@1``: where in its slot a screw stays free over the whole temperature range of the metal.

Slot S, shank D, half-play P = (S − D)/2. With grow g and shrink s still to come, the screw's offset x from the
slot's middle (positive toward the free end) is free over the range when g − P ≤ x ≤ P − s; the aim is
(g − s)/2. No published rule exists for this: it is first principles. With the fixed line unknown either direction
must hold: |x| ≤ P − max(g, s).

A screw that was found is an interval: ``offset`` within its uncertainty, or, where the head hides an end of the slot,
anywhere beyond (S − head)/2 from the middle, toward either end.
"""

from inspect_app.rules.answer import all_measured, answer, reason
from inspect_app.rules.compare import at_most, settle
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.thermal import grow_and_shrink, movement_of, outside_range
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
    "fixed": wanted("choice", required=False, choices=("known", "unknown")),
    "offset": wanted("length", required=False, least=None),
    "hidden_under": wanted("length", required=False, most_mm=100.0, above_zero=True),
    "uncertainty": wanted("length", required=False, most_mm=50.0),
    "metal_uncertainty": wanted("difference", required=False),
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
    ``not_determinable`` where the metal is outside the job's range. With an ``offset`` (positive toward the free
    end), or the head over an end, the verdict is that of the screw found, and ``bound`` stands beside it. Raises
    Refused ``one_of`` for both."""
    play = half_play(given)
    grow, shrink = grow_and_shrink(given, given["distance"])
    low, high = grow - play, play - shrink
    if given["fixed"] == "unknown":
        high = play - max(grow, shrink)
        low = -high
    values = all_measured(
        {"low": low, "high": high, "aim": (low + high) / 2.0, "grow": grow, "shrink": shrink, "play": play},
        SYSTEMS[system]["length"],
    )
    if outside_range(given):
        return answer(values, "not_determinable", reason("metal_outside_range"))
    if not at_most(low, high, play):
        return answer(values, "fail", reason("no_window"))
    if given["offset"] is not None or given["hidden_under"] is not None:
        return _found(given, values, low, high, play, SYSTEMS[system]["length"])
    error = given["placing_error"]
    if error is not None and not at_most(error, (high - low) / 2.0, play):
        return answer(values, "too_close", reason("window_below_placing_error"))
    return answer(values, "pass")


def _found(given: dict, values: dict, low: float, high: float, play: float, length: str) -> dict:
    """The verdict of a screw that was looked at."""
    if given["offset"] is not None and given["hidden_under"] is not None:
        raise Refused("one_of", "hidden_under", None)
    bound = (given["uncertainty"] or 0.0) + movement_of(
        given["expansion"], given["distance"], given["metal_uncertainty"] or 0.0
    )
    values.update(all_measured({"bound": bound}, length))
    if given["hidden_under"] is not None:
        least = (given["slot"] - given["hidden_under"]) / 2.0 - bound
        outside = not at_most(least, high, play) and not at_most(low, -least, play)
        return answer(values, *(("fail", reason("outside_window")) if outside else
                                ("too_close", reason("slot_too_close"))))  # fmt: skip
    offset = given["offset"]
    values.update(all_measured({"offset": offset}, length))
    if not at_most(abs(offset) - bound, play, play):
        return answer(values, "not_determinable", reason("outside_slot"))
    verdict = settle(offset - bound, offset + bound, low, high, play)
    why = {"pass": None, "fail": reason("outside_window"), "too_close": reason("slot_too_close")}[verdict]
    return answer(values, verdict, why)
