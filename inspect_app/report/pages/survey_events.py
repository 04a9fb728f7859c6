"""The chronicle of a place: every signed statement there, in order of time."""

from typing import Any

from inspect_app.report.pages.cells import Cells
from inspect_app.report.pages.look import SMALL
from inspect_app.report.pages.mark import sign
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.row import Heading, Row, space
from inspect_app.report.pages.text import line

MOST = 600  # rows; what is beyond is counted and stands in contents.json
AT_IT = 0.05  # of the survey's unit: no tape tells it from the place itself
SHARES = (0.2, 0.25, 0.19, 0.24, 0.12)


def survey_events_section(page: Page, number: str) -> list[Any]:
    """One table; a result is a sign and a word, never a colour alone."""
    events = page.contents["survey"]["events"]
    head = [page.say(f"survey.head.{name}") for name in ("at", "what", "by", "where", "result")]
    rows = [_row(page, one) for one in events[:MOST]]
    more = len(events) - MOST
    return [
        Heading(page.say("chapter.survey_events"), "survey-events", number=number),
        Row("", Paragraph(page.say("survey.events.what"), SMALL), 4),
        Cells(head, rows, SHARES),
        *([Row("", Paragraph(page.say("survey.more", n=more), SMALL))] if more > 0 else []),
        space(4),
    ]


def _row(page: Page, one: dict[str, Any]) -> list[str]:
    what = f"<b>{page.say('survey.class.' + one['class'])}</b>: {page.say('survey.event.' + one['kind'])}"
    if not one["stands"]:
        what += " · " + page.say("survey.replaced")
    at = page.voice.moment(one["at"]) + (" · " + page.say("survey.clock") if one["clock"] else "")
    return [at, what, page.voice.person(page.contents["survey"]["people"].get(one["by"])), _where(page, one),
            _result(page, one)]  # fmt: skip


def _where(page: Page, one: dict[str, Any]) -> str:
    if one["how"] == "job":
        return page.say("survey.how.job")
    how = page.say(f"survey.how.{one['how']}")
    named = page.area(one["area"]) if one["area"] else how
    if one["panel"] is not None:
        named += ", " + page.say("panel_n", n=line(one["panel"], 12))
    if one["distance"] is not None and one["distance"] < AT_IT:
        named += " · " + page.say("survey.how.place")
    elif one["distance"] is not None:
        apart = {"value": one["distance"], "unit": page.contents["survey"]["place"]["unit"]}
        named += " · " + page.say("survey.apart", distance=page.voice.quantity(apart, 1))
    return named + (" · " + how if one["area"] and one["how"] in ("unplaced", "beside") else "")


def _result(page: Page, one: dict[str, Any]) -> str:
    told = [f"{sign(name)} {n}" for name, n in sorted(one["results"].items())]
    if one["result"]:
        told.append(f"{sign(one['result'])} {page.voice.result(one['result'])}")
    if one["photos"]:
        told.append(page.say("survey.photos", n=len(one["photos"])))
    return " · ".join(told) or "—"
