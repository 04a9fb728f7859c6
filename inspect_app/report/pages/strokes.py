"""A signature as it was drawn with the finger: lines, not a picture."""

from typing import Any

from inspect_app.report.pages.look import HAIR, INK

HEIGHT = 74.0


def draw_strokes(canvas: Any, width: float, strokes: list[list[int]], size: Any) -> None:
    """The strokes in a box ``HEIGHT`` high over a line; ``size`` is the canvas they were drawn on."""
    wide, tall = min(width, 250.0), HEIGHT - 8
    xs = [x for stroke in strokes for x in stroke[0::2]]
    ys = [y for stroke in strokes for y in stroke[1::2]]
    given = size if isinstance(size, dict) else {}
    across = _positive(given.get("width"), max(xs, default=1))
    down = _positive(given.get("height"), max(ys, default=1))
    scale = min(wide / across, tall / down)
    canvas.setStrokeColor(HAIR)
    canvas.setLineWidth(0.6)
    canvas.line(0, 3, wide, 3)
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(1.3)
    canvas.setLineCap(1)
    canvas.setLineJoin(1)
    for stroke in strokes[:400]:
        points = list(zip(stroke[0::2], stroke[1::2], strict=True))[:5000]
        path = canvas.beginPath()
        for at, (x, y) in enumerate(points):
            shown = (min(max(x, 0), across) * scale, HEIGHT - min(max(y, 0), down) * scale)
            (path.moveTo if at == 0 else path.lineTo)(*shown)
        canvas.drawPath(path, stroke=1, fill=0)


def _positive(value: Any, otherwise: int) -> float:
    good = isinstance(value, int) and not isinstance(value, bool) and 0 < value <= 100_000
    return float(value) if good else float(max(min(otherwise, 100_000), 1))
