"""Findings, each with where it is, what is wrong and what became of it. What is still to be acted on comes first."""

from typing import Any

from inspect_app.evidence.findings_told import UNSETTLED
from inspect_app.report.pages.cells import Cells
from inspect_app.report.pages.defects import defects
from inspect_app.report.pages.finding_block import finding_block, finding_where
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
        head = [page.say(f"finding_head.{name}") for name in ("n", "severity", "state", "what", "where")]
        rows = [_listed(page, finding, answers.get(finding["id"])) for finding in listed]
        story += [Cells(head, rows, (0.05, 0.09, 0.1, 0.36, 0.4)), *defects(page)]
    story += paragraphs("", [page.say("finding_states"), page.say("numbers_here")], SMALL)
    for finding in every:
        story += finding_block(page, finding, answers.get(finding["id"]))
    return story


def _listed(page: Page, finding: dict[str, Any], answer: dict[str, Any] | None) -> list[str]:
    """A row of the list at the head: what has to be acted on, before the evidence for it."""
    by_hand = finding["told"]["found"] if finding["source"] == "hand" else None
    question = line(by_hand or page.voice.both((answer or {}).get("question"), finding["id"]), 160)
    severity = page.say(f"severity.{finding['severity'] or 'unknown'}")
    return [page.to("finding", finding["n"], f"<b>{finding['n']}</b>"), severity, page.say(f"state.{finding['state']}"),
            question, finding_where(page, finding)]  # fmt: skip
