"""What was asked at the places that were chosen by hand: how grave it is, what it rests on, and what was put in alike.
Said once, so that each place says only what was its own."""

from collections.abc import Iterable
from typing import Any

from inspect_app.report.pages.cells import Cells
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.place_row import is_plain
from inspect_app.report.pages.put_in import parted
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import inputs_named

SHARES = (0.2, 0.34, 0.46)
Own = dict[str, list[str]]  # of each answer, by its id, what was put in at its place alone


def is_row(station: dict[str, Any], answer: dict[str, Any]) -> bool:
    """Whether a row says all of it: measured at a place chosen by hand, and passed by the rules as they are."""
    return station["chosen"] != "drawn" and bool(answer["working"]) and is_plain(answer) and not answer["finding"]


def asked_table(page: Page, answers: Iterable[dict[str, Any]]) -> tuple[list[Any], Own]:
    """``answers``: those that are rows. The table, and what is left for each."""
    groups: dict[tuple[str, ...], list[dict[str, Any]]] = {}
    for answer in answers:
        groups.setdefault(_asked(page, answer), []).append(answer)
    own: Own = {}
    rows = []
    for asked, some in groups.items():
        told = parted([(str(one["working"]["rule"]), inputs_named(page, one["working"])) for one in some])
        own |= {one["id"]: left for one, left in zip(some, told.own, strict=True)}
        rows.append([*asked, "; ".join(told.alike) or "—"])
    head = [page.say(f"asked_head.{name}") for name in ("question", "basis", "alike")]
    return ([Cells(head, rows, SHARES)] if rows else []), own


def _asked(page: Page, answer: dict[str, Any]) -> tuple[str, str]:
    """The question; what it rests on, how grave a miss is, how the reading was accepted and judged again."""
    told = [line(page.voice.both(answer["basis"]), 200)] if answer["basis"] else []
    severity = page.say(f"severity.{answer['severity']}") if answer["severity"] else ""
    told += [page.say("asked_severity", severity=severity)] if severity else []
    judged = [page.say(f"accepted.{answer['accepted']['used']}")] if answer["accepted"] else []
    judged += [page.say(f"recomputed.{answer['recomputed']}")] if answer["recomputed"] else []
    return f"<b>{question_of(page, answer)}</b>", " · ".join([*told, *([" ".join(judged)] if judged else [])]) or "—"


def question_of(page: Page, answer: dict[str, Any]) -> str:
    return line(page.voice.both(answer["question"], str(answer["item"])), 240)
