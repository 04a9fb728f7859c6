"""The roof: every area in its place, then the areas that nobody placed."""

from typing import Any

from reportlab.pdfbase.pdfmetrics import stringWidth

from inspect_app.report.pages.hatch import STATES, swatch
from inspect_app.report.pages.look import BODY, INK, PLAIN, SMALL
from inspect_app.report.pages.mark import draw_mark
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.roof_plan import draw_roof, placed_areas, roof_height
from inspect_app.report.pages.row import Drawing, Heading, Row, together
from inspect_app.report.pages.text import line

TALLEST, WIDE = 470.0, 486.0  # the narrower of the two papers
MARKS = (("fail", "yes"), ("too_close", "yes"), ("not_determinable", "yes"), ("pass", "yes"), (None, "unsafe"),
         (None, "covered"))  # fmt: skip


def roof_section(page: Page, number: str) -> list[Any]:
    """The roof plan with its legend; a roof of which nothing is placed is drawn area by area further on."""
    areas = page.contents["areas"]
    placed = placed_areas(areas)
    story: list[Any] = [Heading(page.say("chapter.roof"), "roof", number=number)]
    if placed:
        paint = lambda canvas, width, height: draw_roof(canvas, width, height, placed, page)  # noqa: E731
        story += [
            Row("", Paragraph(page.say("roof_says" if page.contents["coverage"] else "roof_says_part"), SMALL), 4),
            Drawing(roof_height(placed, WIDE, TALLEST), paint, 3, page.say("alt.roof", areas=len(placed))),
            hatch_legend(page, [one["id"] for one in areas]),
            mark_legend(page),
        ]
    known = [one.area["id"] for one in placed]
    left = [line(one["name"], 60) for one in areas if one["id"] not in known]
    if left:
        story.append(Row(page.say("roof_unplaced"), Paragraph(", ".join(left), BODY)))
    if not areas:
        story.append(Row("", Paragraph(page.say("no_area"), BODY)))
    return [together(story)]


def hatch_legend(page: Page, areas: list[Any]) -> Any:
    """The hatches of the states that these areas have, and the line between two zones where there are any."""
    told = page.contents["coverage"]
    there = {run["state"] for area in areas for run in (told.get(area) or {}).get("runs") or []}
    named = [(state, page.say(f"coverage.{state}")) for state in STATES if state in there]
    if any(one["bands"] for one in page.contents["areas"] if one["id"] in areas):
        named.append(("zones", page.say("legend.zones")))
    spots, x, row = [], 8.0, 0
    for state, word in named:
        wide = stringWidth(word, PLAIN, 6.6) + 34
        if x + wide > WIDE:
            x, row = 8.0, row + 1
        spots.append((x, row, state, word))
        x += wide

    def paint(canvas: Any, width: float, height: float) -> None:
        for x, row, state, word in spots:
            y = height - 11 - 13 * row
            if state == "zones":
                canvas.setDash([2.2, 1.5], 0)
                canvas.setLineWidth(0.8)
                canvas.setStrokeColor(INK)
                canvas.line(x, y + 4, x + 16, y + 4)
                canvas.setDash((), 0)
            else:
                swatch(canvas, x, y, 16, 8.5, state)
            canvas.setFillColor(INK)
            canvas.setFont(PLAIN, 6.6)
            canvas.drawString(x + 20, y + 1.8, word)

    return Drawing(13.0 * (row + 1) + 1, paint, 1, page.say("alt.legend"))


def mark_legend(page: Page) -> Any:
    """The marks of places looked at."""

    def paint(canvas: Any, width: float, height: float) -> None:
        x = 12.0
        for result, reached in MARKS:
            draw_mark(canvas, x, 8, result, reached, 3.6)
            word = page.say(f"legend.{result}" if reached == "yes" else f"legend.{reached}")
            canvas.setFont(PLAIN, 6.6)
            canvas.setFillColor(INK)
            canvas.drawString(x + 8, 5.6, word)
            x += canvas.stringWidth(word, PLAIN, 6.6) + 22

    return Drawing(18, paint, 6, page.say("alt.legend"))
