"""The wear mark beside the movement computed at the place: two bars of one scale, and what either side may mean."""

from typing import Any

from inspect_app.report.pages.look import BOLD, GREY, INK, PALE, PLAIN, SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.row import Drawing, Heading, Row, paragraphs
from inspect_app.report.pages.survey_asked import asked_at
from inspect_app.report.pages.text import line, plain
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused

TALL = 46.0


def wear_parts(page: Page) -> list[Any]:
    """The movement, each mark that somebody measured, and what the rule says of it as it was shown then."""
    told = page.contents["survey"]
    story: list[Any] = [Heading(page.say("survey.wear"), "survey-wear", 1)]
    wear = told["wear"]
    if wear["answer"] is None:
        story += paragraphs("", [page.say("survey.wear.unknown")])
    else:
        told_of = {name: page.voice.quantity(value) for name, value in wear["inputs"].items()}
        moved = page.voice.quantity(wear["answer"]["values"]["movement"])
        story += paragraphs(page.say("survey.movement"), [
            page.say("survey.movement.is", movement=moved, distance=told_of["distance"], low=told_of["metal_low"],
                     high=told_of["metal_high"], expansion=told_of["expansion"]),
            page.say(f"survey.fixed.{wear['fixed']}"),
        ])  # fmt: skip
    marks = [one for one in told["asked"] if one["wear"]]
    for one in marks:
        story += _mark(page, one)
    if not marks:
        story += paragraphs(page.say("survey.mark"), [page.say("survey.mark.none")])
    return [*story, *paragraphs("", [page.say("survey.wear.what")], SMALL)]


def _mark(page: Page, one: dict[str, Any]) -> list[Any]:
    mark, verdict = one["wear"], one["wear"]["verdict"]
    text = page.say("survey.mark.is", length=page.voice.quantity(mark["length"]), by=line(mark["by"], 60) or "—",
                    uncertainty=page.voice.quantity(mark["uncertainty"]), at=page.voice.moment(one["at"]))  # fmt: skip
    why = (verdict.get("reason") or {}).get("code")
    texts = [text, asked_at(page, one)] + ([page.say(f"reason.{why}")] if isinstance(why, str) else [])
    bars = _lengths(mark, verdict)
    story = paragraphs(page.say("survey.mark"), texts)
    if bars:
        alt = page.say("survey.alt.wear")
        story.append(Row("", Drawing(TALL, lambda canvas, width, tall: _draw(canvas, width, bars, page), 4, alt)))
    return story


def _lengths(mark: dict[str, Any], verdict: dict[str, Any]) -> tuple[float, float, float] | None:
    """``(mark, doubt, movement)`` in millimetres; None where one of them is no length."""
    try:
        moved = (verdict.get("values") or {}).get("movement")
        found = [convert(one, "mm", "wear") for one in (mark["length"], mark["uncertainty"], moved)]
    except Refused:
        return None
    return (found[0], found[1], found[2]) if max(found) > 0 else None


def _draw(canvas: Any, width: float, bars: tuple[float, float, float], page: Page) -> None:
    mark, doubt, moved = bars
    scale = (width - 8) * 0.8 / max(mark + doubt, moved)
    for y, length, name in ((28, mark, "survey.bar.mark"), (6, moved, "survey.bar.movement")):
        canvas.setFillColor(PALE)
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.7)
        canvas.rect(0.5, y, max(length * scale, 0.5), 10, stroke=1, fill=1)
        canvas.setFillColor(GREY)
        canvas.setFont(PLAIN, 6.2)
        canvas.drawString(0.5, y + 12.4, plain(page.say(name), 60))
        canvas.setFillColor(INK)
        canvas.setFont(BOLD, 6.8)
        reach = (length + (doubt if name == "survey.bar.mark" else 0)) * scale
        canvas.drawString(reach + 5, y + 2.6, page.voice.short({"value": length, "unit": "mm"}))
    low, high = max(mark - doubt, 0) * scale, (mark + doubt) * scale
    canvas.setLineWidth(1.1)
    canvas.line(low, 33, high, 33)
    for x in (low, high):
        canvas.line(x, 30.5, x, 35.5)
