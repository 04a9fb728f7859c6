"""What stands on a roof plan: the fixed line and the places looked at, their labels out of each other's way."""

from typing import Any

from reportlab.lib.colors import white

from inspect_app.report.pages.look import ACCENT, BOLD, INK
from inspect_app.report.pages.mark import draw_mark
from inspect_app.report.pages.outline import Outline
from inspect_app.report.pages.voice import Voice

Box = tuple[float, float, float, float]
Spot = tuple[float, float, dict[str, Any]]


def place_spots(shape: Outline, stations: list[dict[str, Any]], px: Any, py: Any) -> list[Spot]:
    """``(x, y, station)`` on the page for each station that lies on a panel of this area."""
    spots = []
    for one in stations:
        x, along = shape.middle(one.get("panel")), shape.along(one, "from_low_end")
        if x is not None and along is not None:
            spots.append((px(x), py(shape.ends(x)[0] + along), one))
    return spots


def mark_box(x: float, y: float, size: float) -> Box:
    """The room that a mark takes."""
    return x - size - 1, y - size - 1, x + size + 1, y + size + 1


def draw_fixed_line(
    canvas: Any, shape: Outline, fixed: float, px: Any, py: Any, voice: Voice | None, taken: list[Box]
) -> None:
    canvas.setStrokeColor(ACCENT)
    canvas.setLineWidth(1.4)
    canvas.setDash((7, 2.5), 0)
    for x, far in shape.strips():
        low, high = shape.ends((x + far) / 2)
        y = min(low + fixed, high)
        canvas.line(px(x), py(y), px(far), py(y))
    canvas.setDash((), 0)
    if voice is None:
        return
    word = voice.say("fixed_line")
    wide = canvas.stringWidth(word, BOLD, 6.5)
    low, high = shape.ends(shape.left + shape.width / 2)
    y = py(min(low + fixed, high))
    under = y - 9.5 if fixed > shape.height * 0.5 else y + 3.5
    left, right = px(shape.left) + 4, px(shape.left + shape.width) - 4 - wide
    spots = [(x, under, x + wide, under + 7) for x in (right, left, (left + right) / 2)]
    box = next((spot for spot in spots if not _hits(spot, taken)), spots[0])
    taken.append(box)
    canvas.setFillColor(white)
    canvas.rect(box[0] - 2, box[1] - 0.8, wide + 4, 8, stroke=0, fill=1)
    canvas.setFont(BOLD, 6.5)
    canvas.setFillColor(ACCENT)
    canvas.drawString(box[0], box[1] + 1.2, word)


def _hits(box: Box, taken: list[Box]) -> bool:
    return any(box[0] < t[2] and box[2] > t[0] and box[1] < t[3] and box[3] > t[1] for t in taken)


def draw_places(canvas: Any, spots: list[Spot], taken: list[Box], size: float, labelled: bool) -> None:
    """The marks, and beside each its number where nothing else stands. ``taken`` grows by the numbers."""
    for x, y, one in spots:
        draw_mark(canvas, x, y, one["result"], one["reached"] or "yes", size)
        if not labelled:
            continue
        text = str(one["n"])
        wide = canvas.stringWidth(text, BOLD, 7)
        beside = [(size + 3, -2.5), (-size - 3 - wide, -2.5), (-wide / 2, size + 3), (-wide / 2, -size - 8)]
        boxes = [(x + dx, y + dy - 1, x + dx + wide, y + dy + 6) for dx, dy in beside]
        box = next((one for one in boxes if not _hits(one, taken)), boxes[0])
        taken.append(box)
        canvas.setFillColor(white)
        canvas.rect(box[0] - 0.8, box[1] - 0.4, wide + 1.6, 7.6, stroke=0, fill=1)
        canvas.setFillColor(INK)
        canvas.setFont(BOLD, 7)
        canvas.drawString(box[0], box[1] + 1, text)
