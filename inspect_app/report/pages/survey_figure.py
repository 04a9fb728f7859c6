"""The place drawn: the panels around it, the radius, and every place there that somebody looked at."""

from typing import Any

from inspect_app.report.pages.look import ACCENT, BOLD, GREY, HAIR, INK, PALE, PLAIN
from inspect_app.report.pages.mark import draw_mark
from inspect_app.report.pages.outline import Outline, Undrawable
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.plan_places import found_by_hand
from inspect_app.report.pages.text import plain

PLAN_TALL = 190.0
MOST = 120  # marks: more would hide each other


def draw_place(canvas: Any, width: float, tall: float, page: Page) -> None:
    """A window on the area, a little wider than the radius or the neighbors, whichever is more; up-slope is up."""
    place = page.contents["survey"]["place"]
    area = next(one for one in page.contents["areas"] if one["id"] == place["area"])
    try:
        shape = Outline(area)
    except Undrawable:
        return
    radius, along = shape.along(place, "radius"), shape.along(place, "from_low_end")
    strips = shape.strips()
    if radius is None or along is None or not 1 <= place["panel"] <= len(strips):
        return
    left, right = strips[place["panel"] - 1]
    x = left if shape.from_right else right
    y = shape.ends((left + right) / 2)[0] + along
    half = max(radius * 1.15, (right - left) * 3.2)
    scale = min(width / (2 * half), (tall - 14) / (2 * half))
    middle, base = width / 2, 12 + (tall - 14) / 2

    def px(at: float) -> float:
        return middle + (at - x) * scale

    def py(at: float) -> float:
        return base + (at - y) * scale

    canvas.saveState()
    window = canvas.beginPath()
    window.rect(middle - half * scale, base - half * scale, 2 * half * scale, 2 * half * scale)
    canvas.clipPath(window, stroke=0, fill=0)
    ring = canvas.beginPath()
    for at, (ax, ay) in enumerate(shape.points):
        (ring.moveTo if at == 0 else ring.lineTo)(px(ax), py(ay))
    ring.close()
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(1.2)
    canvas.setFillColor(PALE)
    canvas.drawPath(ring, stroke=1, fill=1)
    canvas.setStrokeColor(HAIR)
    canvas.setLineWidth(0.5)
    for seam in shape.seams():
        low, high = shape.ends(seam)
        canvas.line(px(seam), py(low), px(seam), py(high))
    canvas.setStrokeColor(ACCENT)
    canvas.setLineWidth(1.1)
    canvas.setDash([4, 2], 0)
    canvas.circle(middle, base, radius * scale, stroke=1, fill=0)
    canvas.setDash((), 0)
    _marks(canvas, shape, page, px, py)
    canvas.setStrokeColor(ACCENT)
    canvas.setLineWidth(1.4)
    canvas.line(middle - 7, base, middle + 7, base)
    canvas.line(middle, base - 7, middle, base + 7)
    canvas.restoreState()
    _numbers(canvas, shape, place["panel"], px, (middle - half * scale, middle + half * scale))
    canvas.setFillColor(GREY)
    canvas.setFont(PLAIN, 6)
    canvas.drawRightString(width, tall - 8, "▲ " + plain(page.say("survey.up"), 40))


def _marks(canvas: Any, shape: Outline, page: Page, px: Any, py: Any) -> None:
    area = page.contents["survey"]["place"]["area"]
    places = [one for one in page.contents["stations"] if one["area"] == area]
    places += found_by_hand(page.contents["findings"], area)
    strips = shape.strips()
    for one in places[:MOST]:
        along = shape.along(one, "from_low_end")
        if along is None or not isinstance(one["panel"], int) or not 1 <= one["panel"] <= len(strips):
            continue
        left, right = strips[one["panel"] - 1]
        x, y = left if shape.from_right else right, shape.ends((left + right) / 2)[0] + along
        draw_mark(canvas, px(x), py(y), one["result"], one["reached"] or "yes", 3.6)
        canvas.setFillColor(INK)
        canvas.setFont(BOLD, 6)
        canvas.drawString(px(x) + 6, py(y) - 2, plain(one["n"], 8))


def _numbers(canvas: Any, shape: Outline, own: int, px: Any, ends: tuple[float, float]) -> None:
    """Panel numbers below the window, as many as fit beside each other."""
    canvas.setFont(PLAIN, 6.2)
    last = -20.0
    for at, (left, right) in enumerate(shape.strips(), 1):
        middle = px((left + right) / 2)
        if ends[0] <= middle <= ends[1] and (abs(middle - last) > 12 or at == own):
            canvas.setFillColor(ACCENT if at == own else GREY)
            canvas.drawCentredString(middle, 2, str(at))
            last = middle
