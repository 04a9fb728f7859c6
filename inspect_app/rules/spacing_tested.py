"""``spacing_tested@1``: spacing against what an uplift test allows at a pressure, never outside its tested points.

Resistance "may not increase linearly with a decrease in the area per clip", and halving the spacing gave only a quarter
to a third more in an insurer's tests; so the next closer tested spacing holds. Only where the approval allows it is
there interpolation (ASTM E1592-05 5.2), and then in 1/spacing: for 24 in at 60 psf and 12 in at 110, 85 psf needs
16.0 in, where a straight line in spacing would say 18.
"""

from inspect_app.rules import spacing
from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import SYSTEMS

INPUTS = {
    "gaps": wanted("lengths", required=False, above_zero=True),
    "count": wanted("integer", required=False),
    "over": wanted("length", required=False, above_zero=True),
    "pressure": wanted("pressure", least=None),
    "tested": wanted("points"),
    "interpolate": wanted("choice", required=False, choices=("no", "reciprocal")),
}
ORDER = ("gaps", "over", "pressure")


def judge(given: dict, system: str) -> dict:
    """``limit``, the widest spacing for ``pressure`` (uplift by its size); with ``gaps`` or a ``count`` what
    ``spacing@1`` says of them. ``tested``: ``[[spacing, pressure], …]``. ``not_determinable`` with
    ``beyond_tested`` above the strongest point. Raises Refused ``tested_contradict`` and those of ``spacing@1``."""
    limit = _spacing(given["tested"], abs(given["pressure"]), given["interpolate"] == "reciprocal")
    if limit is None:
        return answer({}, "not_determinable", reason("beyond_tested"))
    if given["gaps"] is None and given["count"] is None and given["over"] is None:
        return answer({"limit": measured(limit, SYSTEMS[system]["length"])})
    told: dict = dict(given)
    told["limit"] = limit
    return spacing.judge(told, system)


def _spacing(points: list, pressure: float, between: bool) -> "float | None":
    """The widest spacing for ``pressure``, None above the strongest point. ``points``: ``[(spacing, pressure)]`` in
    any order; ``between``: whether to interpolate. Below the weakest point its own spacing holds, nothing wider.
    Raises Refused ``tested_contradict`` where a closer spacing was tested weaker, or one spacing twice."""
    ordered = sorted(points)
    for at in range(1, len(ordered)):
        (wide, weak), (close, strong) = ordered[at], ordered[at - 1]
        if wide == close or not at_most(weak, strong):
            raise Refused("tested_contradict", "tested", None)
    held = [spacing for spacing, strength in ordered if at_most(pressure, strength)]
    if not held:
        return None
    widest = max(held)
    wider = [point for point in ordered if point[0] > widest]
    if not between or not wider:
        return float(widest)
    next_spacing, weak = wider[0]
    strong = next(strength for spacing, strength in ordered if spacing == widest)
    share = (pressure - weak) / (strong - weak)
    return float(1.0 / (1.0 / next_spacing + share * (1.0 / widest - 1.0 / next_spacing)))
