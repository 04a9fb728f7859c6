"""A drawn place where all that is asked passed: one row of readings, since a week of them would hide what failed."""

from typing import Any

from reportlab.platypus import Paragraph

from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.mark import sign
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.reading import reading_text
from inspect_app.report.pages.row import Anchor, Row, space, together
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import values_text

MEASURED = ("slot", "clip", "spacing")  # readings that a reader wants at every place; the rest is enclosed


def is_clear(station: dict[str, Any], answers: list[dict[str, Any]]) -> bool:
    """Whether a row says enough: drawn, reached, everything passed by the rules as they are, nothing written beside
    it, nothing corrected."""
    return (
        station["chosen"] == "drawn"
        and station["reached"] == "yes"
        and station["result"] == "pass"
        and all(_plain(answer) for answer in answers)
    )


def _plain(answer: dict[str, Any]) -> bool:
    good = answer["recorded"] or answer["result"] in ("pass", "not_applicable")
    return good and not answer["note"] and not answer["versions"] and answer["recomputed"] in ("same", None)


def place_row(page: Page, station: dict[str, Any], answers: list[dict[str, Any]]) -> list[Any]:
    """The flowables of a clear place."""
    told = [f"{sign('pass')} {page.say('place_clear', count=len(answers))}"]
    for answer in answers:
        working = answer["working"]
        rule = str((working or {}).get("rule")).split("@")[0]
        if rule in MEASURED:
            question = line(page.voice.both(answer["question"], str(answer["item"])), 60)
            found = reading_text(page, answer) or values_text(page, working, answer["result"]).split("; ")[0]
            told.append(f"{question} {found}")
    photos = [photo for answer in answers for photo in answer["photos"]]
    if photos:
        told.append(page.say("photos_are", photos=page.photo_links(photos), count=len(photos)))
    told.append(f"{page.voice.person(station['by'])}, {page.voice.moment(station['at'])}")
    return [
        together([
            Anchor(f"place-{station['n']}"),
            Row(page.say("place_n", n=station["n"]), Paragraph(page.where(station), BODY), 0),
            Row("", Paragraph(" · ".join(told), SMALL), 0),
        ]),
        space(3),
    ]  # fmt: skip
