"""Which zone a place on the roof is in, and where the zones change along a line up the slope."""

from inspect_app.rules.chord import chords
from inspect_app.rules.panel import seam_pieces, strip
from inspect_app.rules.roof_form import Roof
from inspect_app.rules.zone_strips import reach


def zone_at(roof: Roof, x: float, y: float) -> "str | None":
    """The zone's name at a point of the outline's own plane. None off the roof, and where nobody told the zones."""
    u = roof.right - x if roof.turned else x - roof.left
    if not any(low - roof.near <= y <= high + roof.near for low, high in _drawn_along(roof.sides, u)):
        return None
    found: str | None = roof.names["field"]
    for low, high, zone in _layers(roof, u):
        if low <= y <= high:
            found = zone
    return found


def zone_runs(roof: Roof, number: int) -> list:
    """``[[low, high, zone]]``: the zones along a panel's seam, the lowest first, in y. Raises Refused
    ``no_such_panel``."""
    runs = []
    for _, own in piece_runs(roof, number):
        runs.extend(own)
    return runs


def panel_runs(roof: Roof, number: int) -> list:
    """As ``zone_runs``, to draw a panel by; the last one, which has no seam, along its middle."""
    if number != roof.count:
        return zone_runs(roof, number)
    start, end = strip(roof, number)
    middle = (start + end) / 2.0
    layers, runs = _layers(roof, middle), []
    for piece in chords(roof.sides, middle, -1):
        runs.extend(_runs(layers, roof.names["field"], piece, roof.near))
    return runs


def piece_runs(roof: Roof, number: int) -> list:
    """``[(piece, [[low, high, zone]])]`` of a panel's seam."""
    end = strip(roof, number)[1]
    layers = _layers(roof, end)
    return [(piece, _runs(layers, roof.names["field"], piece, roof.near)) for piece in seam_pieces(roof, number)]


def _layers(roof: Roof, u: float) -> list:
    """``[(low, high, zone)]`` along the line at ``u``, in y, the later over the earlier: edge, corner, drawn. Borders
    belong to the strip and to what was drawn."""
    found, near = [], roof.near
    reached: list = []
    for strip_ in roof.strips:
        parts = [reach(a, b, width + near, u) for width, a, b in strip_]
        reached.append([(part[0] / roof.cosine, part[1] / roof.cosine) for part in parts if part is not None])
    for parts in reached:
        found.extend([(low, high, roof.names["edge"]) for low, high in parts])
    for one, other in roof.meeting:
        for low, high in reached[one]:
            for other_low, other_high in reached[other]:
                if max(low, other_low) <= min(high, other_high):
                    found.append((max(low, other_low), min(high, other_high), roof.names["corner"]))
    for zone, sides in roof.drawn:
        found.extend([(low - near, high + near, zone) for low, high in _drawn_along(sides, u)])
    return found


def _drawn_along(sides: list, u: float) -> list:
    return chords(sides, u, -1) + chords(sides, u, 1)


def _runs(layers: list, field: "str | None", piece: tuple, near: float) -> list:
    low, high = piece
    borders = [low]
    for border in sorted([one for layer in layers for one in layer[:2]]):
        if borders[-1] + 4.0 * near < border < high - 4.0 * near:
            borders.append(border)
    borders.append(high)
    runs: list = []
    for at in range(len(borders) - 1):
        middle, zone = (borders[at] + borders[at + 1]) / 2.0, field
        for bottom, top, name in layers:
            if bottom <= middle <= top:
                zone = name
        if runs and runs[-1][2] == zone:
            runs[-1][1] = borders[at + 1]
        else:
            runs.append([borders[at], borders[at + 1], zone])
    return runs
