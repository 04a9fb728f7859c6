"""A screw in its slot, drawn to scale: the slot, where the screw may stand, where it stands, and the
bound."""

from typing import Any

from reportlab.lib.colors import white

from inspect_app.report.pages.look import ACCENT, BOLD, GREY, HAIR, INK, PALE, PLAIN, TINT
from inspect_app.report.pages.movement import length, place, toward_ridge
from inspect_app.report.pages.voice import Voice
from inspect_app.report.pages.window_words import draw_window_words

HEIGHT = 104.0


def can_draw_slot(working: dict[str, Any]) -> bool:
    """Whether the verdict holds a slot, a shank and either a place or a window."""
    inputs, values = working["inputs"], working["values"]
    slot, shank = length(inputs.get("slot"), "in"), length(inputs.get("shank"), "in")
    known = length(values.get("offset"), "in") is not None or length(values.get("low"), "in") is not None
    return slot is not None and shank is not None and 0 < shank < slot and known


def draw_slot(canvas: Any, width: float, working: dict[str, Any], result: Any, voice: Voice) -> None:
    """The figure, ``HEIGHT`` high; the ridge is at the left, as the first tap."""
    inputs, values = working["inputs"], working["values"]
    slot, shank = length(inputs["slot"], "in") or 1.0, length(inputs["shank"], "in") or 0.1
    low, high, aim, offset, bound = (
        length(values.get(name), "in") for name in ("low", "high", "aim", "offset", "bound")
    )
    scale, middle, line = min(width * 0.52, 230.0) / slot, width / 2, 62.0
    sign = -toward_ridge(inputs)  # toward the ridge is drawn to the left

    def x(value: float) -> float:
        return middle + sign * max(min(value, 2 * slot), -2 * slot) * scale

    _ends(canvas, width, voice)
    tall = max(shank * scale * 1.06, 10.0)
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(1.0)
    canvas.setFillColor(PALE)
    canvas.roundRect(middle - slot * scale / 2, line - tall / 2, slot * scale, tall, tall / 2 - 0.01, stroke=1, fill=1)
    if low is not None and high is not None and low <= high:
        _window(canvas, width, x(low), x(high), None if aim is None else x(aim), line, tall, values, inputs, voice)
    if offset is not None:
        _screw(canvas, x(offset), line, shank * scale / 2, None if bound is None else bound * scale, result)
        canvas.setFont(BOLD, 7.2)
        canvas.setFillColor(ACCENT if result == "fail" else INK)
        text = place(values["offset"], inputs, voice)
        if bound is not None:
            text += f" ± {voice.short(values['bound'], 2 if voice.units == 'SI' else 3)}"
        half = canvas.stringWidth(text, BOLD, 7.2) / 2
        canvas.drawCentredString(min(max(x(offset), half), width - half), line + tall / 2 + 14, text)
    canvas.setFont(PLAIN, 6.2)
    canvas.setFillColor(GREY)
    under = voice.say("slot_length", amount=voice.short(inputs["slot"]))
    canvas.drawCentredString(middle, 3, f"{under}, {voice.say('card_in_view')}" if inputs.get("card") else under)
    canvas.setStrokeColor(HAIR)
    canvas.setLineWidth(0.5)
    canvas.line(middle - slot * scale / 2, 12, middle + slot * scale / 2, 12)
    for end in (-1, 1):
        canvas.line(middle + end * slot * scale / 2, 9, middle + end * slot * scale / 2, 15)


def _ends(canvas: Any, width: float, voice: Voice) -> None:
    canvas.setFont(PLAIN, 6.8)
    canvas.setFillColor(GREY)
    canvas.drawString(0, 59.5, "◂ " + voice.say("ridge_way"))
    canvas.drawRightString(width, 59.5, voice.say("eave_way") + " ▸")


def _window(
    canvas: Any,
    width: float,
    low: float,
    high: float,
    aim: float | None,
    line: float,
    tall: float,
    values: dict[str, Any],
    inputs: dict[str, Any],
    voice: Voice,
) -> None:
    left, right = min(low, high), max(low, high)
    base = line - tall / 2 - 13
    canvas.setFillColor(TINT)
    canvas.rect(left, base, right - left, 8, stroke=0, fill=1)
    canvas.setStrokeColor(ACCENT)
    canvas.setLineWidth(0.9)
    for edge in (left, right):
        canvas.line(edge, base - 2, edge, line + tall / 2 + 3)
    if aim is not None:
        canvas.setLineWidth(0.7)
        canvas.setDash((2, 1.6), 0)
        canvas.line(aim, base - 2, aim, line + tall / 2 + 3)
        canvas.setDash((), 0)
    ends = [(low, place(values["low"], inputs, voice)), (high, place(values["high"], inputs, voice))]
    draw_window_words(canvas, width, ends, base + 1)


def _screw(canvas: Any, x: float, line: float, radius: float, bound: float | None, result: Any) -> None:
    canvas.setStrokeColor(INK)
    canvas.setFillColor(ACCENT if result == "fail" else white)
    canvas.setLineWidth(1.1)
    canvas.circle(x, line, radius, stroke=1, fill=1)
    canvas.setLineWidth(0.8)
    canvas.setStrokeColor(white if result == "fail" else INK)
    canvas.line(x - radius * 0.5, line, x + radius * 0.5, line)
    canvas.line(x, line - radius * 0.5, x, line + radius * 0.5)
    if bound is not None:
        top = line + radius + 5
        canvas.setStrokeColor(INK)
        canvas.line(x - bound, top, x + bound, top)
        for end in (x - bound, x + bound):
            canvas.line(end, top - 2.5, end, top + 2.5)
