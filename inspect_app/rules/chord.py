"""Lines up the slope through a roof: where each enters and leaves it, and what panel a strip of it needs.

Here ``u`` is the distance from the starting edge along the eave. A *side* is an edge that is not itself a line up the
slope, ``(u, y, u, y)`` with the smaller u first; the sides of all rings are taken together, so that an opening takes
its part out of the roof.
"""


def sides_of(rings: list) -> list:
    """The sides of rings of ``(u, y)`` points."""
    sides = []
    for ring in rings:
        for at in range(len(ring)):
            a, b = ring[at], ring[(at + 1) % len(ring)]
            if a[0] != b[0]:
                first, last = (a, b) if a[0] < b[0] else (b, a)
                sides.append((first[0], first[1], last[0], last[1]))
    return sides


def chords(sides: list, u: float, toward: int) -> list:
    """``[(low, high)]``, lowest first: the roof along the line at ``u``, as it is just beyond it (``toward`` 1) or
    just before it (-1)."""
    crossed = []
    for ua, ya, ub, yb in sides:
        if (ua <= u < ub) if toward > 0 else (ua < u <= ub):
            y = ya if u == ua else yb if u == ub else ya + (u - ua) / (ub - ua) * (yb - ya)
            crossed.append((y, (yb - ya) / (ub - ua) * toward))
    crossed.sort()
    return [(crossed[at][0], crossed[at + 1][0]) for at in range(0, len(crossed) - 1, 2)]


def both_sides(sides: list, u: float) -> list:
    """``[(low, high)]``: where the line at ``u`` has roof before it and beyond it."""
    found = []
    for low, high in chords(sides, u, -1):
        for other_low, other_high in chords(sides, u, 1):
            if max(low, other_low) < min(high, other_high):
                found.append((max(low, other_low), min(high, other_high)))
    return found


def pieces(sides: list, corners: list, start: float, end: float) -> list:
    """``[(low, high)]``, lowest first: the pieces of roof between two lines, each from its lowest to its highest
    point: the blank that it is cut from. ``corners``: the u of every corner, in order."""
    lines = [start]
    lines.extend([u for u in corners if start < u < end])
    lines.append(end)
    found: list = []  # [low, high] of each piece; one that has grown into another is None
    before: list = []  # (low, high, piece) where the last strip ended
    for at in range(len(lines) - 1):
        near, far = chords(sides, lines[at], 1), chords(sides, lines[at + 1], -1)
        after: list = []
        for place in range(min(len(near), len(far))):
            (low, high), (far_low, far_high) = near[place], far[place]
            piece = len(found)
            found.append([min(low, far_low), max(high, far_high)])
            for here in range(len(before)):
                if max(low, before[here][0]) < min(high, before[here][1]) and before[here][2] != piece:
                    piece = _joined(found, before, after, before[here][2], piece)
            after.append((far_low, far_high, piece))
        before = after
    return sorted([(piece[0], piece[1]) for piece in found if piece is not None])


def _joined(found: list, before: list, after: list, older: int, newer: int) -> int:
    """The older piece, with the newer one in it."""
    found[older] = [min(found[older][0], found[newer][0]), max(found[older][1], found[newer][1])]
    found[newer] = None
    for row in (before, after):
        for at in range(len(row)):
            if row[at][2] == newer:
                row[at] = (row[at][0], row[at][1], older)
    return older
