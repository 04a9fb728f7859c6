"""The edges of an outline: edge i runs from point i to point i + 1, the last one back to the first."""

import math

from inspect_app.rules.inputs import plain
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import change_unit
from inspect_app.rules.zone_map import EDGES

CLOSES_WITHIN = 1.0 / 8.0  # of an inch, our choice: what a drawing in hundredths of a foot is off by


def edges_of(area: dict, found: list) -> list:
    """The kind of each edge, with a fault for each that is of no known kind and one for a wrong number of them."""
    edges, points = area.get("edges"), _outline(area).get("points")
    if not isinstance(edges, list):
        found.append(Refused("edges_count", "edges", None))
        return []
    if isinstance(points, list) and len(edges) != len(points):
        found.append(Refused("edges_count", "edges", len(edges)))
    for place in range(len(edges)):
        if edges[place] not in EDGES:
            found.append(Refused("edge_unknown", "edges[" + str(place) + "]", plain(edges[place])))
    return [kind if kind in EDGES else "" for kind in edges]


def not_closing(area: dict, ring: list) -> list:
    """Faults where ``outline.lengths`` tells another length for an edge than its points do: with the lengths as they
    were typed, the outline does not close."""
    typed = _outline(area).get("lengths")
    found: list = []
    if not isinstance(typed, list):
        return found
    for place in range(min(len(typed), len(ring))):
        if typed[place] is None:
            continue
        field, unit = "outline.lengths[" + str(place) + "]", area["outline"]["unit"]
        (ax, ay), (bx, by) = ring[place], ring[(place + 1) % len(ring)]
        drawn = math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay))
        try:
            length = convert({"value": typed[place], "unit": unit}, "in", field)
            if abs(length - change_unit(drawn, unit, "in")) > CLOSES_WITHIN:
                found.append(Refused("does_not_close", field, plain(typed[place])))
        except Refused as refused:
            found.append(Refused(refused.code, field, plain(refused.value)))
    return found


def _outline(area: dict) -> dict:
    told = area.get("outline")
    return told if isinstance(told, dict) else {}
