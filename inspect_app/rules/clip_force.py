"""``clip_force@1``: the wind force on one clip, and the ultimate strength that its connection needs.

Force = pressure × coverage width × tributary length: half of each adjoining gap, so of one spacing in a run of equal
gaps. The factor is 2.25 with two fasteners or more and 3.00 with one; prying comes on top (UFGS-07416A 1.4.5). A
strength-level pressure counts 0.6 times (ASCE 7 load combinations of allowable stress design). The zone's pressure
comes from the approved documents. A comparison only: capacity is the engineer's.
"""

from inspect_app.rules.answer import answer, measured
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import SYSTEMS, change_unit

SERVICE = {"ASD": 1.0, "strength": 0.6}
ONE, TWO_OR_MORE = 3.0, 2.25
INPUTS = {
    "pressure": wanted("pressure", least=None),
    "basis": wanted("choice", choices=("ASD", "strength")),
    "width": wanted("length", most_mm=2000.0, above_zero=True),
    "spacing": wanted("length", required=False, most_mm=5000.0, above_zero=True),
    "gaps": wanted("lengths", required=False),
    "fasteners": wanted("integer"),
}
ORDER = ("pressure", "width", "spacing", "gaps")


def judge(given: dict, system: str) -> dict:
    """``force`` at service level and ``ultimate_needed``. ``gaps``: the two beside the clip, a missing neighbour's
    being twice its end distance. Uplift counts by its size, whatever its sign. Raises Refused ``missing``,
    ``two_gaps`` and ``too_few``."""
    if given["fasteners"] < 1:
        raise Refused("too_few", "fasteners", int(given["fasteners"]))
    length = SYSTEMS[system]["length"]
    metres = [change_unit(one, length, "m") for one in (given["width"], _tributary(given))]
    pressure = abs(change_unit(given["pressure"], SYSTEMS[system]["pressure"], "kPa")) * SERVICE[given["basis"]]
    force = change_unit(pressure * metres[0] * metres[1], "kN", SYSTEMS[system]["force"])
    factor = ONE if given["fasteners"] < 2 else TWO_OR_MORE
    return answer({
        "force": measured(force, SYSTEMS[system]["force"]),
        "ultimate_needed": measured(force * factor, SYSTEMS[system]["force"]),
    })


def _tributary(given: dict) -> float:
    gaps = given["gaps"]
    if gaps is None:
        if given["spacing"] is None:
            raise Refused("missing", "spacing")
        return float(given["spacing"])
    if len(gaps) != 2:
        raise Refused("two_gaps", "gaps", len(gaps))
    return float((gaps[0] + gaps[1]) / 2.0)
