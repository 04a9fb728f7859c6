"""``pull_out@1``: a screw drawn out of steel. Pnot = 0.85·tc·d·Fu2; allowable over Ω = 3.0 (AISI S100 E4.4.1, J4.4.1
since 2016). A comparison only: capacity is the engineer's."""

from inspect_app.rules.answer import answer, measured
from inspect_app.rules.inputs import wanted
from inspect_app.rules.unit import SYSTEMS, change_unit

OMEGA = 3.0
INPUTS = {
    "thickness": wanted("length", most_mm=25.0, above_zero=True),
    "diameter": wanted("length", most_mm=25.0, above_zero=True),
    "tensile": wanted("stress", above_zero=True),
    "omega": wanted("number", required=False, above_zero=True),
}
ORDER = ("thickness", "diameter", "tensile")


def judge(given: dict, system: str) -> dict:
    """``nominal_force allowable``; ``thickness`` of the base metal that the screw holds in. No verdict."""
    return answer(strength(0.85 * given["thickness"] * given["diameter"], given, system))


def strength(area: float, given: dict, system: str) -> dict:
    """Nominal and allowable force of an area under ``tensile``; the area in the system's length, squared."""
    length, stress, force = (SYSTEMS[system][name] for name in ("length", "stress", "force"))
    millimetres = change_unit(change_unit(area, length, "mm"), length, "mm")
    nominal = change_unit(millimetres * change_unit(given["tensile"], stress, "MPa"), "N", force)
    return {
        "nominal_force": measured(nominal, force),
        "allowable": measured(nominal / (given["omega"] or OMEGA), force),
    }
