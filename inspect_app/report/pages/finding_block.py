"""One finding: where, required against found, who was to correct it, what was said since, and its photos."""

from typing import Any

from inspect_app.report.pages.answer_block import answer_block, question_row
from inspect_app.report.pages.finding_against import against
from inspect_app.report.pages.finding_pictures import finding_pictures
from inspect_app.report.pages.finding_steps import entry_of, steps, who_and_when
from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.row import Heading, Row, paragraphs, space, together
from inspect_app.report.pages.text import line

KEPT = 2  # flowables of photos: the first row and the space before it


def finding_title(page: Page, finding: dict[str, Any]) -> str:
    """``Finding 3: critical, corrected``."""
    severity = page.say(f"severity.{finding['severity']}") if finding["severity"] else page.say("severity.unknown")
    return page.say("finding_n", n=finding["n"], severity=severity, state=page.say(f"state.{finding['state']}"))


def finding_where(page: Page, finding: dict[str, Any]) -> str:
    """Its place; the roof area where that was looked at as a whole."""
    if finding["station"] is not None or not finding["area"]:
        return page.place(finding["station"])
    told = finding["told"]
    if told["panel"] is None:
        return page.say("area_as_whole", area=page.area(finding["area"]))
    if told["from_low_end"] is None:
        return page.say("leg_at", area=page.area(finding["area"]), panel=line(told["panel"], 12))
    return page.where({"area": finding["area"], "panel": told["panel"], "from_low_end": told["from_low_end"],
                       "zone": told["zone"] or "—"})  # fmt: skip


def finding_block(page: Page, finding: dict[str, Any], answer: dict[str, Any] | None) -> list[Any]:
    """With its first photos on one page where it fits: who reads the finding sees the evidence."""
    title, where = finding_title(page, finding), finding_where(page, finding)
    if finding["station"]:
        where += f" ({page.to('place', finding['station'], page.say('see_place'))})"
    head: list[Any] = [
        Heading(title, f"finding-{finding['n']}", 1, title), *([question_row(page, answer)] if answer else []),
        Row(page.say("where"), Paragraph(where, BODY)), *against(page, finding, answer),
    ]  # fmt: skip
    if answer is not None:
        head += answer_block(page, answer, beside=True)
    elif finding["source"] == "answer":
        head.append(Row("", Paragraph(line(page.voice.both(finding["question"], str(finding["id"]))), BODY)))
    else:
        opened = finding["told"]["opened"]
        head += paragraphs("", [f"{who_and_when(page, finding, opened)} · {entry_of(page, opened)}"], SMALL)
    since = [*steps(page, finding), *_problems(page, finding)]
    pairs = finding_pictures(page, finding)
    if not since:
        return [together([*head, *pairs[:KEPT]]), *pairs[KEPT:], space(4)]
    return [together(head), *since, *pairs, space(4)]


def _problems(page: Page, finding: dict[str, Any]) -> list[Any]:
    """Those that stand under no step of it."""
    told = finding["told"]
    said = told["corrections"] + told["rechecks"] + told["reopenings"] + [told["concession"] or {"problems": []}]
    under = {code for one in said for code in one["problems"]}
    texts = [f"▲ {page.say('finding.problem.' + code)}" for code in told["problems"] if code not in under]
    return paragraphs(page.say("finding_note"), [f"<b>{text}</b>" for text in texts])
