"""A crew's day: what was told and what is known of it under the ten letters of a contractor's daily report."""

from typing import Any

from inspect_app.report.pages.daily_checks import checks
from inspect_app.report.pages.daily_told import BY_ITEM
from inspect_app.report.pages.daily_words import worded
from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.picture import Pictures
from inspect_app.report.pages.row import Heading, Row, together
from inspect_app.report.pages.text import line

TALLEST, BESIDE = 92.0, 3
LONG_SILENCE = 7  # days: UFGS 01 45 00


def crew_days(page: Page) -> list[Any]:
    """Every day of every crew, in order, with the silence between them."""
    days = page.contents["daily"]
    if not days:
        return [Row("", Paragraph(page.say("no_days"), BODY), 8)]
    quiet = {one["before"]: one for one in page.contents["silent"]}
    story: list[Any] = [Row("", Paragraph(page.say("days_say"), SMALL), 4)]
    for at, day in enumerate(days):
        if day["day"] in quiet and days[at - 1]["day"] != day["day"]:
            story.append(Row("", Paragraph(_silence(page, quiet[day["day"]]), BODY), 4))
        story += _day(page, day)
    return story


def _silence(page: Page, one: dict[str, Any]) -> str:
    says = page.say("day_silent", count=one["days"], after=page.voice.day(one["after"]),
                    before=page.voice.day(one["before"]))  # fmt: skip
    return f"{says} {page.say('day_silent_long')}" if one["days"] >= LONG_SILENCE else says


def _day(page: Page, day: dict[str, Any]) -> list[Any]:
    crew = line(day["crew"], 60) if day["crew"].strip() else page.say("day_no_crew")
    title = page.say("day_head", day=page.voice.day(day["day"]), crew=crew)
    title += "" if day["worked"] else f" · {page.say('day_no_work')}"
    order = {one["digest"]: n for n, one in enumerate(day["records"], 1)}
    head: list[Any] = [Heading(title, f"day-{day['n']}", 1, title)]
    head += [Row("", Paragraph(text, BODY), 3) for text in _first(page, day, order)]
    # A day without work has nothing under most letters: who says so, and what was known, is all there is.
    told = [(None, one) for one in day["beside"]] + [(one["letter"], one) for one in day["items"]]
    rows = [
        Row(_label(page, letter, one), Paragraph(text, BODY if one["told"] else SMALL))
        for letter, one in told if one["told"] or (letter and day["worked"])
        for text in _texts(page, day, one, order)[:1]
    ]  # fmt: skip
    return [together([*head, *rows[:3]]), *rows[3:], *_pictures(page, day)]


def _first(page: Page, day: dict[str, Any], order: dict[str, int]) -> list[str]:
    """What a reader must know before the letters."""
    told = [f"<b>{page.say('day_no_work_why', why=worded(page, 'why', one['why']), n=order[one['digest']])}</b>"
            for one in day["no_work"]]  # fmt: skip
    told += [f"<b>▲ {page.say('day_record.problem.' + code)}</b>" for code in day["problems"]]
    told += [page.say("day_several", count=one["heads"]) for one in day["records"] if one["heads"] > 1][:1]
    if not day["records"]:
        told.append(page.say("day_none"))
    others = [line(name, 60) for name in day["crews"] if name != day["crew"]]
    return told + ([page.say("day_also_spelled", names=", ".join(others))] if others else [])


def _label(page: Page, letter: str | None, one: dict[str, Any]) -> str:
    name = page.say(f"day_record.item.{one['name']}")
    return f"<b>{letter})</b> {name}" if letter else name


def _texts(page: Page, day: dict[str, Any], one: dict[str, Any], order: dict[str, int]) -> list[str]:
    """All that is told under one letter, as one paragraph; each record by its number where there are several."""
    if not one["told"]:
        return [page.say("day_not_told")]
    told = checks(page, one["known"]) if one["name"] == "checks" else BY_ITEM[one["name"]](page, day, one)
    lines = []
    for digest, text in told:
        several = digest if len(day["records"]) > 1 else None
        lines.append(f"{page.say('day_of_record', n=order[several])} {text}" if several else text)
    return ["<br/>".join(lines) or page.say("day_not_told")]


def _pictures(page: Page, day: dict[str, Any]) -> list[Any]:
    story: list[Any] = []
    why = lambda photo: _why(page, photo)  # noqa: E731
    for at in range(0, len(day["photos"]), BESIDE):
        some = []
        for photo in day["photos"][at : at + BESIDE]:
            name = photo["what"] and page.say("day_label", what=worded(page, "what", photo["what"]))
            some.append((photo | {"n": None}, [name or page.say("day_photo"), line(photo["sha256"], 64)]))
        pictures = Pictures(some, page.find, why, TALLEST, columns=BESIDE)
        story.append(Row(page.say("day_labels"), pictures, 5))
    return story


def _why(page: Page, photo: dict[str, Any]) -> str:
    return page.say("day_photo_not_drawn" if photo["held"] else "day_photo_not_here")
