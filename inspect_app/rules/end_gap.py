"""``end_gap@1``: the gap in a folded end that still moves, as the hem over an eave's edge.

A panel that still shrinks by s closes the gap, and one that still grows by g draws its return off the edge: the gap c
holds when s ≤ c ≤ return − engagement − g. First principles; no published rule.
"""

from inspect_app.rules.acceptance import accept
from inspect_app.rules.answer import all_measured, answer, reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.thermal import grow_and_shrink, movement_of, outside_range
from inspect_app.rules.unit import SYSTEMS

INPUTS = {
    "gap": wanted("length", required=False, most_mm=300.0),
    "return": wanted("length", most_mm=300.0, above_zero=True),
    "engagement": wanted("length", most_mm=300.0),
    "distance": wanted("length"),
    "expansion": wanted("expansion"),
    "metal_low": wanted("temperature", least=None),
    "metal_high": wanted("temperature", least=None),
    "metal_now": wanted("temperature", least=None),
    "uncertainty": wanted("length", required=False, most_mm=50.0),
    "metal_uncertainty": wanted("difference", required=False),
}
ORDER = ("gap", "return", "engagement", "distance", "expansion", "metal_now")


def judge(given: dict, system: str) -> dict:
    """``low high grow shrink``, and with a ``gap`` its ``bound`` and a verdict. ``engagement``: the least of the
    return that must stay behind the edge. Raises Refused ``range_reversed``."""
    grow, shrink, unknown = still_to_come(given)
    return judged(given, system, grow, shrink, unknown, False)


def still_to_come(given: dict) -> tuple:
    """``(grow, shrink, reason why the metal's temperature does not count or None)``."""
    if not given["metal_low"] < given["metal_high"]:
        raise Refused("range_reversed", "metal_high", None)
    grow, shrink = grow_and_shrink(given, given["distance"])
    return grow, shrink, reason("metal_outside_range") if outside_range(given) else None


def judged(
    given: dict, system: str, grow: float, shrink: float, unknown_metal: "dict | None", simple: bool
) -> dict:
    """As :func:`judge` for what the panel still grows and shrinks; by simple acceptance of the gap where ``simple``."""
    length = SYSTEMS[system]["length"]
    low, high = shrink, given["return"] - given["engagement"] - grow
    values = all_measured({"low": low, "high": high, "grow": grow, "shrink": shrink}, length)
    if unknown_metal is not None:
        return answer(values, "not_determinable", unknown_metal)
    if not at_most(low, high, given["return"]):
        return answer(values, "fail", reason("no_gap_holds"))
    if given["gap"] is None:
        return answer(values)
    moved = movement_of(given["expansion"], given["distance"], given["metal_uncertainty"] or 0.0)
    bound = (given["uncertainty"] or 0.0) + moved
    values.update(all_measured({"gap": given["gap"], "bound": bound}, length))
    verdict = accept(given["gap"], given["gap"], bound, (low, high), simple, values, given["return"])
    code = "gap_closes" if given["gap"] < low else "return_slips_off"
    why = {"pass": None, "fail": reason(code), "too_close": reason("end_gap_too_close")}[verdict]
    return answer(values, verdict, why)
