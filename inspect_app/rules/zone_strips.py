"""Zones by strips: how far from an edge of the roof the closer spacing goes, as an engineer's widths tell.

Distances are taken in plan, so that only their up-slope part stretches on the roof. A point is in an edge's strip when
it is no farther from it than the width told for edges of its kind; in the corner zone when it is in the strips of two
edges that meet, be it outward or inward; else in the edge zone, else in the field. Edges that continue each other count
as one. This is only the proposal for what an engineer confirms or draws: widths and zones are the engineer's, by the
standard that the zone map names. How straight is straight is our choice.
"""

import math

STRAIGHT = 0.0175  # the sine of one degree: a bend below that is how somebody drew one edge


def strips_of(rings: list, kinds: list, widths: dict) -> tuple:
    """``(strips, meeting)`` of rings in plan, ``kinds`` per ring and edge: ``strips`` a list for each edge as it counts
    of ``(width, a, b)``, ``meeting`` the pairs of those that share a corner."""
    strips: list = []
    meeting: list = []
    for place in range(len(rings)):
        ring, count = rings[place], len(rings[place])
        bends = [at for at in range(count) if _bends(ring[at - 1], ring[at], ring[(at + 1) % count])]
        first = len(strips)
        for turn in range(len(bends)):
            at, last = bends[turn], bends[(turn + 1) % len(bends)]
            strip = []
            for step in range((last - at - 1) % count + 1):
                edge = (at + step) % count
                width = widths.get(kinds[place][edge], 0.0)
                if width > 0.0:
                    strip.append((width, ring[edge], ring[(edge + 1) % count]))
            strips.append(strip)
        for turn in range(len(bends)):
            pair = (first + (turn - 1) % len(bends), first + turn)
            if pair[0] != pair[1] and strips[pair[0]] and strips[pair[1]]:
                meeting.append(pair)
    return strips, meeting


def reach(a: tuple, b: tuple, width: float, u: float) -> "tuple | None":
    """``(low, high)`` in plan: the part of the line at ``u`` that is within ``width`` of the segment; None where none
    is. A strip is convex, so that it is one part: the ends' circles and the rectangle between them."""
    if a[1] == b[1] and min(a[0], b[0]) <= u <= max(a[0], b[0]):
        return a[1] - width, a[1] + width
    if u < min(a[0], b[0]) - width or u > max(a[0], b[0]) + width:
        return None
    found = []
    for pu, pv in (a, b):
        left = width * width - (u - pu) * (u - pu)
        if left >= 0.0:
            found.extend([pv - math.sqrt(left), pv + math.sqrt(left)])
    if a[0] == b[0]:
        return (min(found), max(found)) if found else None
    run, rise = b[0] - a[0], b[1] - a[1]
    size = math.sqrt(run * run + rise * rise)
    across, up = -rise / size * width, run / size * width
    box = [(end[0] + turn * across, end[1] + turn * up) for end, turn in ((a, 1.0), (b, 1.0), (b, -1.0), (a, -1.0))]
    for at in range(4):
        (pu, pv), (qu, qv) = box[at], box[(at + 1) % 4]
        if min(pu, qu) <= u <= max(pu, qu) and pu != qu:
            found.append(pv + (u - pu) / (qu - pu) * (qv - pv))
    return (min(found), max(found)) if found else None


def _bends(before: tuple, joint: tuple, after: tuple) -> bool:
    a, b = (joint[0] - before[0], joint[1] - before[1]), (after[0] - joint[0], after[1] - joint[1])
    size = math.sqrt((a[0] * a[0] + a[1] * a[1]) * (b[0] * b[0] + b[1] * b[1]))
    turned: bool = abs(a[0] * b[1] - a[1] * b[0]) > STRAIGHT * size or a[0] * b[0] + a[1] * b[1] < 0.0
    return turned
