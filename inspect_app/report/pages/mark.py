"""Verdict marks that need no colour: the shape says it. The phone's plan uses the same shapes."""

from typing import Any

from reportlab.lib.colors import white

from inspect_app.report.pages.look import ACCENT, BOLD, GREY, INK

# A reader who prints in black sees: full lozenge, empty lozenge, question, ring, dash, dot.
SIGNS = {
    "pass": "○",
    "fail": "◆",
    "too_close": "◇",
    "not_determinable": "?",
    "not_applicable": "–",
    "recorded": "•",
    None: "·",
}


def sign(result: Any) -> str:
    """The mark as a character, for running text."""
    return SIGNS.get(result, "?")


def draw_mark(canvas: Any, x: float, y: float, result: Any, reached: str = "yes", size: float = 4.2) -> None:
    """The mark of a place, its middle at (x, y). ``reached`` not ``yes``: a square, crossed when unsafe."""
    canvas.saveState()
    canvas.setLineWidth(1.0)
    canvas.setStrokeColor(INK)
    canvas.setFillColor(white)
    if reached != "yes":
        canvas.rect(x - size * 0.9, y - size * 0.9, size * 1.8, size * 1.8, stroke=1, fill=1)
        if reached == "unsafe":
            canvas.line(x - size * 0.9, y - size * 0.9, x + size * 0.9, y + size * 0.9)
            canvas.line(x - size * 0.9, y + size * 0.9, x + size * 0.9, y - size * 0.9)
        else:
            canvas.setFillColor(GREY)
            canvas.rect(x - size * 0.9, y - size * 0.9, size * 1.8, size * 0.9, stroke=0, fill=1)
    elif result in ("fail", "too_close"):
        lozenge = canvas.beginPath()
        wide = size * 1.3
        lozenge.moveTo(x, y + wide)
        for dx, dy in ((wide, 0), (0, -wide), (-wide, 0)):
            lozenge.lineTo(x + dx, y + dy)
        lozenge.close()
        canvas.setStrokeColor(ACCENT)
        canvas.setFillColor(ACCENT if result == "fail" else white)
        canvas.drawPath(lozenge, stroke=1, fill=1)
    elif result == "recorded":
        canvas.setFillColor(INK)
        canvas.circle(x, y, size * 0.45, stroke=0, fill=1)
    else:
        canvas.circle(x, y, size, stroke=1, fill=1)
        canvas.setFillColor(INK)
        if result == "pass":
            canvas.circle(x, y, size * 0.28, stroke=0, fill=1)
        elif result == "not_applicable":
            canvas.line(x - size * 0.5, y, x + size * 0.5, y)
        elif result is not None:
            canvas.setFont(BOLD, size * 1.7)
            canvas.drawCentredString(x, y - size * 0.6, "?")
    canvas.restoreState()
