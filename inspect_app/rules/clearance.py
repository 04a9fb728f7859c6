"""``clearance@1``: the room before a panel's free end, as at a ridge, a wall or a curb, against what it still grows.

At least α·d·(Thigh − T); with the metal's temperature unknown, α·d·(Thigh − Tlow), the most it can grow. First
principles; no published rule.
"""

from inspect_app.rules.acceptance import ACCEPTANCE, accept, simply
from inspect_app.rules.answer import all_measured, answer, reason
from inspect_app.rules.inputs import wanted
from inspect_app.rules.metal_age import METAL_AGE, too_old
from inspect_app.rules.refused import Refused
from inspect_app.rules.thermal import movement_of, outside_range
from inspect_app.rules.unit import SYSTEMS

INPUTS = {
    "clearance": wanted("length", most_mm=1000.0),
    "distance": wanted("length"),
    "expansion": wanted("expansion"),
    "metal_low": wanted("temperature", least=None),
    "metal_high": wanted("temperature", least=None),
    "metal_now": wanted("temperature", required=False, least=None),
    "uncertainty": wanted("length", required=False, most_mm=50.0),
    "metal_uncertainty": wanted("difference", required=False),
    "metal_age": METAL_AGE,
    "acceptance": ACCEPTANCE,
}
ORDER = ("clearance", "distance", "expansion", "metal_now")


def judge(given: dict, system: str) -> dict:
    """``needed clearance margin bound``. With the metal unknown, ``pass`` where the clearance holds the most it can
    grow, else ``not_determinable`` with ``metal_needed``; with a temperature of long ago ``metal_too_old``. Raises
    Refused ``range_reversed``."""
    if not given["metal_low"] < given["metal_high"]:
        raise Refused("range_reversed", "metal_high", None)
    length, now, room = SYSTEMS[system]["length"], given["metal_now"], given["clearance"]
    if now is not None and outside_range(given):
        return answer({}, "not_determinable", reason("metal_outside_range"))
    if now is not None and too_old(given):
        return answer({}, "not_determinable", too_old(given))
    hottest = given["metal_high"]
    needed = movement_of(given["expansion"], given["distance"], hottest - (given["metal_low"] if now is None else now))
    doubt = movement_of(given["expansion"], given["distance"], given["metal_uncertainty"] or 0.0)
    bound = (given["uncertainty"] or 0.0) + (0.0 if now is None else doubt)
    values = all_measured({"needed": needed, "clearance": room, "margin": room - needed, "bound": bound}, length)
    verdict = accept(room, room, bound, (needed, None), simply(given), values)
    if now is None and verdict != "pass":
        return answer(values, "not_determinable", reason("metal_needed"))
    why = {"pass": None, "fail": reason("clearance_too_small"), "too_close": reason("end_gap_too_close")}[verdict]
    return answer(values, verdict, why)
