"""``centred@1``: between which temperatures of the metal a screw set in the middle of its slot stays free.

With half-play P, an error e of the crew and α·d for the run, a screw within ±e of the middle is free over the range
when α·d·(Thigh − T) ≤ P − e and α·d·(T − Tlow) ≤ P − e: from Thigh − (P − e)/(α·d) to Tlow + (P − e)/(α·d), never
beyond the range itself. A clip's tab set at mid-travel: outward travel o takes P's place while the metal grows, inward
travel i while it shrinks. First principles; no published rule.
"""

from inspect_app.rules.answer import all_measured, answer, reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import SYSTEMS
from inspect_app.rules.window import half_play

INPUTS = {
    "distance": wanted("length"),
    "expansion": wanted("expansion"),
    "metal_low": wanted("temperature", least=None),
    "metal_high": wanted("temperature", least=None),
    "offset_error": wanted("length", most_mm=100.0),
    "slot": wanted("length", required=False, most_mm=300.0, above_zero=True),
    "shank": wanted("length", required=False, most_mm=50.0, above_zero=True),
    "travel_outward": wanted("length", required=False, most_mm=300.0),
    "travel_inward": wanted("length", required=False, most_mm=300.0),
}
ORDER = ("metal_low", "metal_high", "expansion", "distance", "slot", "travel_outward")


def judge(given: dict, system: str) -> dict:
    """``from to``, temperatures of the metal, and in ``understood`` how it ``holds``: ``always`` (over the whole
    range), ``between`` or ``never``; then there are no values and the verdict is ``fail`` with ``never_centred``, else
    there is no verdict: nothing was set yet. Where the middle never holds, the day's aim still may. Raises Refused
    ``missing``, ``one_of`` (a slot or a clip's travel, not both), ``range_reversed`` and ``shank_fills_slot``."""
    low, high = given["metal_low"], given["metal_high"]
    to_grow, to_shrink = _room(given)
    per_degree = given["expansion"] * given["distance"]
    scale = max(to_grow, to_shrink, given["offset_error"])
    growing, shrinking = to_grow - given["offset_error"], to_shrink - given["offset_error"]
    if not (at_most(0.0, growing, scale) and at_most(0.0, shrinking, scale)):
        return _never()
    coldest, warmest = low, high
    if per_degree > 0.0:
        coldest = max(low, high - growing / per_degree)
        warmest = min(high, low + shrinking / per_degree)
    if not at_most(coldest, warmest, high - low):
        return _never()
    holds = "always" if at_most(coldest, low, high - low) and at_most(high, warmest, high - low) else "between"
    values = all_measured({"from": coldest, "to": max(coldest, warmest)}, SYSTEMS[system]["temperature"])
    return answer(values, None, None, {"holds": holds})


def _never() -> dict:
    return answer({}, "fail", reason("never_centred"), {"holds": "never"})


def _room(given: dict) -> tuple[float, float]:
    """How far the middle is from where a growing and from where a shrinking panel comes to its end."""
    slot, travel = given["slot"], given["travel_outward"]
    if (slot is None) == (travel is None):
        raise Refused("one_of" if slot is not None else "missing", "slot")
    needed = "shank" if travel is None else "travel_inward"
    if given[needed] is None:
        raise Refused("missing", needed)
    if travel is None:
        play = half_play(given)
        return play, play
    if not given["metal_low"] < given["metal_high"]:
        raise Refused("range_reversed", "metal_high", None)
    return travel, given["travel_inward"]
