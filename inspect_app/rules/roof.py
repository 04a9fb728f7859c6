"""A roof area as the layout takes it: rings seen from the starting edge, and every fault in what was told.

Panel k (from 1) covers ``(k - 1) c`` to ``k c`` from the starting edge, c the coverage; the last is ripped. Lengths are
floats of the outline's own unit, so that a drawing in metres is as good as one in feet.
"""

import math

from inspect_app.rules.chord import sides_of
from inspect_app.rules.coverage import lines_of, panels_across
from inspect_app.rules.edges import edges_of, not_closing
from inspect_app.rules.fixed_end import fixed_line_faults
from inspect_app.rules.inputs import plain
from inspect_app.rules.openings import openings_of
from inspect_app.rules.outline import area_of, read_ring, unit_of
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused
from inspect_app.rules.roof_form import Roof
from inspect_app.rules.zone_map import drawn_of, names_of, spacings_of, unknown_zones, widths_of
from inspect_app.rules.zone_strips import strips_of

NEAR = 1e-9  # of the roof's size: a strip's border belongs to it, also where the last digit says otherwise


def read_roof(area: dict, assembly: "dict | None") -> Roof:
    """The roof of an area entry's body and its approved assembly's. Raises Refused for the first fault that leaves
    nothing to lay out: of the outline, of the starting edge or of the coverage."""
    roof, found = survey(area, assembly)
    if roof is None:
        raise found[0]
    read: Roof = roof
    return read


def faults(area: dict, assembly: "dict | None") -> list:
    """``[{"code", "field", "value"}]``: everything that is wrong with what was told, none hidden by another; the words
    of a code are ``refused.CODE``. Empty for a roof that can be built as drawn."""
    return [{"code": one.code, "field": one.field, "value": one.value} for one in survey(area, assembly)[1]]


def survey(area: dict, assembly: "dict | None") -> tuple:
    """``(roof, faults)``, the roof None where there is nothing to lay out; then the first fault says why."""
    found: list = []
    if not isinstance(area, dict):
        return None, [Refused("not_inputs", "area", None)]
    unit = unit_of(area.get("outline"), "outline", found)
    ring = read_ring(area["outline"], unit, "outline", found) if unit is not None else []
    coverage, count = panels_across(area, assembly, unit, ring, found)
    if area.get("start") not in ("left", "right"):
        found.append(Refused("not_choice", "start", plain(area.get("start"))))
    broken = len(found) > 0
    kinds = edges_of(area, found)
    found.extend(not_closing(area, ring))
    cosine = _cosine(area, found)
    measure = unit if unit is not None else "m"
    openings = openings_of(area, measure, ring, found)
    spacings = spacings_of(assembly, measure, found)
    names, widths = names_of(area, found), widths_of(area, measure, found)
    drawn = drawn_of(area, measure, found)
    if broken or unit is None:
        found.extend(unknown_zones(area, names, [[0]] if widths else [], drawn, spacings))
        return None, found
    left, right = min([x for x, _ in ring]), max([x for x, _ in ring])
    turned = area["start"] == "right"
    every = [ring]
    every.extend(openings)
    rings = [_seen(one, left, right, turned) for one in every]
    in_plan = [[(u, y * cosine) for u, y in one] for one in rings]
    edges = [kinds + [""] * len(ring)] + [["penetration"] * len(one) for one in openings]
    strips, meeting = strips_of(in_plan, edges, widths)
    found.extend(unknown_zones(area, names, strips, drawn, spacings))
    ys = [y for _, y in ring]
    corners = sorted([u for one in rings for u, _ in one])
    roof = Roof(
        unit, abs(area_of(ring)) - sum([abs(area_of(one)) for one in openings]), left, right, turned, sides_of(rings),
        corners, coverage, count, cosine, strips, meeting,
        [(zone, sides_of([_seen(one, left, right, turned)])) for zone, one in drawn], names, spacings,
        min([spacings[zone] for zone in spacings]) if spacings else None,
        NEAR * (right - left + max(ys) - min(ys)), lines_of(coverage, count, right - left, corners),
    )  # fmt: skip
    found.extend(fixed_line_faults(area, unit, max(ys) - min(ys)))
    return roof, found


def _cosine(area: dict, found: list) -> float:
    """Of the slope, from its rise in 12; a slope that is not told counts as none."""
    try:
        rise = convert(area.get("slope"), "/12", "slope")
    except Refused as refused:
        found.append(Refused(refused.code, "slope", plain(refused.value)))
        return 1.0
    return 12.0 / math.sqrt(144.0 + rise * rise)


def _seen(ring: list, left: float, right: float, turned: bool) -> list:
    return [(right - x if turned else x - left, y) for x, y in ring]
