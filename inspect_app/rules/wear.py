"""``wear@1``: the length of a wear mark against the movement computed at its place. ΔL = α·d·ΔT (first principles).

A mark is as long as what moved over it has travelled. It says nothing of who is to blame: a shorter one may be of metal
that never was so hot or so cold, of a mark that is young or was cleaned away, or of a panel held somewhere else; a
longer one of a panel held elsewhere, of a part that moved by itself, of creep down the slope, or of work under the
panel. So there is never a verdict, to neither side.
"""

from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.compare import settle
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.thermal import movement_of
from inspect_app.rules.unit import SYSTEMS

INPUTS = {
    "mark": wanted("length", most_mm=1000.0),
    "uncertainty": wanted("length", required=False, most_mm=1000.0),
    "distance": wanted("length"),
    "expansion": wanted("expansion"),
    "metal_low": wanted("temperature", least=None),
    "metal_high": wanted("temperature", least=None),
    "fixed": wanted("choice", required=False, choices=("known", "unknown")),
}
ORDER = ("mark", "distance", "expansion", "metal_low", "metal_high")


def judge(given: dict, system: str) -> dict:
    """``movement`` over the whole range of the metal, ``difference`` (mark − movement), ``bound`` of the mark, and
    ``swing``: the change of temperature that alone would draw such a mark. Without a verdict; the reason says which of
    the two is longer. With the line ``unknown`` the ``distance`` is the most that it can be, and so is the movement.
    Raises Refused ``range_reversed``."""
    low, high = given["metal_low"], given["metal_high"]
    if high < low:
        raise Refused("range_reversed", "metal_high", None)
    mark, bound = given["mark"], given["uncertainty"] or 0.0
    movement = movement_of(given["expansion"], given["distance"], high - low)
    length = SYSTEMS[system]["length"]
    values = {
        "movement": measured(movement, length), "difference": measured(mark - movement, length),
        "bound": measured(bound, length),
    }  # fmt: skip
    if given["distance"] > 0.0:
        swing = mark / movement_of(given["expansion"], given["distance"], 1.0)
        values["swing"] = measured(swing, SYSTEMS[system]["difference"])
    longer = settle(mark - bound, mark + bound, None, movement, movement) == "fail"
    shorter = settle(mark - bound, mark + bound, movement, None, movement) == "fail"
    if given["fixed"] == "unknown" and not longer:
        return answer(values, None, reason("wear_line_unknown"))
    code = "wear_longer" if longer else "wear_shorter" if shorter else "wear_as_computed"
    return answer(values, None, reason(code))
