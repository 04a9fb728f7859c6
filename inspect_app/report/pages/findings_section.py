"""Findings, each with where it is, what is wrong and what became of it. What is still to be acted on comes first."""

from typing import Any

from inspect_app.evidence.findings_told import UNSETTLED
from inspect_app.report.pages.finding_block import finding_block, finding_title, finding_where
from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.row import Heading, Row, paragraphs
from inspect_app.report.pages.text import line


def findings_section(page: Page, number: str) -> list[Any]:
    """The list, then each in reading order; a report without findings says what that means."""
    story: list[Any] = [Heading(page.say("chapter.findings"), "findings", number=number)]
    if not page.contents["findings"]:
        return [*story, Row("", Paragraph(page.say("no_findings"), BODY), 8)]
    answers = {answer["id"]: answer for answer in page.contents["answers"]}
    every = page.contents["findings"]
    if len(every) > 1:
        listed = sorted(every, key=lambda one: (one["state"] not in UNSETTLED, one["n"]))
        story += [_listed(page, finding, answers.get(finding["id"])) for finding in listed]
    story += paragraphs("", [page.say("finding_states"), page.say("numbers_here")], SMALL)
    for finding in every:
        story += finding_block(page, finding, answers.get(finding["id"]))
    return story


def _listed(page: Page, finding: dict[str, Any], answer: dict[str, Any] | None) -> Any:
    """One line of the list at the head: what has to be acted on, before the evidence for it."""
    by_hand = finding["told"]["found"] if finding["source"] == "hand" else None
    question = line(by_hand or page.voice.both((answer or {}).get("question"), finding["id"]), 160)
    where = f'<font color="#646b70" size="7.3">{finding_where(page, finding)}</font>'
    return Row(page.to("finding", finding["n"], finding_title(page, finding)), Paragraph(f"{question} {where}", BODY))
