"""Findings, each with where it is, what is wrong and its photos."""

from typing import Any

from reportlab.platypus import Paragraph

from inspect_app.report.pages.answer_block import answer_block
from inspect_app.report.pages.look import BODY
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.photo_words import short_caption, why_not_drawn
from inspect_app.report.pages.picture import Pictures
from inspect_app.report.pages.row import Anchor, Heading, Row, space, together
from inspect_app.report.pages.text import line


def findings_section(page: Page, number: str) -> list[Any]:
    """In reading order; a report without findings says what that means."""
    story: list[Any] = [Heading(page.say("chapter.findings"), "findings", number=number)]
    if not page.contents["findings"]:
        return [*story, Row("", Paragraph(page.say("no_findings"), BODY), 8)]
    answers = {answer["id"]: answer for answer in page.contents["answers"]}
    for finding in page.contents["findings"]:
        story += _finding(page, finding, answers.get(finding["id"]))
    return story


def _finding(page: Page, finding: dict[str, Any], answer: dict[str, Any] | None) -> list[Any]:
    severity = page.say(f"severity.{finding['severity']}") if finding["severity"] else page.say("severity.unknown")
    title = page.say("finding_n", n=finding["n"], severity=severity, state=page.say(f"state.{finding['state']}"))
    where = page.place(finding["station"])
    if finding["station"]:
        where += f" ({page.to('place', finding['station'], page.say('see_place'))})"
    head = [
        Heading(title, f"finding-{finding['n']}", 1, title),
        Row(page.say("where"), Paragraph(where, BODY)),
    ]
    if answer is None:
        return [together([*head, Row("", Paragraph(line(finding["id"]), BODY))])]
    block = answer_block(page, answer | {"finding": None})
    story: list[Any] = [together([Anchor(f"finding-{finding['n']}-a"), *head, *block[:3]]), *block[3:]]
    photos = [one for one in page.contents["photos"] if one["sha256"] in [each["sha256"] for each in answer["photos"]]]
    why = lambda photo: why_not_drawn(page, photo)  # noqa: E731
    for at in range(0, len(photos), 2):
        pair = [(photo, short_caption(page, photo)) for photo in photos[at : at + 2]]
        story += [space(4), Row(page.say("evidence") if at == 0 else "", Pictures(pair, page.find, why, 170))]
    return [*story, space(4)]
