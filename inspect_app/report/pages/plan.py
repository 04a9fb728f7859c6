"""A roof area drawn to scale: panels as strips, edges by kind, the fixed line, and every place looked at."""

from typing import Any

from inspect_app.report.pages.ground import EDGE, draw_fixed, draw_ground
from inspect_app.report.pages.look import GREY, INK, PLAIN
from inspect_app.report.pages.outline import Outline
from inspect_app.report.pages.plan_places import draw_places, mark_box, name_fixed_line, name_zones, place_spots
from inspect_app.report.pages.voice import Voice

MARK, SMALL_MARK = 4.4, 3.2
RIM_SIDE, RIM_TOP, RIM_LOW = 30.0, 16.0, 30.0


def plan_height(shape: Outline, width: float, tallest: float) -> float:
    """The height that the plan takes at full width, ``tallest`` at most."""
    wanted = (width - 2 * RIM_SIDE) / shape.width * shape.height
    return min(wanted, tallest - RIM_TOP - RIM_LOW) + RIM_TOP + RIM_LOW


def draw_plan(canvas: Any, width: float, height: float, area: dict[str, Any], stations: list[dict[str, Any]],
              voice: Voice, labelled: bool = True, runs: list[dict[str, Any]] | None = None) -> None:  # fmt: skip
    """The plan in a box of that size, the ridge up. Without ``labelled``: marks only, for the cover. ``runs``: of the
    area's coverage; without them what the walks laid."""
    shape = Outline(area)
    laid = [{"from": one.get("from"), "to": one.get("to"), "state": "no_seam"} for one in area.get("placed") or []]
    rim = (RIM_SIDE, RIM_TOP, RIM_LOW) if labelled else (6.0, 6.0, 6.0)
    scale = min((width - 2 * rim[0]) / shape.width, (height - rim[1] - rim[2]) / shape.height)
    left = (width - shape.width * scale) / 2

    def px(x: float) -> float:
        return left + (x - shape.left) * scale

    def py(y: float) -> float:
        return rim[2] + (y - shape.low) * scale

    canvas.saveState()
    to = lambda x, y: (px(x), py(y))  # noqa: E731
    draw_ground(canvas, shape, to, area, laid if runs is None else runs)
    _edges(canvas, shape, px, py, voice if labelled else None)
    spots = place_spots(shape, stations, px, py)
    taken = [mark_box(x, y, MARK) for x, y, _ in spots]
    draw_fixed(canvas, shape, to, area.get("fixed_line"))
    if labelled:
        name_fixed_line(canvas, shape, area.get("fixed_line"), to, voice, taken)
        name_zones(canvas, shape, area.get("bands") or [], to, voice, taken)
        _panel_numbers(canvas, shape, px, py)
        scale_bar(canvas, scale * shape.in_unit("m" if voice.units == "SI" else "ft"), px(shape.left), voice)
    draw_places(canvas, spots, taken, MARK if labelled else SMALL_MARK, labelled)
    canvas.restoreState()


def _edges(canvas: Any, shape: Outline, px: Any, py: Any, voice: Voice | None) -> None:
    for (ax, ay), (bx, by), kind in shape.edges():
        thick, dash = EDGE.get(kind, (0.8, None))
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(thick)
        canvas.setDash(*(dash or ((), 0)))
        canvas.line(px(ax), py(ay), px(bx), py(by))
        canvas.setDash((), 0)
        if kind == "ridge":
            canvas.setLineWidth(0.5)
            canvas.line(px(ax), py(ay) + 2.6, px(bx), py(by) + 2.6)
        if voice is None:
            continue
        canvas.setFont(PLAIN, 6.5)
        canvas.setFillColor(GREY)
        middle, name = ((px(ax) + px(bx)) / 2, (py(ay) + py(by)) / 2), voice.say(f"edge.{kind}")
        if abs(bx - ax) >= abs(by - ay):
            over = middle[1] >= py(shape.low + shape.height / 2)
            canvas.drawCentredString(middle[0], middle[1] + (6.5 if over else -19), name)
        else:
            canvas.saveState()
            outward = 1 if middle[0] >= px(shape.left + shape.width / 2) else -1
            canvas.translate(middle[0] + outward * 8, middle[1])
            canvas.rotate(90 * -outward)
            canvas.drawCentredString(0, -2, name)
            canvas.restoreState()


def _panel_numbers(canvas: Any, shape: Outline, px: Any, py: Any) -> None:
    strips = shape.strips()
    canvas.setFont(PLAIN, 5.8)
    canvas.setFillColor(GREY)
    step = next((one for one in (1, 2, 5, 10, 20, 50, 100, 1000) if one * abs(px(shape.module) - px(0)) > 15), 1000)
    for at, (x, far) in enumerate(strips):
        n = at + 1
        if n == 1 or n % step == 0:
            canvas.drawCentredString((px(x) + px(far)) / 2, py(shape.low) - 8, str(n))


def scale_bar(canvas: Any, per: float, left: float, voice: Voice) -> None:
    """A bar of a round length; ``per``: points to a foot, or to a metre."""
    steps = (0.5, 1, 2, 5, 10, 20, 50, 100)
    length = max((one for one in steps if one * per <= 110), default=steps[0])
    wide = length * per
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(0.6)
    canvas.line(left, 5, left + wide, 5)
    for x in (left, left + wide / 2, left + wide):
        canvas.line(x, 5, x, 8)
    canvas.setFont(PLAIN, 6.2)
    canvas.setFillColor(GREY)
    canvas.drawString(left + wide + 5, 3.5, f"{length:g} {'m' if voice.units == 'SI' else 'ft'}")
