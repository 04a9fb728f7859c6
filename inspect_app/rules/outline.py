"""An outline as a ring of points: read in one unit, measured, and held to what a roof can have.

Points are ``[x, y]`` in decimal strings, x along the eave and y up the slope, as true lengths in the roof's own plane.
"""

from inspect_app.rules.inputs import plain
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import dimension_of

MOST_POINTS = 200  # more is no roof, and every edge is held against every other
FLAT = 1e-9  # of the square of an outline's extent: less is no area


def unit_of(outline: object, field: str, faults: list) -> "str | None":
    """The outline's unit, None where it is no length or there is no outline; says so in ``faults``."""
    if not isinstance(outline, dict):
        faults.append(Refused("outline_missing", field, None))
        return None
    unit = outline.get("unit")
    if dimension_of(unit) != "length":
        faults.append(Refused("unknown_unit", field + ".unit", plain(unit)))
        return None
    assert isinstance(unit, str)
    return unit


def read_ring(outline: object, unit: str, field: str, faults: list) -> list:
    """``[(x, y)]`` in ``unit`` of an outline in any unit, with every fault of it; none where points cannot be read."""
    if unit_of(outline, field, faults) is None:
        return []
    assert isinstance(outline, dict)
    ring = _points(outline, unit, field, faults)
    if ring:
        faults.extend(ring_faults(ring, field))
    return ring


def ring_faults(ring: list, field: str) -> list:
    """What keeps a ring from being an outline: points that coincide, edges that cross or touch, no area. All of them;
    the ``value`` of a crossing is the number of the other edge, counted from 1."""
    faults = [Refused("points_coincide", field + ".points[" + str(at) + "]", at + 1)
              for at in range(len(ring)) if _same(ring, at)]  # fmt: skip
    kept = [at for at in range(len(ring)) if not _same(ring, at)]
    for one, other in _crossings([ring[at] for at in kept]):
        faults.append(Refused("outline_crosses", field + ".points[" + str(kept[one]) + "]", kept[other] + 1))
    if not abs(area_of(ring)) > FLAT * extent(ring) * extent(ring):
        faults.append(Refused("no_area", field, None))
    return faults


def area_of(ring: list) -> float:
    """The ring's area, positive where it runs counterclockwise (the shoelace formula)."""
    x, y = ring[0]
    doubled = 0.0
    for at in range(1, len(ring) - 1):
        (ax, ay), (bx, by) = ring[at], ring[at + 1]
        doubled += (ax - x) * (by - y) - (bx - x) * (ay - y)
    return doubled / 2.0


def extent(ring: list) -> float:
    """The longer side of the ring's bounding rectangle."""
    sides = [[point[axis] for point in ring] for axis in (0, 1)]
    longer: float = max([max(side) - min(side) for side in sides])
    return longer


def encloses(ring: list, point: tuple) -> bool:
    """Whether the point lies inside: the edges to its right are crossed an odd number of times."""
    x, y = point
    inside = False
    for at in range(len(ring)):
        (ax, ay), (bx, by) = ring[at], ring[(at + 1) % len(ring)]
        if (ay > y) != (by > y) and x < ax + (y - ay) / (by - ay) * (bx - ax):
            inside = not inside
    return inside


def rings_cross(one: list, other: list) -> bool:
    """Whether an edge of one ring crosses or touches an edge of the other."""
    for at in range(len(one)):
        for there in range(len(other)):
            if _meet(one[at], one[(at + 1) % len(one)], other[there], other[(there + 1) % len(other)]):
                return True
    return False


def _points(outline: dict, unit: str, field: str, faults: list) -> list:
    points = outline.get("points")
    if not isinstance(points, list) or len(points) < 3:
        faults.append(Refused("too_few_points", field + ".points", len(points) if isinstance(points, list) else None))
        return []
    if len(points) > MOST_POINTS:
        faults.append(Refused("too_many_points", field + ".points", len(points)))
        return []
    found = []
    for place in range(len(points)):
        where, point = field + ".points[" + str(place) + "]", points[place]
        if not isinstance(point, (list, tuple)) or len(point) != 2:
            faults.append(Refused("not_point", where, plain(point)))
            continue
        try:
            found.append(tuple([convert({"value": one, "unit": outline["unit"]}, unit, where) for one in point]))
        except Refused as refused:
            faults.append(Refused(refused.code, where, plain(refused.value)))
    return found if len(found) == len(points) else []


def _same(ring: list, at: int) -> bool:
    """Whether a point and the one after it are one."""
    (ax, ay), (bx, by) = ring[at], ring[(at + 1) % len(ring)]
    same: bool = max(abs(ax - bx), abs(ay - by)) <= FLAT * extent(ring)
    return same


def _crossings(ring: list) -> list:
    """``[(edge, edge)]``, from 0: neighbours cross where one runs back along the other."""
    count = len(ring)
    found = []
    for one in range(count):
        a, b = ring[one], ring[(one + 1) % count]
        for other in range(one + 1, count):
            c, d = ring[other], ring[(other + 1) % count]
            if other == one + 1 or (one == 0 and other == count - 1):
                joint, there, back = (b, a, d) if other == one + 1 else (a, b, c)
                ahead = (there[0] - joint[0]) * (back[0] - joint[0]) + (there[1] - joint[1]) * (back[1] - joint[1])
                if count > 2 and _turn(there, joint, back) == 0 and ahead > 0:
                    found.append((one, other))
            elif _meet(a, b, c, d):
                found.append((one, other))
    return found


def _meet(a: tuple, b: tuple, c: tuple, d: tuple) -> bool:
    for axis in (0, 1):
        if max(a[axis], b[axis]) < min(c[axis], d[axis]) or max(c[axis], d[axis]) < min(a[axis], b[axis]):
            return False
    return _turn(a, b, c) * _turn(a, b, d) <= 0 and _turn(c, d, a) * _turn(c, d, b) <= 0


def _turn(a: tuple, b: tuple, c: tuple) -> int:
    """1 where c lies to the left of the way from a to b, -1 to the right, 0 on it."""
    side = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])
    return 1 if side > 0 else -1 if side < 0 else 0
