"""Everything doubtful is told once, with the signed entries that show it, and nothing of it leaves the record."""

import random
from typing import Any

import pytest

from inspect_app.record.doubtful_clocks import clocks
from inspect_app.record.doubts import _chains
from inspect_app.record.fold import fold
from tests.bodies import body_of
from tests.record.rhythm_sample import AREA, FOREMAN, INSPECTOR, PEOPLE, SECOND, WALK, Site

AT = "2026-11-25T08:00:00.000-05:00"


def doubts(site: Site, **options: Any) -> list[dict[str, Any]]:
    told: list[dict[str, Any]] = fold(site.entries, PEOPLE, **options)["doubts"]
    return told


def of(site: Site, code: str) -> list[dict[str, Any]]:
    return [one for one in doubts(site) if one["code"] == code]


def branch(site: Site, kid: str, at: int, n: int) -> None:
    """What a copy of the phone says from its ``at``-th entry on: the same numbers again, under the same key."""
    whole, site.chains[kid] = site.chains[kid], site.chains[kid][:at]
    for step in range(n):
        site.walk(kid, f"copied {at} {step}")
    site.chains[kid] = whole


def test_a_roof_where_nothing_is_odd_has_no_doubts() -> None:
    assert doubts(Site()) == []


def test_a_copied_phone_is_one_fork_with_the_two_signed_entries_that_prove_it_and_both_branches_stay() -> None:
    site = Site()
    for n in range(50):
        site.walk(FOREMAN, f"own {n}")
    branch(site, FOREMAN, 1, 50)
    (fork,) = of(site, "fork")
    assert (fork["facts"]["seq"], fork["facts"]["both"], fork["by"], fork["tier"]) == (1, 100, ["fay"], "act")
    assert [one["seq"] for one in fork["entries"]] == [1, 1] and len({one["digest"] for one in fork["entries"]}) == 2
    assert len(fold(site.entries, PEOPLE)["walks"]) == 101


def test_a_gap_is_told_with_how_many_are_missing_and_the_one_behind_it_not_once_more() -> None:
    site = Site()
    for n in range(4):
        site.walk(FOREMAN, f"own {n}")
    site.entries = [one for one in site.entries if one["kid"] != FOREMAN or one["payload"]["seq"] not in (1, 2)]
    (gap,) = of(site, "gap")
    assert (gap["facts"]["low"], gap["facts"]["high"], gap["facts"]["missing"]) == (1, 2, 2)
    assert of(site, "unlinked") == [] and [one["code"] for one in doubts(site, partial=True)] == []


def test_two_people_who_change_the_same_version_leave_two_and_both_are_named() -> None:
    site = Site()
    for kid in (INSPECTOR, FOREMAN):
        body = dict(body_of("area"), name=f"as {kid[0]} saw it")
        site.say(kid, "area", "drawn", body)
    (one,) = of(site, "versions")
    assert one["facts"] == {"kind": "area", "other": "drawn"} and one["by"] == ["fay", "ira"]
    assert {tuple(row["about"]) for row in one["entries"]} == {("area", "drawn")}


def answered(site: Site, kid: str, walk: str, result: str, station: str) -> None:
    place = dict(body_of("station"), walk=walk, area=AREA, panel=3, reached="yes", lot=None)
    place.pop("lot")
    site.say(kid, "station", station, dict(place, from_low_end={"value": "10", "unit": "ft"}, chosen="hand"))
    body = dict(body_of("answer"), walk=walk, station=station, area=AREA, photos=[])
    body["verdict"] = dict(body["verdict"], result=result)
    site.say(kid, "answer", f"{station}/flange/screw", body)


@pytest.mark.parametrize(("second", "result", "told"), [(SECOND, "fail", 1), (FOREMAN, "fail", 0), (SECOND, "pass", 0)])
def test_one_place_seen_good_by_one_and_bad_by_another_is_told(second: str, result: str, told: int) -> None:
    site = Site()
    site.walk(second, "another")
    answered(site, FOREMAN, WALK, "pass", "s1")
    answered(site, second, "another", result, "s2")
    assert len(of(site, "seen_differently")) == told


def payload(seq: int, at: str, server: Any = None, age: Any = None) -> dict[str, Any]:
    return {"seq": seq, "prev": str(seq - 1) if seq else None, "at": at, "clock": {"server": server, "age": age}}


@pytest.mark.parametrize(("at", "code", "minutes"), [
    ("2046-11-25T08:00:00.000-05:00", "clock_fast", 10519200),
    ("2006-11-25T08:00:00.000-05:00", "clock_slow", 10519200),
    ("2026-11-25T11:12:00.000-05:00", "clock_fast", 192), ("2026-11-25T07:57:00.000-05:00", "clock_slow", 3),
    ("2026-11-25T08:01:00.000-05:00", None, 0), ("2026-11-25T13:00:00.000+00:00", None, 0), ("yesterday", None, 0),
])  # fmt: skip
def test_a_clock_is_held_to_the_servers_last_word(at: str, code: str | None, minutes: int) -> None:
    told = clocks({"0": payload(0, at, "2026-11-25T12:55:00.000+00:00", 300_000)})
    assert [(one["code"], one["minutes"]) for one in told] == ([(code, minutes)] if code else [])


def test_a_clock_set_back_is_seen_without_the_server_and_a_zone_that_changes_is_none() -> None:
    back = {"0": payload(0, AT), "1": payload(1, "2006-11-25T08:00:00.000-05:00"), "2": payload(2, AT)}
    assert [(one["code"], one["digests"]) for one in clocks(back)] == [("clock_back", ["1"])]
    assert clocks({"0": payload(0, AT), "1": payload(1, "2026-11-25T06:00:01.000-07:00")}) == []


def test_flags_are_told_by_kind_with_what_they_speak_of() -> None:
    site = Site()
    site.say(FOREMAN, "assembly", "assembly 2", body_of("assembly"))
    (one,) = of(site, "no_authority")
    assert (one["n"], one["by"], one["entries"][0]["about"]) == (1, ["fay"], ["assembly", "assembly 2"])


def test_a_second_key_of_one_person_is_known_and_nobody_has_to_act() -> None:
    people = {**PEOPLE, "fay": {**PEOPLE["fay"], "kids": [FOREMAN, "G" * 43]}}
    site = Site()
    site.walk(SECOND, "after the phone was set up again")
    site.entries[-1]["kid"], site.entries[-1]["payload"]["by"] = "G" * 43, "fay"
    (one,) = [one for one in fold(site.entries, people)["doubts"] if one["code"] == "several_keys"]
    assert (one["facts"], one["tier"], one["by"]) == ({"kids": 2}, "know", ["fay"])


def test_any_order_of_the_same_entries_tells_the_same_doubts() -> None:
    site = Site()
    branch(site, FOREMAN, 0, 3)
    answered(site, FOREMAN, WALK, "pass", "s1")
    site.walk(SECOND, "another")
    answered(site, SECOND, "another", "fail", "s2")
    site.say(FOREMAN, "assembly", "assembly 2", body_of("assembly"))
    wanted, shuffler = doubts(site), random.Random(3)
    assert {one["code"] for one in wanted} >= {"fork", "seen_differently", "no_authority"}
    for _ in range(20):
        shuffler.shuffle(site.entries)
        assert doubts(site) == wanted


def test_versions_say_in_what_they_differ_and_only_what_fits_a_line() -> None:
    site = Site()
    for kid, name, slope in ((INSPECTOR, "North", "3"), (FOREMAN, "South", "3")):
        body = dict(body_of("area"), name=name, slope={"value": slope, "unit": "/12"}, zones=[name])
        site.say(kid, "area", "drawn", body)
    (one,) = of(site, "versions")
    said = {row["by"]: row["says"] for row in one["entries"]}
    assert said == {"ira": [["name", "North"], ["zones", None]], "fay": [["name", "South"], ["zones", None]]}


def test_a_chain_full_of_gaps_is_read_once_and_not_once_for_each_gap() -> None:
    looks: list[str] = []

    class Payload(dict[str, Any]):
        def __getitem__(self, name: str) -> Any:
            looks.append(name)
            return super().__getitem__(name)

    chain = {f"digest {n}": Payload(seq=2 * n + 1, by="fay") for n in range(200)}
    gaps = [[2 * n, 2 * n] for n in range(200)]
    told = _chains({FOREMAN: {"forks": [], "gaps": gaps, "orphans": list(chain)}}, {FOREMAN: chain}, False)
    assert [one[2]["low"] for one in told] == list(range(0, 400, 2)) and told[7][3] == ["digest 7"]
    assert len(looks) < 10 * len(chain), "else a phone folds such a job for minutes"
