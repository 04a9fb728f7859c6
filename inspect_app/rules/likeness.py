"""Which panels of a roof are alike, so that one of them is worked out for all.

Between two lines up the slope where nothing begins, ends or bends, and all edges and strips run level, every panel has
the same length, the same zones and the same stations. A roof of a thousand panels is mostly such stretches.
"""

from inspect_app.rules.roof_form import Roof


def likeness(roof: Roof) -> list:
    """For each panel, the first one first, the number of the one that it is like: itself, or one before it."""
    stretches = _level_stretches(roof)
    found: list = []
    at, first = 0, 0
    for number in range(1, roof.count + 1):
        start, end = roof.lines[number - 1], roof.lines[number]
        while at < len(stretches) and stretches[at][1] <= start:
            at, first = at + 1, 0
        if number < roof.count and at < len(stretches) and stretches[at][0] < start and end < stretches[at][1]:
            first = first or number
            found.append(first)
        else:
            found.append(number)
    return found


def _level_stretches(roof: Roof) -> list:
    """``[(from, to)]`` in order, as u."""
    segments = [(a, b, width + roof.near) for strip in roof.strips for width, a, b in strip]
    sides = list(roof.sides)
    for _, drawn in roof.drawn:
        sides.extend(drawn)
    events = {roof.lines[0]: True, roof.lines[-1]: True}
    for ua, _, ub, _ in sides:
        events[ua] = events[ub] = True
    for a, b, width in segments:
        for u in (a[0], b[0]):
            events[u] = events[u - width] = events[u + width] = True
    lines = sorted(events)
    return [(lines[at], lines[at + 1]) for at in range(len(lines) - 1)
            if _level(sides, segments, (lines[at] + lines[at + 1]) / 2.0)]  # fmt: skip


def _level(sides: list, segments: list, u: float) -> bool:
    """Whether what the line at ``u`` meets runs level there."""
    for ua, ya, ub, yb in sides:
        if ua < u < ub and ya != yb:
            return False
    for a, b, width in segments:
        first, last = min(a[0], b[0]), max(a[0], b[0])
        if first - width < u < last + width and (a[1] != b[1] or not first < u < last):
            return False
    return True
