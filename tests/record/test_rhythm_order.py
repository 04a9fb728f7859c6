"""The rhythm's record is a function of what was said, in any order, with any clock, however wild."""

import copy
import json
import random
from typing import Any

import pytest

from inspect_app.record.fold import fold
from tests.bodies import body_of
from tests.record.rhythm_sample import (
    AREA,
    FOREMAN,
    INSPECTOR,
    LEAD,
    PEOPLE,
    REVIEWER,
    SECOND,
    Site,
    codes,
)

BY_HAND = {"value": "3", "unit": "ft"}


def busy() -> Site:
    """Two crews, two days, an extension, an audit, a correction, a hold gone over, a late look, a lot drawn twice."""
    site = Site()
    lot = site.plan(1, 20)
    site.mark(lot, 1, metal_temperature={"value": "66", "unit": "F"})
    site.station(1, BY_HAND, chosen="hand")
    site.release(lot, 1)
    said = site.mark(lot, 9, change=["coil"], subject="m")
    site.mark(lot, 8, change=["coil"], subject="m", replaces=(said,), kid=FOREMAN)
    site.mark(lot, 14, kid=SECOND, against=[9])
    for stop in site.record()["lots"][lot]["drawn"]:
        if "panel" in stop:
            site.look(lot, stop["panel"], kid=INSPECTOR, fails="dimple" if stop["order"] % 2 else "")
    site.photo(11)
    site.mark(lot, 24, night=True)
    site.plan(21, 28, n=1, extends=lot)
    site.station(3, BY_HAND, chosen="hand")
    site.release(lot, 24, "night", kid=REVIEWER)
    later = site.plan(25, 50, n=3, day="2026-11-26", kid=FOREMAN)
    site.say(FOREMAN, "lot", later, site.body(25, 40, n=3)["body"])
    site.mark(later, 30)
    site.stop(later, 26, "not_attended")
    audit = site.plan(1, 20, kid=INSPECTOR, purpose="audit", series="audit")
    site.look(audit, site.record()["lots"][audit]["drawn"][0]["panel"], kid=INSPECTOR)
    return site


@pytest.fixture(scope="module")
def site() -> Site:
    return busy()


def test_any_order_and_repetition_gives_the_same_rhythm(site: Site) -> None:
    wanted = site.record()
    assert {"ticket_twice", "ticket_skipped", "mark_taken_back", "looked_after_cover", "no_authority"} <= codes(wanted)
    shuffler = random.Random(12)
    for _ in range(12):
        arrival = site.entries + shuffler.choices(site.entries, k=9)
        shuffler.shuffle(arrival)
        assert fold(arrival, PEOPLE) == wanted


def test_a_clock_that_jumps_by_twenty_years_changes_nothing_but_what_the_clock_said(site: Site) -> None:
    entries = copy.deepcopy(site.entries)
    for at, entry in enumerate(entries):
        entry["payload"]["at"] = f"{(2006, 2046)[at % 2]}-01-01T00:00:{at % 60:02}.000-05:00"
    jumped = fold(entries, PEOPLE)
    assert "day_not_its_own" in codes(jumped)  # a lot's day is held to the clock, and to nothing else
    wanted = site.record()
    assert jumped.pop("doubts") != wanted.pop("doubts")  # what the clocks show is told beside it
    assert jumped.pop("days") != wanted.pop("days")  # a walk is of the day that its phone's clock showed
    jumped["flags"] = [flag for flag in jumped["flags"] if flag["code"] != "day_not_its_own"]
    assert timeless(jumped) == timeless(wanted)


def timeless(value: Any) -> Any:
    if isinstance(value, dict):
        return {name: timeless(one) for name, one in value.items() if name != "at"}
    return [timeless(one) for one in value] if isinstance(value, list) else value


def test_what_has_not_arrived_never_hides_what_has(site: Site) -> None:
    whole = site.record()
    for kind in ("area", "assembly", "lot", "walk", "station", "answer", "mark", "release", "job"):
        record = fold([one for one in site.entries if one["payload"]["kind"] != kind], PEOPLE)
        assert len(record["stations"]) == (0 if kind == "station" else len(whole["stations"]))
        assert len(record["lots"]) == (0 if kind == "lot" else len(whole["lots"]))
        if kind == "lot":
            assert "lot_unknown" in codes(record)
    chance = random.Random(3)
    for _ in range(25):
        assert json.dumps(fold(chance.sample(site.entries, len(site.entries) // 2), PEOPLE))


WILD = (-1, 0, 2**53 - 1, -(2**53 - 1))


@pytest.mark.parametrize("number", WILD)
def test_wild_numbers_in_every_place_break_nothing_and_hide_nothing(number: int) -> None:
    wanted = Site()
    good = wanted.plan(30, 40)
    wanted.mark(good, 33)
    before = wanted.record()["lots"][good]
    site = Site()
    site.plan(30, 40)
    site.mark(good, 33)
    for at, spoil in enumerate((
        lambda body: body.update(n=number), lambda body: body.update(size=number),
        lambda body: body.update(places=number, night_places=number),
        lambda body: body["population"][0].update({"from": number}),
        lambda body: body["population"][0].update({"to": number}), lambda body: body.update(population=[]),
        lambda body: body["population"].append(dict(body["population"][0])),
        lambda body: body["population"][0].update(area="none"), lambda body: body.update(asks={}, plans={}),
        lambda body: body["population"][0].update(area_entry="none", assembly_entry="none"),
        lambda body: body["ticket"].update(random="*", statement="a.!.b"),
        lambda body: body["plans"]["major"].update(aql="9999", n=number),
    )):  # fmt: skip
        drawn = site.body(1, 20, kid=SECOND, n=at, crew="wild")
        spoil(drawn["body"])
        site.say(SECOND, "lot", drawn["subject"], drawn["body"])
        for to in (number, 5):
            site.mark(drawn["subject"], to, kid=SECOND, against=[number], night=True, change=["coil"])
        site.release(drawn["subject"], number, kid=SECOND)
        site.stop(drawn["subject"], number, "attended", kid=SECOND)
        site.station(number, BY_HAND, lot=drawn["subject"], kid=SECOND)
    site.mark(good + "9", number)
    site.mark(good, number, area="none")
    site.photo(number)
    site.station(number, {"value": "9e99", "unit": "ft"}, lot=good)
    record = site.record()
    told = record["lots"][good]
    assert len(record["lots"]) == 13 and json.dumps(record)
    names = ["placed_to", "marks", "set", "population", "changes"]
    names += ["drawn", "open_panel"] if number < 40 else []  # a mark up to the last panel covers this lot's too
    assert all(told[name] == before[name] for name in names)
    assert {"draw_differs", "lot_unknown", "ticket_not_theirs"} <= codes(record)


def test_a_roof_that_nothing_can_be_laid_out_of_still_has_its_lots() -> None:
    site = Site()
    body = {**body_of("area"), "assembly": "assembly", "outline": {"unit": "ft", "points": [["0", "0"]] * 4}}
    crossed = site.say(LEAD, "area", AREA, body, replaces=(site.area,))
    drawn = Site().body(1, 20)
    drawn["body"]["population"][0]["area_entry"] = crossed
    site.say(FOREMAN, "lot", drawn["subject"], drawn["body"])
    site.mark(drawn["subject"], 20)
    lot = site.record()["lots"][drawn["subject"]]
    assert [stop["places"] for stop in lot["drawn"]] == [[]] * 5
    assert {stop["state"] for stop in lot["drawn"]} <= {"covered", "due"}


def test_people_without_authority_are_pointed_out_and_what_they_cover_is_not_forgotten() -> None:
    site = Site()
    lot = site.plan(1, 40)
    site.mark(lot, 12, kid=REVIEWER)
    record = site.record()
    assert record["lots"][lot]["placed_to"] == 12 and "no_authority" in codes(record)
    audit = site.plan(1, 9, kid=REVIEWER, purpose="audit", series="audit")
    assert record != site.record() and audit in site.record()["lots"]


def test_tightened_inspection_is_drawn_on_the_day_after_two_lots_not_accepted() -> None:
    site = Site()
    days = (("2026-11-23", 1, 10), ("2026-11-24", 11, 20))
    for n, (day, low, high) in enumerate(days):
        lot = site.plan(low, high, n=n, day=day)
        site.mark(lot, high)
        for stop in site.record()["lots"][lot]["drawn"]:
            site.look(lot, stop["panel"], kid=INSPECTOR, fails="dimple")
    assert site.body(21, 60, n=2, day="2026-11-25")["body"]["inspection"] == "tightened"
    assert site.body(21, 60, n=2, day="2026-11-25", crew="other")["body"]["inspection"] == "normal"
    site.plan(21, 60, n=2, day="2026-11-25")
    assert "lot_laxer" not in codes(site.record())
