"""How far each instrument may be off and who says so, what was read with them, and how near readings were accepted."""

from typing import Any

from reportlab.platypus import Paragraph

from inspect_app.report.number import number
from inspect_app.report.pages.fit_sides import line_name
from inspect_app.report.pages.look import SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.row import Columns, Heading, Row, paragraphs, space, together
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import digits, percent

SHARES = (0.34, 0.22, 0.44)
MOST = 40  # readings named; the rest is counted, and contents.json has all


def instruments_part(page: Page) -> list[Any]:
    """The readings by instrument, then every stated uncertainty with its origin."""
    story: list[Any] = [Heading(page.say("instruments"), "instruments", 1)]
    texts = [_instrument(page, one) for one in page.contents["instruments"]]
    story += paragraphs("", texts or [page.say("no_instruments")])
    rows = [
        Columns("", [page.say(f"instrument_name.{one['instrument']}"),
                     "± " + _bound(page, one["uncertainty"]),
                     _origin(page, one)], SHARES)
        for one in page.contents["uncertainties"]
    ]  # fmt: skip
    if rows:
        head = [page.say("instrument"), page.say("may_be_off"), page.say("who_says")]
        story += [space(5), together([Columns("", head, SHARES, SMALL), *rows]), space(3)]
        story.append(Row("", Paragraph(page.say("may_be_off_says"), SMALL)))
    return story


def _bound(page: Page, bound: dict[str, Any]) -> str:
    """As it was stated, to its last digit; in the report's units before that where those are others."""
    stated = line(number(bound.get("value"), str(bound.get("unit", "")), digits(bound)))
    return f"{page.voice.short(bound)} ({stated})" if page.voice.converted(bound) else stated


def _origin(page: Page, one: dict[str, Any]) -> str:
    if not one["own"]:
        return page.say("origin_ours.level" if one["instrument"] == "level" else "origin_ours")
    source = line(one["source"]) + page.recorded() if one["source"] else page.say("not_stated")
    return page.say("origin_job", source=source)


def _instrument(page: Page, one: dict[str, Any]) -> str:
    if one["instrument"] == "metal_temperature":
        by = page.say("metal_by." + str(one["by"])) if one["by"] else page.say("not_recorded")
        bound = page.voice.quantity(one["uncertainty"]) if one["uncertainty"] else page.say("not_recorded")
        return "– " + page.say("instrument.metal_temperature", walk=one["walk"], by=line(by, 90), bound=bound)
    return "– " + page.say(f"instrument.{one['instrument']}", count=one["count"])


def acceptance_part(page: Page) -> list[Any]:
    """What the job says, then each way that was used: how many readings, which, and what it risks."""
    told = page.contents["acceptance"]
    if not told["readings"]:
        return []
    story: list[Any] = [Heading(page.say("acceptance"), "acceptance", 1)]
    story += paragraphs("", [page.say(f"acceptance_job.{told['job'] or 'none'}")])
    ways = (("guarded", "guarded", True), ("simple", "simple", True), ("simple", "untold", False))
    for used, word, known in ways:
        own = [one for one in told["readings"] if (one["used"], one["known"]) == (used, known)]
        if own:
            text = f"{page.say(f'accepted_says.{word}')} {_readings(page, own)}"
            story += paragraphs(page.say(f"accepted_label.{word}"), [text])
    return story


def _readings(page: Page, own: list[dict[str, Any]]) -> str:
    names = [_reading(page, one) for one in own[:MOST]]
    if len(own) > MOST:
        names.append(page.say("and_more", count=len(own) - MOST))
    return page.say("accepted_readings", count=len(own), readings="; ".join(names))


def _reading(page: Page, one: dict[str, Any]) -> str:
    if "area" in one:
        where = f"{page.area(one['area'])}, {line_name(page, one['line'])}"
    else:
        where = page.area(one["on"]) if one["on"] else page.say("whole_walk")
        if one["station"]:
            where = page.to("place", one["station"], page.say("place_n", n=one["station"]))
        where += f", {line(one['rule'], 40)}"
    return where if one["risk"] is None else page.say("at_risk", where=where, risk=percent(one["risk"]))
