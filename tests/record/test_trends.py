"""Nonconformances counted by what they have in common, and what a look at trends is narrowed to."""

import json
import random
from typing import Any

import pytest

from inspect_app.record.ask import ask
from inspect_app.record.fold import fold
from inspect_app.record.trends import trends
from inspect_app.rules.refused import Refused
from tests.record.rhythm_sample import AREA, FOREMAN, PEOPLE
from tests.record.test_findings_order import wild
from tests.record.test_rhythm_order import busy
from tests.record.trend_sample import Audited, finding, on, record_of

FOUR = record_of(
    finding("s1/nail/dimple", on(1), crew="Crew  A", zone="edge"),
    finding("s2/nail/dimple", on(2), on(3), crew="crew a"),
    finding("s3/nail/screw", on(2), area="south", crew="B", severity="critical", firm="Gable"),
    finding("s4/nail/wave", on(2), on(2, 9), "withdrawn", crew="B"),
    finding("by-hand", on(4), state="conceded", closed_by=None, area=None, zone=None, severity="minor"),
)


def groups(told: dict[str, Any], name: str) -> list[tuple[str, int, int]]:
    return [(one["key"], one["n"], one["open"]) for one in told["pareto"]["by"][name]]


def test_four_findings_are_counted_by_what_they_share_the_most_frequent_first() -> None:
    told = trends(FOUR)
    assert told["pareto"]["n"] == 4
    assert groups(told, "item") == [("nail/dimple", 2, 1), ("", 1, 0), ("nail/screw", 1, 1)]
    assert groups(told, "crew") == [("crew a", 2, 1), ("", 1, 0), ("b", 1, 1)]
    assert groups(told, "area") == [("north", 2, 1), ("", 1, 0), ("south", 1, 1)]
    assert groups(told, "assembly") == [("flange", 2, 1), ("", 1, 0), ("clips", 1, 1)]
    assert groups(told, "firm") == [("", 3, 1), ("Gable", 1, 1)]
    assert groups(told, "zone") == [("field", 2, 1), ("", 1, 0), ("edge", 1, 1)]
    assert [one["cumulative"] for one in told["pareto"]["by"]["item"]] == [0.5, 0.75, 1.0]


def test_what_was_withdrawn_is_named_and_not_counted() -> None:
    told = trends(FOUR)["pareto"]
    assert told["withdrawn"] == ["s4/nail/wave"]
    assert "s4/nail/wave" not in [one for group in told["by"]["item"] for one in group["findings"]]


def test_every_figure_names_the_entries_it_rests_on() -> None:
    told = trends(FOUR)
    assert told["pareto"]["by"]["item"][0]["findings"] == ["s1/nail/dimple", "s2/nail/dimple"]
    assert told["pareto"]["by"]["item"][0]["digests"] == ["s1/nail/dimple-open", "s2/nail/dimple-open"]
    for name in told["pareto"]["by"]:
        counted = sorted(one for group in told["pareto"]["by"][name] for one in group["findings"])
        assert counted == ["by-hand", "s1/nail/dimple", "s2/nail/dimple", "s3/nail/screw"]


@pytest.mark.parametrize(
    ("asked", "left"),
    [
        ({"crew": ["CREW A "]}, ["s1/nail/dimple", "s2/nail/dimple"]),
        ({"area": ["south"]}, ["s3/nail/screw"]),
        ({"area": [""]}, ["by-hand"]),
        ({"assembly": ["flange"], "from": "2026-11-02"}, ["s2/nail/dimple"]),
        ({"severity": ["critical", "minor"]}, ["by-hand", "s3/nail/screw"]),
        ({"item": ["nail/screw", "nail/dimple"], "to": "2026-11-01"}, ["s1/nail/dimple"]),
        ({"firm": ["Gable"]}, ["s3/nail/screw"]),
        ({"zone": ["edge"], "crew": ["B"]}, []),
        ({"from": "2026-11-02", "to": "2026-11-02"}, ["s2/nail/dimple", "s3/nail/screw"]),
    ],
)
def test_a_filter_takes_what_it_names_and_nothing_else(asked: dict[str, Any], left: list[str]) -> None:
    told = trends(FOUR, asked)["pareto"]["by"]["item"]
    assert sorted(one for group in told for one in group["findings"]) == left


@pytest.mark.parametrize(
    ("asked", "code", "field"),
    [
        ({"colour": ["red"]}, "unknown_filter", "colour"),
        ({"crew": "A"}, "not_texts", "crew"),
        ({"item": [7]}, "not_texts", "item"),
        ({"from": "2026-02-30"}, "not_date", "from"),
        ({"to": 20261101}, "not_date", "to"),
        ({"from": "2026-11-03", "to": "2026-11-02"}, "days_reversed", "to"),
    ],
)
def test_what_is_no_filter_is_refused_by_its_name(asked: dict[str, Any], code: str, field: str) -> None:
    with pytest.raises(Refused) as refused:
        trends(FOUR, asked)
    assert (refused.value.code, refused.value.field) == (code, field)


def test_who_it_was_given_to_comes_before_who_set_the_panel_and_that_before_the_walk() -> None:
    lot = {"purpose": "work", "crew": "Set", "population": [{"area": "north", "from": 1, "to": 9}], "placed_to": 9,
           "asks": {}, "at": on(1)}  # fmt: skip
    given = {"crew": "Given", "firm": "", "by_day": None, "problems": []}
    told = record_of(
        finding("a/n/x", on(1), panel=3, crew="Walk", assignment=given),
        finding("b/n/x", on(1), panel=3, crew="Walk"),
        finding("c/n/x", on(1), panel=10, crew="Walk"),
        finding("d/n/x", on(1), panel=3, crew="Walk", assignment={**given, "problems": ["no_authority"]}),
        lots={"l": lot},
    )
    assert groups(trends(told), "crew") == [("set", 2, 2), ("given", 1, 1), ("walk", 1, 1)]


def test_of_two_lots_that_planned_a_panel_the_one_that_set_it_counts() -> None:
    lots = {name: {"purpose": "work", "crew": crew, "population": [{"area": "north", "from": 1, "to": 20}], "asks": {},
                   "placed_to": to, "at": on(1)} for name, crew, to in (("1", "A", 10), ("2", "B", 20), ("3", "C", 5))}
    told = record_of(finding("a/n/x", on(1), panel=15), finding("b/n/x", on(1), panel=4), lots=lots)
    assert groups(trends(told), "crew") == [("a", 1, 1), ("b", 1, 1)]


def test_looks_stand_beside_what_was_found_and_firms_have_none() -> None:
    site = Audited.of(1, 0, 0, 4)
    told = trends(site.record())["pareto"]["by"]
    assert [(one["key"], one["n"], one["looks"]) for one in told["item"]] == [("flange/dimple", 2, 10)]
    assert [one["looks"] for one in told["crew"]] == [10]
    assert told["firm"][0]["looks"] is None
    assert trends(site.record(), {"firm": [""]})["pareto"]["by"]["item"][0]["looks"] is None


def test_the_same_entries_in_any_order_give_the_same_trends() -> None:
    site = Audited.of(2, 1, 2, 4)
    expected = json.dumps(trends(site.record()), sort_keys=True)
    for seed in range(6):
        entries = list(site.entries)
        random.Random(seed).shuffle(entries)
        assert json.dumps(trends(fold(entries, PEOPLE)), sort_keys=True) == expected
    assert expected != json.dumps(trends(fold(site.entries[:-3], PEOPLE)), sort_keys=True)


def test_numbers_of_every_way_to_group_add_up_to_all_under_any_filter() -> None:
    chance = random.Random(54)
    record = Audited.of(3, 2, 2, 6).record()
    choices = trends(record)["choices"]
    for _ in range(40):
        name = chance.choice([one for one in choices if choices[one]])
        told = trends(record, {name: chance.sample(choices[name], 1)})["pareto"]
        for groups_of in told["by"].values():
            assert sum(one["n"] for one in groups_of) == told["n"]
            assert not groups_of or groups_of[-1]["cumulative"] == pytest.approx(1)
    whole = trends(record)["pareto"]["n"]
    assert whole == sum(trends(record, {"item": [one]})["pareto"]["n"] for one in choices["item"] + [""])


def test_any_part_of_a_job_in_any_order_has_trends_whatever_was_said() -> None:
    for seed in range(12):
        chance = random.Random(seed)
        entries = list((wild(seed) if seed % 3 else busy()).entries)
        part = chance.sample(entries, chance.randint(1, len(entries)))
        for asked in ({}, {"item": ["flange/screw"], "severity": ["major"]}, {"crew": ["2"], "to": "2026-11-25"}):
            told = trends(fold(part, PEOPLE), asked)
            assert told["closing"]["n"] + len(told["closing"]["unreadable"]) == told["pareto"]["n"]


def test_a_lot_of_a_billion_panels_takes_no_longer() -> None:
    site = Audited.of(0, 1, 0, 1)
    again = site.body(1, 40, n=1, purpose="rework", reworks=site.work)
    again["body"]["population"][0]["to"] = 10**9
    site.say(FOREMAN, "lot", again["subject"], again["body"])
    assert len(trends(site.record())["agreement"]["apart"]["mended"]) == 2


def test_an_empty_job_has_trends_too_and_they_say_nothing() -> None:
    told = trends(fold([], PEOPLE))
    assert told["pareto"]["n"] == 0 and told["shares"] == [] and told["closing"]["as_of"] is None
    assert told["agreement"]["looks"]["because"]["code"] == "kappa_none"


def test_the_phone_asks_for_them_through_its_one_door() -> None:
    record = Audited.of(1, 1, 0, 2).record()
    told = json.loads(ask(json.dumps({"call": "trends", "record": record, "filters": {"area": [AREA]}})))
    assert told["ok"] == json.loads(json.dumps(trends(record, {"area": [AREA]})))
    refused = json.loads(ask(json.dumps({"call": "trends", "record": record, "filters": {"from": "x"}})))
    assert refused["refused"]["field"] == "from"
