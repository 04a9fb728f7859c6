"""The days from the marks: panels set, metal temperature through the day, what changed."""

from typing import Any

from inspect_app.report.pages.look import SMALL
from inspect_app.report.pages.lot_words import lot_where
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.row import Drawing, Heading, Row, together
from inspect_app.report.pages.set_figure import HEIGHT, draw_day
from inspect_app.report.pages.text import line


def panels_set(page: Page) -> list[Any]:
    """One figure a lot of daily work that has marks, in the order of the lots."""
    lots = [one for one in sorted(page.contents["lots"], key=lambda one: one["n"]) if one["marks"] and one["rows"]]
    if not lots:
        return []
    head = [Heading(page.say("set_head"), "panels-set", 1), Row("", Paragraph(page.say("set_says"), SMALL), 4)]
    parts = [_day(page, lot) for lot in lots]
    return [together([*head, *parts[0]]), *map(together, parts[1:])]


def _day(page: Page, lot: dict[str, Any]) -> list[Any]:
    row = lot["rows"][0]
    paint = lambda canvas, width, _: draw_day(canvas, width, lot["marks"], row["from"], page.voice)  # noqa: E731
    where = lot_where(page, row["area"], row["from"], lot["placed_to"])
    title = page.say("set_day", lot=lot["n"], day=page.voice.day(lot["day"]), crew=line(lot["crew"], 40),
                     where=where, count=len(lot["marks"]))  # fmt: skip
    changes = [
        page.say("set_changed", panel=one["panel"], what=page.say(f"change.{one['change']}"))
        for one in lot["changes"][:12]
    ]
    text = page.say("set_changes", changes="; ".join(changes)) if changes else page.say("set_no_changes")
    if lot["placed_to"] is None:
        return []
    read = sorted({str(one["metal_temperature_by"]) for one in lot["marks"] if one["metal_temperature_by"]})
    if read:
        text += " " + page.say("set_by", by=", ".join(page.say(f"metal_by.{one}") for one in read))
    return [Row(title, Drawing(HEIGHT, paint, 0, page.say("alt.set"))), Row("", Paragraph(text, SMALL), 6)]
