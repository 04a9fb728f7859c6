"""What a report says of each crew's day is what its entries give: each value, changed by itself, is found."""

import copy
import json

import pytest

from inspect_app.evidence.days_told import days_fact
from inspect_app.evidence.entries import entry_facts
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN
from inspect_app.record.day_record_items import day_items
from inspect_app.report.daily import daily
from tests.evidence.drawn import site
from tests.evidence.record import files
from tests.evidence.record import made as without_days
from tests.evidence.test_lots_told import leaves
from tests.phone import new_uuid

HONEST = site()
HONEST.say(HONEST.foreman, "day", new_uuid(), {"crew": "2"})
HONEST.say(HONEST.chief, "day", new_uuid(), {"crew": "2", "head_count": 9, "materials": []})
HONEST.say(HONEST.foreman, "day", new_uuid(), {"crew": "2", "day": "2026-11-20", "no_work": "rain"})
MADE = HONEST.made()
MADE.contents.update(daily(HONEST.record(), {}))
RECORD = HONEST.record()


def changed(path, value=None):
    """The fact, once the value at that path is another."""
    told = copy.deepcopy(MADE.contents)
    there = told
    for name in path[:-1]:
        there = there[name]
    before = there[path[-1]]
    flip = not before if isinstance(before, bool) else before + 1 if isinstance(before, (int, float)) else "x"
    there[path[-1]] = flip if value is None else value
    return days_fact(told, RECORD).status


def test_an_honest_report_says_of_its_days_what_its_entries_give():
    through = json.loads(json.dumps(MADE.contents))
    told = {fact.name: fact.status for fact in entry_facts(files(MADE), through)}
    assert told["days_follow"] == HOLDS
    assert [one["day"] for one in MADE.contents["daily"]] == ["2026-11-20", "2026-11-25"]
    assert MADE.contents["silent"] == [{"after": "2026-11-20", "before": "2026-11-25", "days": 4}]


def test_each_value_under_each_letter_changed_by_itself_is_found():
    paths = [("daily", n, *path) for n, day in enumerate(MADE.contents["daily"])
             for path in leaves({name: value for name, value in day.items() if name != "photos"})]  # fmt: skip
    paths += list(leaves({"silent": MADE.contents["silent"]}))
    kinds = {name for path in paths for name in path if isinstance(name, str)}
    assert len(paths) > 120 and {"gauge", "because", "work_done", "to", "no_work", "head_count", "told"} <= kinds
    assert [path for path in paths if changed(path) != FAILS] == []


def test_each_list_of_a_day_with_one_more_or_one_less_is_found():
    day = MADE.contents["daily"][1]
    for n in range(len(day["items"])):
        assert changed(("daily", 1, "items"), day["items"][:n] + day["items"][n + 1 :]) == FAILS
    for name in ("records", "no_work", "problems", "crews", "items", "beside"):
        assert changed(("daily", 1, name), [*day[name], "x"]) == FAILS


@pytest.mark.parametrize("attack", [
    lambda days: days[1:],
    lambda days: days[::-1],
    lambda days: [*days, days[0]],
    lambda days: [days[0], days[0]],
    lambda days: [{**days[0], "no_work": [], "worked": True}, days[1]],
    lambda days: [{**days[0], "n": 2}, days[1]],
    lambda days: [{name: value for name, value in days[0].items() if name != "problems"}, days[1]],
])  # fmt: skip
def test_a_day_left_out_doubled_moved_or_told_as_worked_is_found(attack):
    told = {**MADE.contents, "daily": attack(copy.deepcopy(MADE.contents["daily"]))}
    assert days_fact(told, RECORD).status == FAILS


def test_a_report_that_leaves_its_days_out_fails_once_anybody_wrote_one():
    for name in ("daily", "silent"):
        told = {key: value for key, value in MADE.contents.items() if key != name}
        assert days_fact(told, RECORD).status == FAILS


def test_a_report_of_a_time_without_days_records_claims_nothing_and_holds():
    made = without_days()
    told = {fact.name: fact.status for fact in entry_facts(files(made), made.contents)}
    assert "daily" not in made.contents and told["days_follow"] == HOLDS
    assert days_fact(None, {}).status == UNKNOWN and days_fact(made.contents, {}).status == FAILS


def test_the_day_that_the_first_item_names_is_the_record_s_own():
    assert day_items(RECORD["days"][1])["items"][0]["letter"] == "a"
