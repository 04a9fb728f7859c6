"""The ground of a roof plan: panels with what is known of them, zones, openings, edges. ``to(x, y)`` leads from the
area's own plane to the page, so that the same hand draws one area upright and the whole roof turned to the north."""

from collections.abc import Callable
from itertools import pairwise
from typing import Any

from inspect_app.report.pages.hatch import hatch
from inspect_app.report.pages.look import ACCENT, HAIR, INK
from inspect_app.report.pages.outline import Outline

Point = tuple[float, float]
To = Callable[[float, float], Point]
EDGE = {
    "eave": (1.6, None),
    "ridge": (1.6, None),
    "rake": (0.8, None),
    "hip": (0.8, (6, 2)),
    "valley": (0.8, (2, 2)),
    "wall": (2.4, None),
}
MOST_SEAMS = 400  # beyond it they would run together


def draw_ground(canvas: Any, shape: Outline, to: To, area: dict[str, Any], runs: list[dict[str, Any]]) -> None:
    """Panels, seams, zones and openings inside the outline. ``runs``: of the area's coverage."""
    holes = openings(area)
    canvas.saveState()
    path = canvas.beginPath()
    for points in (shape.points, *holes):
        _trace(path, [to(*point) for point in points])
    canvas.clipPath(path, stroke=0, fill=0, fillMode=0)
    for run in runs:
        for low, high in _joined(shape.runs(run["from"], run["to"])):
            bottom, top = shape.low, shape.low + shape.height
            hatch(canvas, [to(low, bottom), to(high, bottom), to(high, top), to(low, top)], run["state"])
    canvas.setStrokeColor(HAIR)
    canvas.setLineWidth(0.3)
    seams = shape.seams()
    for x in seams if len(seams) <= MOST_SEAMS else []:
        canvas.line(*to(x, shape.low), *to(x, shape.low + shape.height))
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(0.7)
    canvas.setDash([2.2, 1.5], 0)
    for one, other in zone_lines(shape, area.get("bands") or []):
        canvas.line(*to(*one), *to(*other))
    canvas.restoreState()
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(0.8)
    for points in holes:
        ring = canvas.beginPath()
        _trace(ring, [to(*point) for point in points])
        canvas.drawPath(ring, stroke=1, fill=0)


def openings(area: dict[str, Any]) -> list[list[Point]]:
    """The rings of an area's openings that can be read."""
    found = []
    for one in area.get("openings") or []:
        try:
            found.append([(float(x), float(y)) for x, y in one["outline"]["points"]])
        except (TypeError, KeyError, ValueError):
            continue
    return [ring for ring in found if len(ring) > 2]


def zone_lines(shape: Outline, bands: list[dict[str, Any]]) -> list[tuple[Point, Point]]:
    """Where one zone meets another: along a panel's run, and between bands of panels."""
    told: list[tuple[Point, Point]] = []
    before: list[Any] = []
    for band in bands:
        strips = shape.runs(band["from"], band["to"])
        if not strips:
            continue
        near, far = strips[0][shape.from_right], strips[-1][not shape.from_right]
        runs = band["runs"]
        for one, other in pairwise(runs):
            if one[2] != other[2]:
                told.append(((near, one[1]), (far, one[1])))
        for low, high in _unlike(before, runs):
            told.append(((near, low), (near, high)))
        before = runs
    return told


def _unlike(one: list[Any], other: list[Any]) -> list[tuple[float, float]]:
    """Where two stacks of runs beside each other are of different zones."""
    return [
        (max(a[0], b[0]), min(a[1], b[1]))
        for a in one for b in other if a[2] != b[2] and max(a[0], b[0]) < min(a[1], b[1])
    ]  # fmt: skip


def draw_edges(canvas: Any, shape: Outline, to: To) -> None:
    """The outline, each edge as its kind is drawn."""
    for one, other, kind in shape.edges():
        thick, dash = EDGE.get(kind, (0.8, None))
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(thick)
        canvas.setDash(*(dash or ((), 0)))
        canvas.line(*to(*one), *to(*other))
        canvas.setDash((), 0)


def draw_fixed(canvas: Any, shape: Outline, to: To, fixed: dict[str, Any] | None) -> None:
    """The line where panels are held: level, or following one end of every panel."""
    low, high = shape.along(fixed or {}, "from_low_end"), shape.along(fixed or {}, "from_high_end")
    if low is None:
        return
    canvas.setStrokeColor(ACCENT)
    canvas.setLineWidth(1.4)
    canvas.setDash([7, 2.5], 0)
    for x, far in shape.strips():
        y = fixed_at(shape, x, far, low, high, fixed or {})
        canvas.line(*to(x, y), *to(far, y))
    canvas.setDash((), 0)


def fixed_at(shape: Outline, x: float, far: float, low: float, high: float | None, fixed: dict[str, Any]) -> float:
    """How far up the line lies on the panel between ``x`` and ``far``."""
    bottom, top = shape.ends((x + far) / 2)
    if fixed.get("end") == "high" and high is not None:
        return max(top - high, bottom)
    return min(bottom + low, top)


def _trace(path: Any, points: list[Point]) -> None:
    for at, point in enumerate(points):
        (path.moveTo if at == 0 else path.lineTo)(*point)
    path.close()


def _joined(strips: list[Point]) -> list[Point]:
    """The strips of panels beside each other as one."""
    return [(min(low for low, _ in strips), max(high for _, high in strips))] if strips else []
