"""What people were asked, as they answered: papers, event, changes and samples, each with who told it and when."""

from typing import Any

from inspect_app.report.pages.page import Page
from inspect_app.report.pages.row import Heading, paragraphs
from inspect_app.report.pages.text import line

MOST = 60  # rows of one list


def asked_parts(page: Page) -> list[Any]:
    """Every survey of the place, the newest last; where there is none, what is still to be asked."""
    told = page.contents["survey"]
    story: list[Any] = [Heading(page.say("survey.asked"), "survey-asked", 1)]
    if not told["asked"]:
        return [*story, *paragraphs("", [page.say("survey.asked.nobody")])]
    for one in told["asked"]:
        story += _asked(page, one)
    return story


def asked_at(page: Page, one: dict[str, Any]) -> str:
    """The very place that people were asked about: a survey tells of every one within its radius."""
    return page.say("survey.asked.at", area=page.area(one["area"]), panel=line(one["panel"], 12),
                    distance=page.voice.quantity(one["from_low_end"]))  # fmt: skip


def _asked(page: Page, one: dict[str, Any]) -> list[Any]:
    who = page.voice.person(page.contents["survey"]["people"].get(one["by"]))
    head = f"{page.voice.moment(one['at'])} · {who}"
    story = paragraphs(page.say("survey.asked.by"), [head + page.recorded(), asked_at(page, one)])
    for name, texts in (
        ("warranty", _warranty(page, one["warranty"])), ("event", _event(page, one["event"])),
        ("noticed", _noticed(page, one["noticed"])),
        ("substitutions", _each(page, one["substitutions"], _substitution, "survey.substitutions.none")),
        ("changes", [page.say(f"survey.changed.{one['changed']}"), *_each(page, one["changes"], _change, "")]),
        ("samples", _each(page, one["samples"], _sample, "survey.samples.none")),
    ):  # fmt: skip
        story += paragraphs(page.say(f"survey.{name}"), texts)
    if one["note"].strip():
        story += paragraphs(page.say("survey.note"), page.passage(one["note"]))
    signed = f"{line(one['name'], 80)}, {page.say('role.' + str(one['role']))}: “{line(one['statement'], 400)}”"
    pictures = [each for each in page.contents["survey"]["pictures"] if each["survey"] == one["id"]]
    story += paragraphs(page.say("survey.signed"), [signed])
    if pictures:
        story += paragraphs(page.say("survey.pictures"), [_picture(page, each) for each in pictures[:MOST]])
    return story


def _each(page: Page, rows: list[dict[str, Any]], said: Any, none: str) -> list[str]:
    more = [page.say("survey.more", n=len(rows) - MOST)] if len(rows) > MOST else []
    return [said(page, row) for row in rows[:MOST]] + more or ([page.say(none)] if none else [])


def _day(page: Page, day: Any) -> str:
    return page.voice.day(day) if day else page.say("survey.day.unknown")


def _said(page: Page, text: Any, limit: int = 600) -> str:
    return line(text, limit) if str(text).strip() else page.say("survey.not_told")


def _warranty(page: Page, told: dict[str, Any]) -> list[str]:
    return [
        page.say(f"survey.shown.{told['shown']}"),
        page.say("survey.warranty.is", number=_said(page, told["number"], 80), by=_said(page, told["by"], 80),
                 low=_day(page, told["from"]), high=_day(page, told["until"])),
        page.say("survey.warranty.terms", terms=_said(page, told["terms"])),
    ]  # fmt: skip


def _event(page: Page, told: dict[str, Any]) -> list[str]:
    figures, source = _said(page, told["figures"]), _said(page, told["source"])
    return [page.say("survey.event.is", what=_said(page, told["what"], 200), day=_day(page, told["day"])),
            page.say("survey.event.figures", figures=figures, source=source)]  # fmt: skip


def _noticed(page: Page, told: dict[str, Any]) -> list[str]:
    return [page.say("survey.noticed.is", day=_day(page, told["day"]), by=_said(page, told["by"], 80),
                     said=_said(page, told["said"]))]  # fmt: skip


def _substitution(page: Page, row: dict[str, Any]) -> str:
    paper = line(row["document"][:12]) + "…" if row["document"] else page.say("survey.no_document")
    return page.say("survey.substitution.is", what=_said(page, row["what"], 200), by=_said(page, row["agreed_by"], 120),
                    document=paper)  # fmt: skip


def _change(page: Page, row: dict[str, Any]) -> str:
    return page.say("survey.change.is", what=page.say(f"survey.change.{row['what']}"), day=_day(page, row["day"]),
                    by=_said(page, row["by"], 80), said=_said(page, row["said"]))  # fmt: skip


def _sample(page: Page, row: dict[str, Any]) -> str:
    text = page.say("survey.sample.is", bag=line(row["bag"], 60), what=_said(page, row["what"], 200),
                    day=_day(page, row["day"]), by=_said(page, row["taken_by"], 80))  # fmt: skip
    hands = [page.say("survey.custody.is", day=_day(page, hand["day"]), giver=_said(page, hand["from"], 80),
                      taker=_said(page, hand["to"], 80), kept=_said(page, hand["kept"], 200))
             for hand in row["custody"][:MOST]]  # fmt: skip
    return "<br/>".join([text, *(hands or [page.say("survey.custody.none")])])


def _picture(page: Page, one: dict[str, Any]) -> str:
    named = page.to("photo", one["n"]) if one["n"] else page.say("survey.picture.apart")
    state = "" if one["held"] else " · " + page.say("survey.picture.missing")
    return f"{named} · <font size='6.9'>{line(one['sha256'])}</font>{state}"
