"""One answer as it is printed: question, result, reading drawn, working, note, evidence."""

from typing import Any

from inspect_app.report.pages import clip_figure, slot_figure, spacing_figure
from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.mark import sign
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.reading import metal_text, reading_text
from inspect_app.report.pages.row import Drawing, Row, paragraphs, together
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import inputs_text, reason_text, rule_text, values_text

SHORT_NOTE = 600  # characters; an answer with a longer note may run over the page's end


def answer_block(page: Page, answer: dict[str, Any], full: bool = True) -> list[Any]:
    """The flowables of one answer. ``full``: with figure, working and source."""
    question = line(page.voice.both(answer["question"], str(answer["item"])), 240)
    shown = "recorded" if answer["recorded"] else answer["result"]
    strong = f"<b>{sign(shown)} {page.voice.result(shown)}</b>"
    story: list[Any] = [Row(strong, Paragraph(question, BODY))]
    if answer["finding"]:
        story[0] = Row(
            strong,
            Paragraph(f"{question} {page.say('see_finding')} {page.to('finding', answer['finding'])}", BODY),
        )
    working = answer["working"]
    if reading := reading_text(page, answer):
        story.append(Row(page.say("reading_count" if answer["instrument"] == "count" else "reading"),
                         Paragraph(reading, BODY)))  # fmt: skip
    if metal := metal_text(page, answer):
        story.append(Row(page.say("metal_then"), Paragraph(metal, BODY)))
    if working and full:
        story += [*_figure(page, answer, working)]
        story += _working(page, answer, working)
    for at, text in enumerate(notes := page.passage(answer["note"])):
        mark = page.recorded() if at == len(notes) - 1 else ""
        story += paragraphs(page.say("note") if at == 0 else "", [text + mark])
    if answer["recorded"] and not (answer["note"] or answer["reading"] or answer["photos"]):
        story += paragraphs("", [page.say("nothing_written")])
    story += paragraphs("", [_evidence(page, answer)], SMALL)
    for one in answer["versions"]:
        stands = page.say("version_stands" if one["stands"] else "version_replaced")
        story += paragraphs(
            "",
            [
                page.say(
                    "version",
                    result=page.voice.result(one["result"]),
                    stands=stands,
                    who=page.voice.person(one["by"]),
                    at=page.voice.moment(one["at"]),
                )
            ],
            SMALL,
        )
    if len(answer["note"]) <= SHORT_NOTE:
        return [together(story)]
    head, rest = story[:2], story[2:]
    return [together(head), *rest] if len(story) > 1 else story


def _figure(page: Page, answer: dict[str, Any], working: dict[str, Any]) -> list[Any]:
    name, result, voice = str(working["rule"]).split("@")[0], answer["result"], page.voice

    def slot(canvas: Any, width: float, _: float) -> None:
        slot_figure.draw_slot(canvas, width, working, result, voice)

    def clip(canvas: Any, width: float, _: float) -> None:
        clip_figure.draw_clip(canvas, width, working, result, voice)

    def spacing(canvas: Any, width: float, _: float) -> None:
        spacing_figure.draw_spacing(canvas, width, working, voice)

    if name == "slot" and slot_figure.can_draw_slot(working):
        return [Row("", Drawing(slot_figure.HEIGHT, slot, alt=page.say("alt.slot")))]
    if name == "clip" and clip_figure.can_draw_clip(working):
        return [Row("", Drawing(clip_figure.HEIGHT, clip, alt=page.say("alt.clip")))]
    if name == "spacing" and spacing_figure.gaps_of(working):
        return [Row("", Drawing(spacing_figure.HEIGHT, spacing, alt=page.say("alt.spacing")))]
    return []


def _working(page: Page, answer: dict[str, Any], working: dict[str, Any]) -> list[Any]:
    rows = []
    if values := values_text(page, working, answer["result"]):
        rows.append(Row(page.say("values"), Paragraph(values, BODY)))
    if reason := reason_text(page, working):
        rows.append(Row(page.say("reason"), Paragraph(reason, BODY)))
    if inputs := inputs_text(page, working):
        rows.append(Row(page.say("put_in"), Paragraph(inputs, SMALL)))
    told = rule_text(page, answer, "rule", brief=answer["result"] == "pass")
    rows.append(Row(page.say("rule"), Paragraph(told, SMALL)))
    return rows


def _evidence(page: Page, answer: dict[str, Any]) -> str:
    parts = []
    if answer["station"] is None and answer["area"]:
        parts.append(page.say("of_area", area=page.area(answer["area"])))
    if answer["severity"]:
        parts.append(page.say(f"severity.{answer['severity']}"))
    if answer["basis"]:
        parts.append(page.say("basis", basis=line(page.voice.both(answer["basis"]), 200)))
    if answer["photos"]:
        parts.append(page.say("photos_are", photos=page.photo_links(answer["photos"]), count=len(answer["photos"])))
    who = page.voice.person(answer["by"])
    parts.append(f"{who}, {page.voice.moment(answer['at'])}")
    parts.append(page.say("entry", digest=line(answer["digest"], 50)))
    return " · ".join(parts)
