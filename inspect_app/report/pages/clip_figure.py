"""A two-piece clip's tab between its stops: where it may stand, where it stands."""

from typing import Any

from reportlab.lib.colors import white

from inspect_app.report.pages.look import ACCENT, BOLD, GREY, INK, PALE, PLAIN, TINT
from inspect_app.report.pages.movement import length, place, toward_ridge
from inspect_app.report.pages.voice import Voice
from inspect_app.report.pages.window_words import draw_window_words

HEIGHT = 104.0


def can_draw_clip(working: dict[str, Any]) -> bool:
    """Whether the verdict holds both travels and a place or a window."""
    inputs, values = working["inputs"], working["values"]
    travels = [length(inputs.get(name), "in") for name in ("travel_outward", "travel_inward")]
    known = length(values.get("offset"), "in") is not None or length(values.get("low"), "in") is not None
    return all(travel is not None and travel > 0 for travel in travels) and known


def _whisker(canvas: Any, x: float, reach: float, y: float) -> None:
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(0.8)
    canvas.line(x - reach, y, x + reach, y)
    for end in (x - reach, x + reach):
        canvas.line(end, y - 2, end, y + 2)


def draw_clip(canvas: Any, width: float, working: dict[str, Any], result: Any, voice: Voice) -> None:
    """The figure, ``HEIGHT`` high; the ridge at the left. Mid-travel is the tab's place as delivered."""
    inputs, values = working["inputs"], working["values"]
    outward, inward = (
        length(inputs["travel_outward"], "in") or 1.0,
        length(inputs["travel_inward"], "in") or 1.0,
    )
    low, high, aim, offset = (length(values.get(name), "in") for name in ("low", "high", "aim", "offset"))
    scale, middle, line = min(width * 0.5, 220.0) / (outward + inward), width / 2, 46.0
    sign = -toward_ridge(inputs)
    tab = 9.0

    def x(value: float) -> float:
        return middle + sign * max(min(value, 3 * outward), -3 * inward) * scale

    canvas.setFont(PLAIN, 6.8)
    canvas.setFillColor(GREY)
    canvas.drawString(0, line + 11, "◂ " + voice.say("ridge_way"))
    canvas.drawRightString(width, line + 11, voice.say("eave_way") + " ▸")
    stops = sorted((x(outward), x(-inward)))
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(1.0)
    canvas.setFillColor(PALE)
    canvas.rect(stops[0] - tab - 7, line - 7, stops[1] - stops[0] + 2 * tab + 14, 7, stroke=1, fill=1)
    for stop in (stops[0] - tab - 7, stops[1] + tab):
        canvas.rect(stop, line, 7, 11, stroke=1, fill=1)
    if low is not None and high is not None and low <= high:
        left, right = sorted((x(low), x(high)))
        canvas.setFillColor(TINT)
        canvas.rect(left, line - 19, right - left, 8, stroke=0, fill=1)
        canvas.setStrokeColor(ACCENT)
        canvas.setLineWidth(0.9)
        for edge in (left, right):
            canvas.line(edge, line - 21, edge, line + 30)
        if aim is not None:
            canvas.setDash((2, 1.6), 0)
            canvas.line(x(aim), line - 21, x(aim), line + 30)
            canvas.setDash((), 0)
        ends = [(x(low), place(values["low"], inputs, voice)), (x(high), place(values["high"], inputs, voice))]
        draw_window_words(canvas, width, ends, line - 18)
    if offset is not None:
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(1.1)
        canvas.setFillColor(ACCENT if result == "fail" else white)
        canvas.rect(x(offset) - tab, line, 2 * tab, 27, stroke=1, fill=1)
        canvas.setStrokeColor(white if result == "fail" else INK)
        canvas.line(x(offset), line + 4, x(offset), line + 23)
        text = place(values["offset"], inputs, voice)
        bound = length(values.get("bound"), "in")
        if bound is not None:
            text += f" ± {voice.short(values['bound'], 2 if voice.units == 'SI' else 3)}"
            _whisker(canvas, x(offset), bound * scale, line + 31)
        half = canvas.stringWidth(text, BOLD, 7.2) / 2
        canvas.setFont(BOLD, 7.2)
        canvas.setFillColor(ACCENT if result == "fail" else INK)
        canvas.drawCentredString(min(max(x(offset), half), width - half), line + 37, text)
    canvas.setFont(PLAIN, 6.2)
    canvas.setFillColor(GREY)
    canvas.drawCentredString(
        middle,
        3,
        voice.say(
            "clip_travel",
            outward=voice.short(inputs["travel_outward"]),
            inward=voice.short(inputs["travel_inward"]),
        ),
    )
