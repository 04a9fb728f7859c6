"""One answer as it is printed: question, result, reading drawn, working, note, evidence."""

from typing import Any

from inspect_app.report.pages import clip_figure, slot_figure, spacing_figure
from inspect_app.report.pages.finding_against import REST
from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.mark import sign
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.reading import metal_text, reading_text
from inspect_app.report.pages.row import Drawing, Row, paragraphs, together
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import inputs_text, reason_text, rule_text, values_text

NOTE_BESIDE = 160  # characters, as much as stands beside what was required
SHORT_NOTE = 600  # characters; an answer with a longer note may run over the page's end


def answer_link(page: Page, answer: dict[str, Any]) -> Any:
    """An answer that stands in full under its finding."""
    question = line(page.voice.both(answer["question"], str(answer["item"])), 240)
    to = page.to("finding", answer["finding"])
    return Row(_strong(page, answer), Paragraph(f"{question} {page.say('see_finding')} {to}", BODY))


def question_row(page: Page, answer: dict[str, Any]) -> Any:
    """What was asked, and how it came out."""
    question = line(page.voice.both(answer["question"], str(answer["item"])), 240)
    return Row(_strong(page, answer), Paragraph(question, BODY))


def answer_block(page: Page, answer: dict[str, Any], beside: bool = False) -> list[Any]:
    """The flowables of one answer with its figure, working and source. ``beside``: what was required and found, and a
    short note, stand beside each other elsewhere."""
    story: list[Any] = [] if beside else [question_row(page, answer)]
    working = answer["working"]
    drawn = answer_figure(page, answer)
    figure = [Row("", drawn)] if drawn else []
    told = beside and not figure  # what is drawn is told in full, for whoever does its sum again
    read = "" if told else reading_text(page, answer)
    values = _values(page, working, answer["result"], told) if working else ""
    if read:  # with what its rule made of it, unless that is drawn between
        text = read if figure or not values else f"{read} → {values}"
        story.append(Row(page.say("reading_count" if answer["instrument"] == "count" else "reading"),
                         Paragraph(text, BODY)))  # fmt: skip
    if metal := metal_text(page, answer):
        story.append(Row(page.say("metal_then"), Paragraph(metal, BODY)))
    story += figure
    if values and (figure or not read):
        story.append(Row(page.say("values"), Paragraph(values, BODY)))
    if working and (reason := reason_text(page, working)):
        story.append(Row(page.say("reason"), Paragraph(reason, BODY)))
    notes = page.passage(answer["note"])
    for at, text in enumerate([] if beside and len(answer["note"]) <= NOTE_BESIDE else notes):
        mark = page.recorded() if at == len(notes) - 1 else ""
        story += paragraphs(page.say("note") if at == 0 else "", [text + mark])
    if answer["recorded"] and not (answer["note"] or answer["reading"] or answer["photos"]):
        story += paragraphs("", [page.say("nothing_written")])
    under = [_put_in(page, answer), _evidence(page, answer, beside)]
    story += paragraphs("", [" ".join(part for part in under if part)], SMALL)
    for one in answer["versions"]:
        stands = page.say("version_stands" if one["stands"] else "version_replaced")
        said = page.say("version", result=page.voice.result(one["result"]), stands=stands,
                        who=page.voice.person(one["by"]), at=page.voice.moment(one["at"]))  # fmt: skip
        story += paragraphs("", [said], SMALL)
    if figure and not beside and not answer["versions"]:
        return [together(story[:-1]), story[-1]]
    if len(answer["note"]) <= SHORT_NOTE:
        return [together(story)]
    head, rest = story[:2], story[2:]
    return [together(head), *rest] if len(story) > 1 else story


def _strong(page: Page, answer: dict[str, Any]) -> str:
    shown = "recorded" if answer["recorded"] else answer["result"]
    return f"<b>{sign(shown)} {page.voice.result(shown)}</b>"


def answer_figure(page: Page, answer: dict[str, Any]) -> Drawing | None:
    """What was read, drawn over what it has to be; None where there is nothing to draw."""
    working, result, voice = answer["working"], answer["result"], page.voice
    name = str(working["rule"]).split("@")[0] if working else ""

    def slot(canvas: Any, width: float, _: float) -> None:
        slot_figure.draw_slot(canvas, width, working, result, voice)

    def clip(canvas: Any, width: float, _: float) -> None:
        clip_figure.draw_clip(canvas, width, working, result, voice)

    def spacing(canvas: Any, width: float, _: float) -> None:
        spacing_figure.draw_spacing(canvas, width, working, voice)

    if name == "slot" and slot_figure.can_draw_slot(working):
        return Drawing(slot_figure.HEIGHT, slot, alt=page.say("alt.slot"))
    if name == "clip" and clip_figure.can_draw_clip(working):
        return Drawing(clip_figure.HEIGHT, clip, alt=page.say("alt.clip"))
    if name == "spacing" and spacing_figure.gaps_of(working):
        return Drawing(spacing_figure.HEIGHT, spacing, alt=page.say("alt.spacing"))
    return None


def _values(page: Page, working: dict[str, Any], result: Any, told: bool) -> str:
    """What came out; of what is ``told`` beside its requirement the rest alone."""
    kept = working["values"]
    if told and result == "fail":
        kept = {name: value for name, value in kept.items() if name in REST}
    return values_text(page, working | {"values": kept}, result)


def _put_in(page: Page, answer: dict[str, Any]) -> str:
    """What was put in and by which rule; its formula and source stand once, among the rules used."""
    working = answer["working"]
    if not working:
        return ""
    inputs = inputs_text(page, working)
    return (f"{page.say('put_in')}: {inputs}. " if inputs else "") + rule_text(page, answer, "rule", brief=True)


def _evidence(page: Page, answer: dict[str, Any], beside: bool) -> str:
    parts = []
    if answer["station"] is None and answer["area"]:
        parts.append(page.say("of_area", area=page.area(answer["area"])))
    if answer["severity"] and not beside:
        parts.append(page.say(f"severity.{answer['severity']}"))
    if answer["basis"] and not beside:
        parts.append(page.say("basis", basis=line(page.voice.both(answer["basis"]), 200)))
    if answer["photos"]:
        parts.append(page.say("photos_are", photos=page.photo_links(answer["photos"]), count=len(answer["photos"])))
    who = page.voice.person(answer["by"])
    parts.append(f"{who}, {page.voice.moment(answer['at'])}")
    parts.append(page.say("entry", digest=line(answer["digest"], 50)))
    return " · ".join(parts)
