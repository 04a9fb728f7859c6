"""Fasteners along a leg as they were measured, against the approved spacing."""

from typing import Any

from inspect_app.report.pages.look import ACCENT, BOLD, GREY, INK, PLAIN
from inspect_app.report.pages.movement import length
from inspect_app.report.pages.voice import Voice

HEIGHT = 58.0
MOST = 24  # gaps drawn; the rest is in the numbers


def gaps_of(working: dict[str, Any]) -> list[tuple[float, Any]]:
    """``(inches, as recorded)`` of each gap that can be read."""
    gaps = working["inputs"].get("gaps")
    read = [(length(gap, "in"), gap) for gap in gaps] if isinstance(gaps, list) else []
    return [(value, gap) for value, gap in read if value is not None and value > 0]


def draw_spacing(canvas: Any, width: float, working: dict[str, Any], voice: Voice) -> None:
    """The strip, ``HEIGHT`` high: a tick for each fastener, gaps beyond the limit heavy, the limit
    beneath."""
    gaps = gaps_of(working)[:MOST]
    limit = length(working["inputs"].get("limit"), "in") or length(working["values"].get("limit"), "in")
    total = max(sum(value for value, _ in gaps), limit or 0.0)
    scale, line, x = (width - 4) / total, 34.0, 2.0
    for value, gap in gaps:
        wide = limit is not None and value > limit * (1 + 1e-9)
        canvas.setStrokeColor(ACCENT if wide else INK)
        canvas.setLineWidth(2.6 if wide else 0.7)
        canvas.line(x, line, x + value * scale, line)
        text = voice.short(gap)
        canvas.setFont(BOLD if wide else PLAIN, 6.4)
        canvas.setFillColor(ACCENT if wide else INK)
        if canvas.stringWidth(text, BOLD, 6.4) < value * scale - 2 or wide:
            canvas.drawCentredString(x + value * scale / 2, line + 8, text)
        x += value * scale
    x = 2.0
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(1.0)
    for value in [0.0] + [value for value, _ in gaps]:
        x += value * scale
        canvas.line(x, line - 5, x, line + 5)
    if limit is not None:
        canvas.setLineWidth(0.6)
        canvas.setStrokeColor(GREY)
        canvas.line(2, 14, 2 + limit * scale, 14)
        for end in (2, 2 + limit * scale):
            canvas.line(end, 11, end, 17)
        canvas.setFont(PLAIN, 6.4)
        canvas.setFillColor(GREY)
        shown = working["inputs"].get("limit") or working["values"].get("limit")
        canvas.drawString(2, 3, voice.say("spacing_limit", amount=voice.short(shown)))
