"""Openings in an area: holes whose edges are penetrations."""

from inspect_app.rules.inputs import plain
from inspect_app.rules.outline import encloses, read_ring, rings_cross
from inspect_app.rules.refused import Refused

MOST = 100  # of one area: every one is held against every other, and against every panel


def openings_of(area: dict, unit: str, ring: list, faults: list) -> list:
    """The rings, in ``unit``, of the openings that lie within the area's own ``ring``. One that is no outline, leaves
    the area or meets another is a fault and is left out."""
    told = area.get("openings")
    if told is None:
        return []
    if not isinstance(told, list):
        faults.append(Refused("not_openings", "openings", plain(told)))
        return []
    found: list = []
    if len(told) > MOST:
        faults.append(Refused("too_many", "openings", len(told)))
        return found
    for place in range(len(told)):
        field = "openings[" + str(place) + "]"
        known = len(faults)
        one = read_ring(_outline(told[place]), unit, field + ".outline", faults)
        if len(faults) > known or not ring:
            continue
        if rings_cross(one, ring) or not encloses(ring, one[0]):
            faults.append(Refused("opening_outside", field, _name(told[place])))
        elif any(rings_cross(one, other) or encloses(other, one[0]) or encloses(one, other[0]) for other in found):
            faults.append(Refused("openings_overlap", field, _name(told[place])))
        else:
            found.append(one)
    return found


def _name(opening: dict) -> object:
    return plain(opening.get("name"))


def _outline(opening: object) -> object:
    return opening.get("outline") if isinstance(opening, dict) else None
