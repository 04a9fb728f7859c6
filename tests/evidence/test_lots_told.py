"""What a report says of its lots is what its entries give: each figure, changed by itself, is found."""

import copy
import json

import pytest

from inspect_app.evidence.entries import entry_facts
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN
from inspect_app.evidence.lots_told import OF_A_LOT, OF_THE_JOB, lots_fact, same
from tests.evidence.drawn import site
from tests.evidence.record import files
from tests.evidence.record import made as without_lots

HONEST = site()
HONEST.say(
    HONEST.chief,
    "disposition",
    HONEST.first,
    {"lot": HONEST.first, "choice": "open", "reason": "invented", "name": "Cleo"},
)
HONEST.say(HONEST.foreman, "stop", f"{HONEST.first}/3", {"lot": HONEST.first, "area": HONEST.area, "panel": 3})
MADE = HONEST.made()
RECORD = HONEST.record()


def leaves(value, path=()):
    """Every path to something that is no list and no object."""
    parts = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else None
    if parts is None:
        yield path
    else:
        for name, one in parts:
            yield from leaves(one, (*path, name))


def missed_at(told, path):
    """Whether that one value, made another, goes unnoticed; then it is put back."""
    there = told
    for name in path[:-1]:
        there = there[name]
    before = there[path[-1]]
    flip = not before if isinstance(before, bool) else before + 1 if isinstance(before, (int, float)) else "x"
    there[path[-1]] = flip
    found = lots_fact(told, RECORD).status
    there[path[-1]] = before
    return found != FAILS


def compared():
    """Every printed value that the fact answers for: of the lots, all but who they are and what ``draws`` holds."""
    for at, one in enumerate(MADE.contents["lots"]):
        told = {name: one[name] for name in (*OF_A_LOT, "rows", "stops")}
        yield from (("lots", at, *path) for path in leaves(told))
        yield from (
            ("lots", at, "marks", n, name) for n, mark in enumerate(one["marks"]) for name in mark if name != "by"
        )
        yield from (("lots", at, "disposition", name) for name in one["disposition"] or ())
    yield from (path for name in OF_THE_JOB for path in leaves({name: MADE.contents[name]}))


def test_an_honest_report_says_of_its_lots_what_its_entries_give():
    through = json.loads(json.dumps(MADE.contents))
    told = {fact.name: fact.status for fact in entry_facts(files(MADE), through)}
    assert told["lots_follow"] == HOLDS and FAILS not in told.values()
    assert MADE.contents["lots"][0]["disposition"]["choice"] == "open" and MADE.contents["lots"][0]["marks"]


def test_each_figure_changed_by_itself_is_found():
    paths = list(compared())
    kinds = {name for path in paths for name in path if isinstance(name, str)}
    assert len(paths) > 300 and {"found", "share", "symbol", "state", "high", "counts", "panel", "choice"} <= kinds
    told = copy.deepcopy(MADE.contents)
    assert [path for path in paths if missed_at(told, path)] == []
    assert lots_fact(told, RECORD).status == HOLDS, "each was put back"


@pytest.mark.parametrize("name", OF_THE_JOB)
def test_a_part_left_out_is_found(name):
    assert lots_fact({key: value for key, value in MADE.contents.items() if key != name}, RECORD).status == FAILS


def test_a_report_of_a_time_without_lots_claims_nothing_and_holds():
    made = without_lots()
    told = {fact.name: fact.status for fact in entry_facts(files(made), made.contents)}
    assert "coverage" not in made.contents and told["lots_follow"] == HOLDS
    assert lots_fact(None, {}).status == UNKNOWN


def test_the_last_digit_of_another_machine_s_float_is_no_difference_and_a_truth_is_no_number():
    assert same({"share": 0.1 + 0.2}, {"share": 0.3}) and same([1.0], [1])
    assert not same({"share": 0.3001}, {"share": 0.3}) and not same(True, 1) and not same([1], [1, 2])
