"""A roof area drawn to scale: panels as strips, edges by kind, the fixed line, and every place looked at."""

from typing import Any

from inspect_app.report.pages.look import GREY, HAIR, INK, PALE, PLAIN
from inspect_app.report.pages.outline import Outline
from inspect_app.report.pages.plan_places import draw_fixed_line, draw_places, mark_box, place_spots
from inspect_app.report.pages.voice import Voice

MARK, SMALL_MARK = 4.4, 3.2
RIM_SIDE, RIM_TOP, RIM_LOW = 30.0, 16.0, 30.0
EDGE = {
    "eave": (1.6, None),
    "ridge": (1.6, None),
    "rake": (0.8, None),
    "hip": (0.8, (6, 2)),
    "valley": (0.8, (2, 2)),
    "wall": (2.4, None),
}


def plan_height(shape: Outline, width: float, tallest: float) -> float:
    """The height that the plan takes at full width, ``tallest`` at most."""
    wanted = (width - 2 * RIM_SIDE) / shape.width * shape.height
    return min(wanted, tallest - RIM_TOP - RIM_LOW) + RIM_TOP + RIM_LOW


def draw_plan(canvas: Any, width: float, height: float, area: dict[str, Any], stations: list[dict[str, Any]],
              voice: Voice, labelled: bool = True) -> None:  # fmt: skip
    """The plan in a box of that size, the ridge up. Without ``labelled``: marks only, for the cover."""
    shape = Outline(area)
    rim = (RIM_SIDE, RIM_TOP, RIM_LOW) if labelled else (6.0, 6.0, 6.0)
    scale = min((width - 2 * rim[0]) / shape.width, (height - rim[1] - rim[2]) / shape.height)
    left = (width - shape.width * scale) / 2

    def px(x: float) -> float:
        return left + (x - shape.left) * scale

    def py(y: float) -> float:
        return rim[2] + (y - shape.low) * scale

    canvas.saveState()
    _ground(canvas, shape, area, px, py)
    _edges(canvas, shape, px, py, voice if labelled else None)
    spots = place_spots(shape, stations, px, py)
    taken = [mark_box(x, y, MARK) for x, y, _ in spots]
    fixed = shape.along(area.get("fixed_line") or {}, "from_low_end")
    if fixed is not None:
        draw_fixed_line(canvas, shape, fixed, px, py, voice if labelled else None, taken)
    if labelled:
        _panel_numbers(canvas, shape, px, py)
        _scale_bar(canvas, shape, scale, px(shape.left), voice)
    draw_places(canvas, spots, taken, MARK if labelled else SMALL_MARK, labelled)
    canvas.restoreState()


def _ground(canvas: Any, shape: Outline, area: dict[str, Any], px: Any, py: Any) -> None:
    ring = canvas.beginPath()
    for at, (x, y) in enumerate(shape.points):
        (ring.moveTo if at == 0 else ring.lineTo)(px(x), py(y))
    ring.close()
    canvas.saveState()
    canvas.clipPath(ring, stroke=0, fill=0)
    canvas.setFillColor(PALE)
    for one in area.get("placed") or []:
        for run in shape.runs(one.get("from"), one.get("to")):
            canvas.rect(
                px(run[0]),
                py(shape.low),
                px(run[1]) - px(run[0]),
                py(shape.low + shape.height) - py(shape.low),
                stroke=0,
                fill=1,
            )
    canvas.setStrokeColor(HAIR)
    canvas.setLineWidth(0.4)
    for x in shape.seams():
        canvas.line(px(x), py(shape.low), px(x), py(shape.low + shape.height))
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


def _scale_bar(canvas: Any, shape: Outline, scale: float, left: float, voice: Voice) -> None:
    metric = voice.units == "SI"
    per = shape.in_unit("m" if metric else "ft")
    steps = (0.5, 1, 2, 5, 10, 20, 50, 100)
    length = max((one for one in steps if one * per * scale <= 110), default=steps[0])
    wide = length * per * scale
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(0.6)
    canvas.line(left, 5, left + wide, 5)
    for x in (left, left + wide / 2, left + wide):
        canvas.line(x, 5, x, 8)
    canvas.setFont(PLAIN, 6.2)
    canvas.setFillColor(GREY)
    canvas.drawString(left + wide + 5, 3.5, f"{length:g} {'m' if metric else 'ft'}")
