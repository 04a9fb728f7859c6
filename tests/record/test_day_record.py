"""The day's record: what a crew told of its day, beside what its marks, walks and findings show."""

import copy
import json
import random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspect_app.record.day_record_items import ITEMS, day_items, silent
from inspect_app.record.fold import fold
from tests.record.day_sample import COIL, DAY, of, say_day, with_assembly, written
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
from tests.record.test_rhythm_order import busy

HEAT = {"value": "66", "unit": "F"}


def told() -> Site:
    """The busy roof, with records of its days by several people, corrected, and a day without work."""
    site = busy()
    first = say_day(site, subject="own", head_count=4, work="Panels", materials=[COIL])
    say_day(site, subject="own", replaces=(first,), head_count=5, work="Panels to 24", materials=[COIL],
            weather=[{"at": "07:30", "sky": "clear", "wind": "calm", "metal": HEAT}])  # fmt: skip
    say_day(site, SECOND, crew=" 2 ", head_count=4)
    say_day(site, REVIEWER, head_count=9)
    say_day(site, day="2026-11-27", no_work="rain")
    say_day(site, INSPECTOR, day="2026-11-26", no_work="rain")
    return site


def test_panels_metal_walks_holds_and_findings_of_the_day_come_from_what_was_told_on_the_roof() -> None:
    site = Site()
    lot = site.plan(1, 20)
    site.mark(lot, 1)
    site.release(lot, 1, walk="walk")
    site.mark(lot, 7, metal_temperature=HEAT, metal_temperature_by="contact")
    site.mark(lot, 9)
    site.walk(INSPECTOR, "other", crew="2", placed=[{"area": AREA, "from": 8, "to": 12}])
    failed = site.station(5, {"value": "3", "unit": "ft"}, chosen="hand", lot=lot)
    site.answer(failed, "dimple", "fail")
    day = of(site.record())
    assert day["work_done"] == [{"area": AREA, "from": 1, "to": 9, "by": "marks"},
                                {"area": AREA, "from": 10, "to": 12, "by": "walks"}]  # fmt: skip
    assert {(one["of"], one["temperature"]["value"]) for one in day["metal"]} == {("mark", "66"), ("walk", "70")}
    assert day["findings"] == [f"{failed}/flange/dimple"] and day["entries"] == []
    assert {one["why"]: one["state"] for one in day["holds"]}["first"] == "released"
    (walk,) = [one for one in day["walks"] if one["walk"] == "walk"]
    assert "first" in walk["phases"] and walk["results"] == {"fail": 1} and not walk["signed"]


def test_an_audit_s_lot_is_no_work_of_the_crew_s_day() -> None:
    site = Site()
    lot = site.plan(1, 20)
    site.mark(lot, 20)
    site.plan(1, 20, kid=INSPECTOR, purpose="audit", series="audit", day="2026-11-26")
    assert [one["day"] for one in site.record()["days"]] == [DAY]


def test_several_people_s_records_stand_side_by_side_and_a_correction_replaces_only_its_own() -> None:
    day = of(told().record())
    assert sorted(one["head_count"] for one in day["entries"]) == [4, 5, 9]
    assert {one["by"]: one["objection"] for one in day["entries"]} == {"fay": "", "sol": "", "rey": "no_authority"}
    assert day["crews"] == [" 2 ", "2"] and "head_counts_differ" in day["problems"]
    site = Site()
    mine = say_day(site, subject="own", head_count=4)
    say_day(site, SECOND, subject="own", replaces=(mine,), head_count=1)
    record = site.record()
    assert sorted(one["head_count"] for one in of(record)["entries"]) == [1, 4] and "may_not_replace" in codes(record)


def test_a_correction_to_another_day_or_crew_moves_the_record_there() -> None:
    site = Site()
    first = say_day(site, subject="own")
    say_day(site, subject="own", replaces=(first,), day="2026-11-24", crew="Roofers")
    record = site.record()
    assert [one["digest"] for one in of(record, "2026-11-24", "Roofers")["entries"]] != [first]
    assert not any(one["entries"] for one in record["days"] if one["day"] == DAY)


def test_a_day_told_without_work_on_which_panels_were_set_is_pointed_out() -> None:
    record = told().record()
    rain = of(record, "2026-11-27")
    assert rain["no_work"][0]["why"] == "rain" and rain["problems"] == [] and not day_items(rain)["worked"]
    day = of(record, "2026-11-26")
    assert day["problems"] == ["no_work_but_set"] and day_items(day)["worked"]
    flags = [one for one in record["flags"] if one["code"] == "no_work_but_set"]
    assert [one["digest"] for one in flags] == [day["no_work"][0]["digest"]]


def test_any_order_and_repetition_gives_the_same_days() -> None:
    site = told()
    wanted = site.record()["days"]
    shuffler = random.Random(5)
    for _ in range(10):
        arrival = site.entries + shuffler.choices(site.entries, k=9)
        shuffler.shuffle(arrival)
        assert fold(arrival, PEOPLE)["days"] == wanted


@settings(max_examples=40, deadline=None)
@given(st.lists(st.tuples(st.sampled_from(["2", "Two", " TWO"]), st.sampled_from([DAY, "2026-11-24"]),
                          st.sampled_from([FOREMAN, SECOND, LEAD]), st.integers(0, 3), st.booleans()), max_size=7),
       st.randoms(use_true_random=False))  # fmt: skip
def test_whatever_is_written_in_whatever_order_each_head_stands_once_on_its_own_day(rows: Any, chance: Any) -> None:
    site = Site()
    said: list[str] = []
    for n, (crew, day, kid, subject, none) in enumerate(rows):
        older = tuple(said[-1:]) if n % 2 else ()
        said.append(say_day(site, kid, f"s{subject}", older, crew=crew, day=day, no_work="wind" if none else None))
    record = site.record()
    chance.shuffle(site.entries)
    assert site.record()["days"] == record["days"]
    heads = [one["digest"] for day in record["days"] for one in day["entries"]]
    assert len(heads) == len(set(heads)) and set(heads) <= set(said) and bool(heads) == bool(said)
    for day in record["days"]:
        assert all(one["day"] == day["day"] and one["crew"] in day["crews"] for one in day["entries"])
        assert len([one for one in record["days"] if one["day"] == day["day"]]) <= 2


def test_what_has_not_arrived_never_hides_what_has() -> None:
    site = told()
    chance = random.Random(9)
    for kind in ("area", "assembly", "lot", "walk", "station", "answer", "mark", "release", "job"):
        days = fold([one for one in site.entries if one["payload"]["kind"] != kind], PEOPLE)["days"]
        assert sum(len(one["entries"]) for one in days) == 5
    for _ in range(20):
        assert json.dumps(fold(chance.sample(site.entries, len(site.entries) // 2), PEOPLE)["days"]) is not None


@pytest.mark.parametrize(("given_", "approved", "state", "because", "against"), [
    ({}, {}, "agree", "", "approved"),
    ({"gauge": 24}, {}, "agree", "", "approved"),
    # MSG minima as CSSBI Facts 10-12 print them: 24 is 0.0227 in, 26 is 0.0170 in, 22 is 0.0284 in.
    ({"gauge": "26"}, {}, "other", "lighter", "approved"),
    ({"gauge": "22"}, {}, "other", "heavier", "approved"),
    # Galvanized 24 has the base metal of MSG 24 (rules/gauge.py); Brown & Sharpe 24 is 0.0201 in, 95 % of it 0.0191 in.
    ({"gauge_system": "GSG"}, {}, "agree", "", "approved"),
    ({"gauge_system": "BS"}, {}, "other", "lighter", "approved"),
    ({"gauge": "99"}, {}, "other", "unknown", "approved"),
    ({"gauge_system": "invented"}, {}, "other", "unknown", "approved"),
    ({}, {"tested_gauge": "22", "tested_gauge_system": "MSG"}, "other", "lighter", "tested"),
    ({"gauge": "24"}, {"gauge": "22", "tested_gauge": "24", "tested_gauge_system": "MSG"}, "other", "lighter",
     "approved"),
    ({"gauge": None}, {}, "not_told", "no_gauge", "approved"),
    ({"gauge_system": None}, {}, "not_told", "no_system", "approved"),
])  # fmt: skip
def test_a_gauge_is_compared_by_its_base_metal_with_what_was_approved_and_with_what_was_tested(
    given_: dict, approved: dict, state: str, because: str, against: str
) -> None:
    bare = {"tested_gauge": None, "tested_gauge_system": None}
    site = with_assembly(Site(), **{**bare, **approved})
    material = {name: value for name, value in {**COIL, **given_}.items() if value is not None}
    say_day(site, materials=[material])
    ((told,),) = [[row["compared"][0]["gauge"] for row in of(site.record())["entries"][0]["materials"]]]
    assert (told["state"], told["because"], told["against"]) == (state, because, against)


@pytest.mark.parametrize(("coating", "state", "because"), [
    ("az 50 PAINTED", "agree", ""), ("AZ55, painted", "other", "differs"), (None, "not_told", "no_coating"),
    (" - ", "not_told", "no_coating"), ("ÄZ50, painted", "other", "differs"),
])  # fmt: skip
def test_a_coating_is_compared_as_text_without_its_blanks_and_signs(
    coating: str | None, state: str, because: str
) -> None:
    site = with_assembly(Site())
    material = {**COIL, **({"coating": coating} if coating else {})}
    if not coating:
        del material["coating"]
    say_day(site, materials=[material])
    told = of(site.record())["entries"][0]["materials"][0]["compared"][0]["coating"]
    assert (told["state"], told["because"]) == (state, because)


def test_a_lighter_coil_is_flagged_unless_it_was_set_aside_and_screws_are_compared_with_no_sheet() -> None:
    for accepted, flagged in (("accepted", True), ("", True), ("set_aside", False), ("sent_back", False)):
        site = with_assembly(Site())
        screws = {"what": "fasteners", "quantity": "4", "accepted": "accepted", "stored": "dry", "photos": []}
        say_day(site, materials=[{**COIL, "gauge": "26", "accepted": accepted}, screws])
        record = site.record()
        assert ("material_lighter" in codes(record)) == flagged
        assert of(record)["entries"][0]["materials"][1]["compared"] == []


def test_the_material_is_held_to_the_areas_worked_on_and_to_all_where_none_is_known() -> None:
    site = with_assembly(Site())
    site.say(LEAD, "assembly", "heavy", {**written_assembly(site), "gauge": "22"})
    body = next(one["payload"]["body"] for one in site.entries if one["payload"]["kind"] == "area")
    site.say(LEAD, "area", "other", {**body, "assembly": "heavy"})
    say_day(site, materials=[COIL], day="2026-11-20")
    say_day(site, materials=[COIL])  # the day of the walk over AREA
    record = site.record()
    rows = {day: of(record, day)["entries"][0]["materials"][0]["compared"] for day in ("2026-11-20", DAY)}
    assert [one["assembly"] for one in rows[DAY]] == ["assembly"] and rows[DAY][0]["areas"] == [AREA]
    assert [(one["assembly"], one["gauge"]["because"]) for one in rows["2026-11-20"]] == [
        ("assembly", ""), ("heavy", "lighter")]  # fmt: skip


def written_assembly(site: Site) -> dict[str, Any]:
    bodies = [one["payload"]["body"] for one in site.entries if one["payload"]["kind"] == "assembly"]
    return copy.deepcopy(bodies[-1])


def test_all_ten_items_stand_under_their_letters_and_what_nobody_told_says_so() -> None:
    # UFGS 01 45 00 (as UFGS-01451A), the daily record's least: a to j.
    assert [one[0] for one in ITEMS] == list("abcdefghij")
    site = Site()
    say_day(site, submittals="none", equipment=[{"what": "seamer", "operator": "Ada", "setting": "", "hours": "8"}])
    told = day_items(of(site.record()))
    assert {one["letter"]: one["told"] for one in told["items"]} == dict.fromkeys("abdfj", True) | dict.fromkeys(
        "ceghi", False)  # fmt: skip
    bare = day_items({**of(site.record()), "entries": [], "no_work": []})
    assert {one["letter"] for one in bare["items"] if one["told"]} == {"a", "d"}, "the walk of that day is known"
    assert all(one["said"] == [] for one in bare["items"])


def test_days_of_which_nothing_at_all_is_told_are_counted_between_those_that_are() -> None:
    site = Site()
    for day in ("2026-11-17", "2026-11-24", "2026-12-02"):
        say_day(site, day=day)
    assert silent(site.record()["days"]) == [{"after": "2026-11-17", "before": "2026-11-24", "days": 6},
                                             {"after": "2026-11-25", "before": "2026-12-02", "days": 6}]  # fmt: skip
    assert silent([]) == [] and written()["crew"] == "2"
