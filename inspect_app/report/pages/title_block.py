"""The title block at the foot of the cover, as on a drawing: who, when, what, under which number."""

from typing import Any

from inspect_app.report.pages.look import BODY, CELL, HAIR, INK, SMALL, STRONG
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.text import line


def draw_title_block(page: Page, canvas: Any, x: float, y: float, width: float, height: float) -> None:
    """Four rows of cells between thin rules; each text is cut to its cell."""
    rows = _rows(page)
    each = height / len(rows)
    with canvas.artifact():
        _rules(canvas, x, y, width, height, rows)
    for at, row in enumerate(rows):
        left = x
        for share, label, text in row:
            _cell(canvas, left + 7, y + height - at * each - 5, width * share - 14, each - 7, label, text)
            left += width * share


def _rules(canvas: Any, x: float, y: float, width: float, height: float, rows: list[Any]) -> None:
    each = height / len(rows)
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(1.0)
    canvas.rect(x, y, width, height, stroke=1, fill=0)
    for at, row in enumerate(rows):
        top = y + height - at * each
        if at:
            canvas.setStrokeColor(HAIR)
            canvas.setLineWidth(0.5)
            canvas.line(x, top, x + width, top)
        left = x
        for cell, (share, _, _) in enumerate(row):
            if cell:
                canvas.setStrokeColor(HAIR)
                canvas.line(left, top, left, top - each)
            left += width * share


def _rows(page: Page) -> list[list[tuple[float, str, str]]]:
    contents, cover, voice = page.contents, page.contents["cover"], page.voice
    dates = [voice.day(one) for one in dict.fromkeys(cover["dates"])]
    number = page.say("number", number=contents["number"])
    if contents["supersedes"]:
        number += " · " + page.say("supersedes", number=contents["supersedes"])
    signed = ", ".join(line(name, 60) for name in cover["signed_by"][:3]) or page.say("nobody_signed")
    parties = [f"{page.say('party.' + str(one.get('role')))}: {line(one.get('name'), 60)}"
               for one in (contents["job"]["parties"] or [])[:4] if isinstance(one, dict)]  # fmt: skip
    return [
        [
            (
                0.5,
                page.say("issued_by"),
                line(contents["issuer"], 90) if contents["issuer"] else page.say("not_stated"),
            ),
            (0.25, page.say("report"), number),
            (0.25, page.say("issued"), voice.day(contents["issued"])),
        ],
        [
            (0.5, page.say("inspected"), line(", ".join(str(name) for name in cover["areas"]), 120)),
            (0.25, page.say("dates"), " – ".join(dates) or "—"),
            (
                0.25,
                page.say("extent"),
                page.say(
                    "extent_says",
                    stations=cover["stations"],
                    answers=cover["answers"],
                    photos=cover["photos"],
                ),
            ),
        ],
        [
            (0.5, page.say("parties"), "; ".join(parties) or "—"),
            (
                0.25,
                page.say("inspected_by"),
                ", ".join(line(name, 60) for name in cover["inspected_by"][:3]) or "—",
            ),
            (0.25, page.say("signed_by"), signed),
        ],
    ]


def _cell(canvas: Any, x: float, top: float, width: float, height: float, label: str, text: str) -> None:
    head = Paragraph(label, SMALL)
    _, tall = head.wrap(width, height)
    head.drawOn(canvas, x, top - tall)
    body = _fitting(text, width, height - tall)
    body.drawOn(canvas, x, top - tall - body.height)


def _fitting(text: str, width: float, height: float) -> Paragraph:
    """The text in the largest type it fits in; one that fits in none loses words at its end, and says so."""
    for style in (STRONG, BODY, CELL) if len(text) <= 60 else (BODY, CELL):
        body = Paragraph(text, style)
        if body.wrap(width, height)[1] <= height:
            return body
    words = text.split(" ")
    while len(words) > 1:
        words.pop()
        body = Paragraph(" ".join([*words, "…"]), CELL)
        if body.wrap(width, height)[1] <= height:
            return body
    return body
