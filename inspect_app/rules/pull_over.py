"""``pull_over@1``: sheet drawn over a screw's head. Pnov = 1.5·t1·d'w·Fu1, d'w at most 1/2 in; allowable over
Ω = 3.0 (AISI S100-12 E4.4.2; J4.4.2 of 2016 allows 3/4 in, from memory). Its tests are of round holes: over a slot the
head bears on two lips only, so nothing is computed there. A comparison only: capacity is the engineer's.
"""

from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.inputs import wanted
from inspect_app.rules.pull_out import strength
from inspect_app.rules.unit import SYSTEMS, change_unit

LARGEST_HEAD = 0.5  # inch
INPUTS = {
    "thickness": wanted("length", most_mm=25.0, above_zero=True),
    "head": wanted("length", most_mm=100.0, above_zero=True),
    "tensile": wanted("stress", above_zero=True),
    "omega": wanted("number", required=False, above_zero=True),
    "hole": wanted("choice", required=False, choices=("round", "slot")),
}
ORDER = ("thickness", "head", "tensile")


def judge(given: dict, system: str) -> dict:
    """``nominal_force allowable bearing``: the head's diameter as it counts. ``hole``: ``round`` unless said."""
    if given["hole"] == "slot":
        return answer({}, "not_determinable", reason("head_over_slot"))
    length = SYSTEMS[system]["length"]
    bearing = min(given["head"], change_unit(LARGEST_HEAD, "in", length))
    values = strength(1.5 * given["thickness"] * bearing, given, system)
    values["bearing"] = measured(bearing, length)
    return answer(values)
