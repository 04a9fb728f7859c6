"""Findings, each with where it is, what is wrong and its photos."""

from typing import Any

from reportlab.platypus import Paragraph

from inspect_app.report.pages.answer_block import answer_block
from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.photo_words import short_caption, why_not_drawn
from inspect_app.report.pages.picture import Pictures
from inspect_app.report.pages.row import Anchor, Heading, Row, paragraphs, space, together
from inspect_app.report.pages.text import line

KEPT = 4  # flowables of photos: two rows of two


def findings_section(page: Page, number: str) -> list[Any]:
    """In reading order; a report without findings says what that means."""
    story: list[Any] = [Heading(page.say("chapter.findings"), "findings", number=number)]
    if not page.contents["findings"]:
        return [*story, Row("", Paragraph(page.say("no_findings"), BODY), 8)]
    answers = {answer["id"]: answer for answer in page.contents["answers"]}
    if len(page.contents["findings"]) > 1:
        story += [_listed(page, finding, answers.get(finding["id"])) for finding in page.contents["findings"]]
    story += paragraphs("", [page.say("numbers_here")], SMALL)
    for finding in page.contents["findings"]:
        story += _finding(page, finding, answers.get(finding["id"]))
    return story


def _title(page: Page, finding: dict[str, Any]) -> str:
    severity = page.say(f"severity.{finding['severity']}") if finding["severity"] else page.say("severity.unknown")
    return page.say("finding_n", n=finding["n"], severity=severity, state=page.say(f"state.{finding['state']}"))


def _listed(page: Page, finding: dict[str, Any], answer: dict[str, Any] | None) -> Any:
    """One line of the list at the head: what has to be acted on, before the evidence for it."""
    question = line(page.voice.both((answer or {}).get("question"), finding["id"]), 160)
    where = f'<font color="#646b70" size="7.3">{_where(page, finding)}</font>'
    return Row(page.to("finding", finding["n"], _title(page, finding)), Paragraph(f"{question} {where}", BODY))


def _where(page: Page, finding: dict[str, Any]) -> str:
    """Its place; the roof area where that was looked at as a whole."""
    if finding["station"] is None and finding["area"]:
        return page.say("area_as_whole", area=page.area(finding["area"]))
    return page.place(finding["station"])


def _finding(page: Page, finding: dict[str, Any], answer: dict[str, Any] | None) -> list[Any]:
    title = _title(page, finding)
    where = _where(page, finding)
    if finding["station"]:
        where += f" ({page.to('place', finding['station'], page.say('see_place'))})"
    head = [
        Heading(title, f"finding-{finding['n']}", 1, title),
        Row(page.say("where"), Paragraph(where, BODY)),
    ]
    if answer is None:
        return [together([*head, Row("", Paragraph(line(finding["id"]), BODY))])]
    block = answer_block(page, answer | {"finding": None})
    story: list[Any] = [Anchor(f"finding-{finding['n']}-a"), *head, *block]
    photos = [one for one in page.contents["photos"] if one["sha256"] in [each["sha256"] for each in answer["photos"]]]
    why = lambda photo: why_not_drawn(page, photo)  # noqa: E731
    pairs: list[Any] = []
    for at in range(0, len(photos), 2):
        pair = [(photo, short_caption(page, photo)) for photo in photos[at : at + 2]]
        pairs += [space(4), Row(page.say("evidence") if at == 0 else "", Pictures(pair, page.find, why, 92))]
    # With its first photos on one page where it fits: who reads the finding sees the evidence.
    return [together([*story, *pairs[:KEPT]]), *pairs[KEPT:], space(4)]
