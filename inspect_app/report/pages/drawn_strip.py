"""The drawn panels of a lot in the order of the draw, as ribs beside each other, each under its mark."""

from typing import Any

from inspect_app.report.pages.look import BOLD, GREY, HAIR, INK, PLAIN
from inspect_app.report.pages.lot_words import ranges
from inspect_app.report.pages.mark import draw_mark
from inspect_app.report.pages.page import Page

HEIGHT = 27.0
WIDEST, MOST = 30.0, 40
RESULTS = ("bad", "unknown", "good")  # the worst of a panel's severities first
WAITING = ("due", "next")


def known_of(stop: dict[str, Any]) -> str:
    """A word of ``drawn``: the result of a panel that was looked at, else its state."""
    results = list((stop.get("results") or {}).values())
    if "bad" in results:
        return "bad"
    if stop["state"] == "looked":
        return next((one for one in RESULTS if one in results), "unknown")
    return str(stop["state"])


def draw_strip(canvas: Any, width: float, lot: dict[str, Any], page: Page) -> None:
    """One cell a panel; what stays sealed has no number."""
    stops = lot["stops"][:MOST]
    wide = min(WIDEST, width / max(len(stops), 1))
    for at, stop in enumerate(stops):
        x, known = at * wide, known_of(stop)
        canvas.setStrokeColor(HAIR)
        canvas.setLineWidth(0.6)
        canvas.rect(x, 0, wide, 12, stroke=1, fill=0)
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(1.4)
        canvas.line(x + wide, 0, x + wide, 14.5)  # the rib that hides the leg
        canvas.setFillColor(INK if "panel" in stop else GREY)
        canvas.setFont(BOLD if known == "bad" else PLAIN, 7.2)
        canvas.drawCentredString(x + wide / 2, 3.4, str(stop.get("panel", "▪")))
        _mark(canvas, x + wide / 2, 20, known)


def _mark(canvas: Any, x: float, y: float, known: str) -> None:
    shown = {"good": "pass", "bad": "fail", "dropped": "not_applicable", "unknown": "not_determinable",
             "part": "not_determinable", "sealed": "recorded"}  # fmt: skip
    reached = "yes" if known in shown or known in WAITING else "unsafe" if known == "unsafe" else "covered"
    draw_mark(canvas, x, y, shown.get(known), reached, 3.6)


def drawn_words(page: Page, lot: dict[str, Any]) -> str:
    """Which of them are what: ``looked at, nothing bad: 8, 11 · offered, nobody came: 23``."""
    grouped: dict[str, list[dict[str, Any]]] = {}
    for stop in lot["stops"]:
        grouped.setdefault(known_of(stop), []).append(stop)
    told = []
    for known, stops in grouped.items():
        if known == "sealed":
            told.append(page.say("drawn_sealed", count=len(stops)))
            continue
        by_area: dict[str, list[int]] = {}
        for stop in stops:
            by_area.setdefault(stop["area"], []).append(stop["panel"])
        several = len(lot["rows"]) > 1
        where = "; ".join((f"{page.area(area)} " if several else "") + ranges(page, by_area[area]) for area in by_area)
        told.append(f"{page.say('drawn.' + known)}: {where}")
    return " · ".join(told)
