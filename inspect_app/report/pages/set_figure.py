"""A crew's day as a figure: panels set as a stair, the metal's temperature over it, changes as flags on the stair."""

from datetime import datetime
from itertools import pairwise
from typing import Any

from inspect_app.report.pages.look import ACCENT, BOLD, GREY, HAIR, INK, PALE, PLAIN
from inspect_app.report.pages.voice import Voice

HEIGHT = 104.0
LEFT, LOW, TOP = 24.0, 14.0, 30.0  # room for numbers, hours, and temperatures above


def draw_day(canvas: Any, width: float, marks: list[dict[str, Any]], first: int, voice: Voice) -> None:
    """``marks``: of one lot, in order; ``first``: its first panel."""
    told = sorted((minute, mark) for mark in marks if (minute := _minute(mark["at"])) is not None)[:200]
    if not told:
        return
    begin, end = told[0][0] // 60 * 60, -(-told[-1][0] // 60) * 60
    end = max(end, begin + 60)
    most = max(mark["to"] for _, mark in told)
    wide, tall = width - LEFT - 4, HEIGHT - LOW - TOP

    def at(minute: float, panel: float) -> tuple[float, float]:
        return LEFT + (minute - begin) / (end - begin) * wide, LOW + (panel - first + 1) / (most - first + 1) * tall

    _hours(canvas, begin, end, at, tall)
    steps = canvas.beginPath()
    steps.moveTo(*at(begin, first - 1))
    before = first - 1
    for minute, mark in told:
        steps.lineTo(*at(minute, before))
        steps.lineTo(*at(minute, mark["to"]))
        before = mark["to"]
    steps.lineTo(*at(end, before))
    steps.lineTo(*at(end, first - 1))
    steps.close()
    canvas.setFillColor(PALE)
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(0.9)
    canvas.drawPath(steps, stroke=1, fill=1)
    canvas.setFillColor(GREY)
    canvas.setFont(PLAIN, 5.8)
    for panel in (first, most):
        canvas.drawRightString(LEFT - 3, at(begin, panel)[1] - 2, str(panel))
    for minute, mark in told:
        if mark["change"]:
            _flag(canvas, *at(minute, mark["to"]), str(mark["to"] + 1))
    _metal(canvas, [(at(minute, 0)[0], mark) for minute, mark in told], voice)


def _minute(moment: Any) -> int | None:
    try:
        when = datetime.fromisoformat(str(moment))
    except ValueError:
        return None
    return when.hour * 60 + when.minute


def _hours(canvas: Any, begin: int, end: int, at: Any, tall: float) -> None:
    canvas.setStrokeColor(HAIR)
    canvas.setLineWidth(0.35)
    canvas.setFont(PLAIN, 5.8)
    canvas.setFillColor(GREY)
    step = 60 * (1 + (end - begin) // 780)
    for minute in range(begin, end + 1, step):
        x = at(minute, 0)[0]
        canvas.line(x, LOW, x, LOW + tall)
        canvas.drawCentredString(x, LOW - 8, f"{minute // 60 % 24:02}:{minute % 60:02}")


def _flag(canvas: Any, x: float, y: float, panel: str) -> None:
    canvas.setStrokeColor(ACCENT)
    canvas.setFillColor(ACCENT)
    canvas.setLineWidth(0.8)
    canvas.line(x, y, x, y - 12)
    flag = canvas.beginPath()
    flag.moveTo(x, y - 12)
    flag.lineTo(x + 6, y - 9.5)
    flag.lineTo(x, y - 7)
    flag.close()
    canvas.drawPath(flag, stroke=0, fill=1)
    canvas.setFont(BOLD, 6)
    canvas.drawString(x + 7.5, y - 11.6, panel)


def _metal(canvas: Any, marks: list[tuple[float, dict[str, Any]]], voice: Voice) -> None:
    """The temperature where it was told, joined; a number wherever it is another."""
    degrees = [
        (x, mark["metal_temperature"], degree) for x, mark in marks
        if (degree := _degrees(mark["metal_temperature"])) is not None
    ]  # fmt: skip
    if not degrees:
        return
    values = [degree for _, _, degree in degrees]
    low, span = min(values), max(max(values) - min(values), 1.0)
    points = [(x, HEIGHT - TOP + 6 + (degree - low) / span * 12, told, degree) for x, told, degree in degrees]
    canvas.setStrokeColor(ACCENT)
    canvas.setLineWidth(0.9)
    for one, other in pairwise(points):
        canvas.line(one[0], one[1], other[0], other[1])
    last: float | None = None
    right = -100.0
    for x, y, told, degree in points:
        canvas.setFillColor(ACCENT)
        canvas.circle(x, y, 1.4, stroke=0, fill=1)
        text = voice.short(told)
        if degree != last and x > right + 3:
            canvas.setFont(PLAIN, 6)
            canvas.drawString(x, y + 3.2, text)
            right = x + canvas.stringWidth(text, PLAIN, 6)
        last = degree


def _degrees(told: Any) -> float | None:
    try:
        value = float(told["value"])
    except (TypeError, KeyError, ValueError):
        return None
    return (value - 32) / 1.8 if told.get("unit") == "F" else value
