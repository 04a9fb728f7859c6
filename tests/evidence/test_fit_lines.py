"""A fit check that is enclosed: what the report prints of it, and its verdicts, are held to the signed entry."""

import copy
from typing import Any

import pytest

from inspect_app.entry.format import parse
from inspect_app.evidence.entries import entry_facts
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN
from inspect_app.record.fit import fit
from tests.bodies import body_of
from tests.evidence.record import contents, files, made, receipts, sign
from tests.record.fit_sample import DAY, q, world
from tests.report.sample_fit import textual

RECORD = made()
CHIEF, FOREMAN = RECORD.authors
LINES = [
    {"line": one["line"], "verdict": {
        "result": one["verdict"], "rule": one["rule"], "rulebook": "", "reason": textual(one["reason"]),
        "inputs": textual(one["inputs"]), "values": textual(one["values"]),
    }} for one in fit(*world().values(), DAY)
]  # fmt: skip
AREA = body_of("fit")["area"]


def enclosed(lines: list[Any]) -> tuple[dict[str, bytes], dict[str, Any]]:
    """The record with one fit check, and an honest report's contents."""
    head = parse(RECORD.signed.entries[0]).digest
    entries = [*RECORD.signed.entries, sign(CHIEF, RECORD.job, "fit", AREA, 1, head, {"lines": lines})]
    signed = RECORD.signed._replace(entries=entries, receipts=receipts(RECORD.server, RECORD.job, entries))
    told = contents(RECORD.job, RECORD.server, RECORD.authors, signed)
    results = {one["verdict"]["result"] for one in lines}
    printed = [
        {"line": one["line"], "result": one["verdict"]["result"], "working": dict(one["verdict"])} for one in lines
    ]
    told["fits"] = [{"area": AREA, "digest": parse(entries[-1]).digest, "lines": printed,
                     "result": "fail" if "fail" in results else "pass",
                     **{name: body_of("fit")[name] for name in ("day", "found", "note")},
                     "said_by": {name: body_of("fit")[name] for name in ("name", "role")}}]  # fmt: skip
    return files(RECORD, entries=entries, receipts=signed.receipts), told


def facts(lines: list[Any] = LINES, change: Any = lambda told: None) -> dict[str, str]:
    own, told = enclosed(lines)
    change(told)
    return {fact.name: fact.status for fact in entry_facts(own, told)}


def test_an_honest_fit_check_holds():
    assert {one["verdict"]["result"] for one in LINES} == {"pass"} and len(LINES) > 14
    assert set(facts().values()) == {HOLDS}


def drop(told):
    del told["fits"]


def better(told):
    told["fits"][0]["lines"][3]["working"]["inputs"] = {}


@pytest.mark.parametrize(
    "change",
    [
        drop, better,
        lambda told: told.update(fits=[]),
        lambda told: told["fits"].append(copy.deepcopy(told["fits"][0])),
        lambda told: told["fits"][0].update(result="not_determinable"),
        lambda told: told["fits"][0].update(digest="A" * 43),
        lambda told: told["fits"][0]["lines"].pop(),
        lambda told: told["fits"][0].update(day="2024-01-01"),
        lambda told: told["fits"][0].update(found={"fixed_lines": 1}),
        lambda told: told["fits"][0]["said_by"].update(role="engineer"),
        lambda told: told["fits"][0].update(note="Agreed with the engineer."),
        lambda told: told["fits"][0]["lines"][0].update(result="not_applicable"),
        lambda told: told["fits"][0]["lines"].reverse(),
        lambda told: told.update(fits=[None]),
        lambda told: told["fits"].append({**copy.deepcopy(told["fits"][0]), "area": "another"}),
    ],
    ids=range(15),
)  # fmt: skip
def test_a_check_that_is_printed_otherwise_left_out_doubled_or_made_up_is_found(change):
    found = facts(change=change)
    assert {name for name, status in found.items() if status == FAILS} == {"answers_follow"}


def with_line(name: str, **changed: Any) -> list[Any]:
    lines = copy.deepcopy(LINES)
    next(one for one in lines if one["line"] == name)["verdict"].update(changed)
    return lines


@pytest.mark.parametrize(
    ("name", "changed"),
    [
        ("run", {"inputs": LINES[4]["verdict"]["inputs"] | {"run": {"value": "90", "unit": "ft"}}}),
        ("run", {"rule": None, "inputs": {}, "values": {}}),
        ("zone:field", {"rule": "limit@1", "values": {}, "inputs": {"reading": 1, "at_most": 2}}),
        ("longest_panel", {"inputs": {"reading": q("400", "ft"), "at_least": q("3", "ft")}, "values": {}}),
        ("fixed_count", {"inputs": {"reading": 2, "equal": 2}, "values": {}}),
        ("deck", {"inputs": {"approved": "5/8 in plywood", "deck": "other"}}),
        ("underlayment", {"inputs": {}}),
        ("fixed_place", {"result": "fail"}),
    ],
)
def test_a_line_that_does_not_follow_is_found_though_everybody_signed_and_printed_it(name, changed):
    assert LINES[4]["line"] == "run"
    found = facts(with_line(name, **changed))
    assert {status for key, status in found.items() if key != "verdicts_recompute"} == {HOLDS}
    assert found["verdicts_recompute"] == FAILS


def test_a_line_or_a_rule_of_a_later_release_is_not_called_wrong():
    assert facts(with_line("run", rule="longest_run@99"))["verdicts_recompute"] == UNKNOWN
    later = [*LINES, {"line": "snow", "verdict": {**LINES[-1]["verdict"], "result": "pass"}}]
    assert facts(later)["verdicts_recompute"] == UNKNOWN
