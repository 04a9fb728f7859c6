"""What a warranty survey finds around a place, and what nobody can hide from it. All of it invented."""

import json
import random

import pytest

from inspect_app.record.ask import ask
from inspect_app.record.fold import fold
from inspect_app.record.scope import narrowed
from inspect_app.rules.refused import Refused
from tests.bodies import body_of
from tests.record.finding_sample import HERE, Place
from tests.record.rhythm_sample import AREA, FOREMAN, LEAD, PEOPLE, REVIEWER, SECOND, Site


def q(value, unit="ft"):
    return {"value": value, "unit": unit}


def scope(panel=9, at="7.5", radius="4", area=AREA):
    return {"kind": "survey", "area": area, "panel": panel, "from_low_end": q(at), "radius": q(radius)}


def told(site, **where):
    return narrowed(site.record(), scope(**where))


def kinds(part):
    return [event["kind"] for event in part["survey"]["events"]]


def test_a_place_is_within_by_its_true_distance_and_no_farther():
    """Panels are 16 in wide and a place stands on its leading seam: three panels on is 4 ft across. With 3 ft up the
    slope besides that is 5 ft (3-4-5)."""
    site = Site()
    for panel, at in ((12, "7.5"), (12, "10.5"), (13, "7.5"), (9, "11.5"), (9, "11.6")):
        site.station(panel, q(at), chosen="hand")
    events = [one for one in told(site)["survey"]["events"] if one["kind"] == "station"]
    assert [(one["panel"], one["how"]) for one in events] == [(12, "place"), (9, "place"), (9, "beside")]
    assert [one["distance"] for one in events] == pytest.approx([4.0, 4.0, 4.1])
    wider = [one for one in told(site, radius="5.0")["survey"]["events"] if one["kind"] == "station"]
    assert [one["distance"] for one in wider] == pytest.approx([4.0, 5.0, 4.0, 4.1])


def test_a_panel_started_from_the_right_lies_where_its_seam_is():
    site = Site()
    turned = {**body_of("area"), "assembly": "assembly", "start": "right", "outline": {
        "unit": "ft", "points": [["0", "0"], ["80", "0"], ["80", "40"], ["0", "40"]]}}  # fmt: skip
    site.area = site.say(LEAD, "area", AREA, turned, (site.area,))
    site.station(12, q("7.5"), chosen="hand")
    (station,) = [one for one in told(site, radius="4.01")["survey"]["events"] if one["kind"] == "station"]
    assert station["distance"] == pytest.approx(4.0)


def marks_told(site, panel):
    return sorted(event["id"] for event in told(site, panel=panel, radius="0.5")["survey"]["events"]
                  if event["kind"] == "mark")  # fmt: skip


def test_a_mark_that_reaches_back_over_the_lot_its_own_goes_on_with_is_told():
    site = Site()
    first = site.plan(1, 10, n=0)
    more = site.plan(11, 20, n=1, extends=first)
    site.mark(more, 15, subject="reaches-back")
    assert marks_told(site, 4) == ["reaches-back"]
    assert more in told(site, panel=4, radius="0.5")["lots"]
    site.mark(first, 9, subject="nearer")
    assert marks_told(site, 4) == ["nearer"] and marks_told(site, 13) == ["reaches-back"]


def test_neither_a_second_mark_of_the_same_panel_nor_one_on_another_roof_hides_a_mark():
    site = Site()
    site.add_area("other", 20)
    lot = site.plan(1, 10)
    for subject, more in (("one", {}), ("two", {"kid": SECOND}), ("elsewhere", {"area": "other", "to": 6})):
        site.mark(lot, **{"to": 7, "subject": subject, **more})
    assert marks_told(site, 4) == ["one", "two"]


def test_another_area_counts_only_where_the_drawing_places_both():
    """Two planes back to back at a ridge: 40 ft up at 4:12 is 37.947 ft seen from above. 1 ft below the ridge on each
    side is 2 ft × cos = 1.897 ft apart on the plan."""
    site = Site()
    rise = 40 * 12 / (144 + 16) ** 0.5
    body = {**body_of("area"), "assembly": "assembly", "slope": q("4", "/12"), "outline": {
        "unit": "ft", "points": [["0", "0"], ["16", "0"], ["16", "40"], ["0", "40"]]}}  # fmt: skip
    place = {"unit": "ft", "east": "0", "north": "0", "up": "0"}
    site.area = site.say(LEAD, "area", AREA, body | {"place": place}, (site.area,))
    back = site.say(LEAD, "area", "back", body)
    site.station(6, q("39"), area="back", chosen="hand")
    near = {"panel": 6, "at": "39", "radius": "3"}
    assert not told(site, **near)["stations"]
    north = f"{2 * rise:.9f}"
    site.say(LEAD, "area", "back", body | {"place": {**place, "east": "16", "north": north, "up": "180"}}, (back,))
    (event,) = [one for one in told(site, **near)["survey"]["events"] if one["kind"] == "station"]
    assert event["distance"] == pytest.approx(2 * 12 / 160**0.5, abs=1e-6)
    assert told(site, **near)["survey"]["panels"]["back"]


def test_what_was_found_corrected_and_rechecked_stands_in_order_with_its_class():
    site = Place("critical")
    first = site.correct(photos=["a" * 64])
    site.recheck(first, photos=["b" * 64])
    part = told(site)
    of_it = [(one["kind"], one["class"]) for one in part["survey"]["events"] if one["id"] == site.finding]
    assert of_it == [("answer", "found"), ("correction", "corrected"), ("recheck", "corrected")]
    assert site.finding in part["findings"] and not told(site, panel=30)["findings"]


def test_what_passed_is_counted_at_its_place_or_with_its_walk_and_what_failed_stands_for_itself():
    site = Site()
    station = site.station(9, HERE, chosen="hand")
    for item, result in (("screw", "pass"), ("dimple", "pass"), ("wave", "fail")):
        site.answer(station, item, result)
    whole = {**body_of("answer"), "walk": "walk", "station": None, "area": AREA, "item": "loose", "photos": []}
    site.say(FOREMAN, "answer", "walk/evening/loose", whole)
    rows = {one["kind"]: one for one in told(site)["survey"]["events"]}
    assert rows["station"]["results"] == {"pass": 2, "fail": 1} and rows["answer"]["result"] == "fail"
    assert rows["walk"]["results"] == {whole["verdict"]["result"]: 1} and kinds(told(site)).count("answer") == 1


def test_drawing_the_roof_anew_moves_nothing_out_of_a_survey():
    """Somebody draws the area with panels twice as wide: panel 12 would lie 8 ft from panel 9 and not 4."""
    site = Site()
    site.station(12, q("7.5"), chosen="hand")
    wide = {**body_of("area"), "assembly": "assembly", "coverage": q("32", "in"), "outline": {
        "unit": "ft", "points": [["0", "0"], ["80", "0"], ["80", "40"], ["0", "40"]]}}  # fmt: skip
    site.say(LEAD, "area", AREA, wide, (site.area,))
    assert len(told(site)["stations"]) == 1 and kinds(told(site)).count("area") == 2


def test_a_place_moved_by_a_later_version_is_still_told_where_it_was_first_said():
    site = Site()
    name = site.station(9, HERE, chosen="hand")
    first = site.entries[-1]["digest"]
    site.station(40, HERE, chosen="hand", subject=name, replaces=(first,))
    events = [one for one in told(site)["survey"]["events"] if one["kind"] == "station"]
    assert [(one["panel"], one["stands"]) for one in events] == [(9, False), (40, True)]


def test_what_names_a_panel_that_is_not_there_is_told_and_not_dropped():
    site = Place()
    lost = site.hand(panel=900)
    assert lost in told(site)["findings"]
    (event,) = [one for one in told(site)["survey"]["events"] if one["id"] == lost]
    assert event["how"] == "unplaced" and event["distance"] is None


def test_the_neighbors_two_each_side_are_told_whatever_the_radius():
    site = Site()
    lot = site.plan(1, 40)
    site.mark(lot, 20)
    site.station(11, q("39"), chosen="hand")
    part = told(site, radius="0.1")
    assert [one["panel"] for one in part["survey"]["beside"]] == [7, 8, 9, 10, 11]
    assert all(one["set"] == [{"day": "2026-11-25", "crew": "2"}] for one in part["survey"]["beside"])
    assert part["survey"]["beside"][4]["looked"] == 1 and len(part["stations"]) == 1
    assert [one["panel"] for one in told(site, panel=1)["survey"]["beside"]] == [1, 2, 3]


def test_a_roof_that_only_a_lot_or_a_walk_reaches_over_is_no_part_of_a_survey():
    site = Site()
    lot = site.plan(1, 40)
    site.mark(lot, 20)
    site.station(9, q("7.5"), chosen="hand")
    record = site.record()
    record["areas"]["far"] = {**record["areas"][AREA], "id": "far", "place": None}
    record["lots"][lot]["population"].append({"area": "far", "from": 1, "to": 9})
    for walk in record["walks"].values():
        walk["areas"] = [AREA, "far"]
    part = narrowed(record, scope())
    assert list(part["areas"]) == [AREA] and lot in part["lots"] and part["walks"]


def approve(site, replaces=(), **changed):
    return site.say(LEAD, "assembly", "assembly", {**body_of("assembly"), **changed}, replaces)


def test_the_approval_of_that_day_is_the_one_its_lot_was_drawn_on_and_what_changed_since_is_named():
    site = Site()
    approval = {"reference": "A 1 (invented)", "issued": "2026-01-01", "expires": "2026-11-24"}
    site.assembly = approve(site, (site.assembly,), approval=approval)
    lot = site.plan(1, 40)
    site.mark(lot, 20)
    approve(site, (site.assembly,), approval={**approval, "expires": "2030-01-01"}, fastener="another screw")
    (day,) = told(site)["survey"]["set"]
    assert (day["day"], day["crew"], day["lots"]) == ("2026-11-25", "2", [lot])
    assert day["assembly"]["from"] == "lot" and day["assembly"]["digest"] == site.assembly
    assert day["assembly"]["in_force"]["verdict"] == "fail", "it had expired the day before"
    assert {"approval", "fastener"} <= set(day["assembly"]["changed"])


def test_without_any_word_of_the_day_no_approval_is_made_up():
    part = told(Site())
    assert part["survey"]["set"] == []
    assert part["survey"]["unseen"]["panels"][0]["state"] == "to_come"


def test_what_nobody_saw_is_counted_by_places_within_the_radius():
    """Spacing 12 in, the first half a spacing up: within 1 ft of a place 7.5 ft up its own seam stand those at 6.5, 7.5
    and 8.5 ft, no neighbor's (16 in)."""
    site = Site()
    approve(site, (site.assembly,), zones=[{"name": "field", "spacing": q("12", "in")}])
    assert told(site, radius="1")["survey"]["unseen"]["places"] == {"there": 3, "looked_at": 0, "left": 3}
    site.station(9, HERE, chosen="hand")
    site.station(9, HERE, chosen="hand", reached="unsafe")
    found = told(site, radius="1")["survey"]["unseen"]
    assert found["places"] == {"there": 3, "looked_at": 1, "left": 2} and len(found["not_reached"]) == 1


def survey_body(**changed):
    return {**body_of("survey"), "area": AREA, "panel": 9, "from_low_end": HERE, **changed}


def test_what_a_reviewer_asked_is_kept_and_shown_at_its_place_alone():
    site = Site()
    site.say(REVIEWER, "survey", "s1", survey_body())
    site.say(REVIEWER, "survey", "s2", survey_body(panel=40))
    part = told(site)
    assert [one["id"] for one in part["survey"]["asked"]] == ["s1"]
    assert part["survey"]["asked"][0]["samples"][0]["custody"][0]["to"] == "the owner"
    assert not site.record()["flags"]
    site.say(FOREMAN, "survey", "s3", survey_body())
    assert [flag["code"] for flag in site.record()["flags"]] == ["no_authority"]


def test_the_movement_at_the_place_is_measured_from_the_panels_own_fixed_line():
    """Fixed at 40 ft, the place 7.5 ft up: 32.5 ft move. 6.5e-6 × 390 in × 200 °F = 0.507 in."""
    site = Site()
    body = {**body_of("area"), "assembly": "assembly", "fixed_line": {"from_low_end": q("40"), "by": "invented"},
            "outline": {"unit": "ft", "points": [["0", "0"], ["80", "0"], ["80", "40"], ["0", "40"]]}}  # fmt: skip
    area = site.say(LEAD, "area", AREA, body, (site.area,))
    job = {**body_of("job"), "metal_low": q("-20", "F"), "metal_high": q("180", "F")}
    site.say(LEAD, "job", "job", job, (site.entries[0]["digest"],))
    approve(site, (site.assembly,), expansion=q("6.5e-6", "/F"))
    found = told(site)["survey"]["wear"]
    assert found["fixed"] == "known" and found["answer"]["values"]["movement"]["value"] == pytest.approx(0.507)
    site.say(LEAD, "area", AREA, {**body, "fixed_line": None}, (area,))
    found = told(site)["survey"]["wear"]
    assert found["fixed"] == "unknown" and found["inputs"]["distance"] == q("32.5")


@pytest.mark.parametrize(("changed", "code"), [
    ({"area": "nowhere"}, "scope_unknown"), ({"panel": 0}, "no_such_panel"), ({"panel": "9"}, "no_such_panel"),
    ({"from_low_end": q("41")}, "beyond_panel"), ({"radius": q("0")}, "not_above_zero"),
    ({"radius": q("-3")}, "not_above_zero"), ({"radius": None}, "not_quantity"),
    ({"radius": q("3", "F")}, "wrong_dimension"),
])  # fmt: skip
def test_a_place_that_is_none_is_refused_by_its_field(changed, code):
    with pytest.raises(Refused) as caught:
        narrowed(Site().record(), scope() | changed)
    assert caught.value.code == code


def test_an_area_that_cannot_be_laid_out_is_told_whole_instead_of_not_at_all():
    site = Site()
    crossed = {**body_of("area"), "assembly": "assembly", "outline": {
        "unit": "ft", "points": [["0", "0"], ["80", "40"], ["80", "0"], ["0", "40"]]}}  # fmt: skip
    site.say(LEAD, "area", AREA, crossed, (site.area,))
    site.station(60, HERE, chosen="hand")
    part = told(site)
    assert part["survey"]["place"]["drawn"] is False and len(part["stations"]) == 1


def busy():
    site = Place("major")
    site.correct(photos=["a" * 64])
    lot = site.plan(1, 40)
    site.mark(lot, 20)
    site.say(REVIEWER, "survey", "s1", survey_body())
    site.photo(9)
    return site


def test_any_order_of_the_same_entries_gives_the_same_survey():
    site = busy()
    expected = json.dumps(told(site), sort_keys=True)
    for seed in range(4):
        mixed = site.entries * 2
        random.Random(seed).shuffle(mixed)
        assert json.dumps(narrowed(fold(mixed, PEOPLE), scope()), sort_keys=True) == expected


def test_nothing_of_the_record_itself_is_changed_by_a_survey():
    record = busy().record()
    before = json.dumps(record, sort_keys=True)
    narrowed(record, scope())
    assert json.dumps(record, sort_keys=True) == before


def test_the_phone_asks_for_the_same_survey():
    record = busy().record()
    asked = {"call": "survey", "record": record, "place": {name: scope()[name] for name in scope() if name != "kind"}}
    found = json.loads(ask(json.dumps(asked)))["ok"]
    assert found == json.loads(json.dumps(narrowed(record, scope())["survey"]))
