"""Drawn panels: sealed until one ahead, offered, looked at or covered; a covered place is never replaced."""

from typing import Any

import pytest

from tests.record.rhythm_sample import FOREMAN, INSPECTOR, LEAD, SECOND, Site, codes, drawn_first


def begun() -> tuple[Site, str, tuple[int, ...]]:
    """A lot of 40 panels and the numbers it drew."""
    site = Site()
    return site, site.plan(1, 40), drawn_first()


def states(site: Site, lot: str) -> dict[int, str]:
    return {stop["panel"]: stop["state"] for stop in site.record()["lots"][lot]["drawn"] if "panel" in stop}


def test_a_stop_is_shown_one_panel_ahead_and_not_before() -> None:
    site, lot, drawn = begun()
    assert drawn[0] > 1 and states(site, lot) == {}
    site.mark(lot, drawn[0] - 2)
    assert states(site, lot) == {}
    site.mark(lot, drawn[0] - 1)
    assert states(site, lot) == {drawn[0]: "next"}
    site.mark(lot, drawn[0])
    assert states(site, lot)[drawn[0]] == "due"
    sealed = [stop for stop in site.record()["lots"][lot]["drawn"] if stop["state"] == "sealed"]
    assert all(set(stop) == {"order", "state", "results"} for stop in sealed) and len(sealed) >= 3


def test_a_stop_looked_at_in_full_is_looked_and_the_next_panel_does_not_change_that() -> None:
    site, lot, drawn = begun()
    site.mark(lot, drawn[0])
    site.look(lot, drawn[0])
    assert states(site, lot)[drawn[0]] == "looked"
    site.mark(lot, drawn[0] + 1)
    assert states(site, lot)[drawn[0]] == "looked" and codes(site.record()) == set()


def test_a_look_cut_short_by_the_cover_is_part_of_one() -> None:
    site, lot, drawn = begun()
    site.mark(lot, drawn[0])
    site.look(lot, drawn[0], items=("screw",))
    assert states(site, lot)[drawn[0]] == "due"
    site.mark(lot, drawn[0] + 1)
    assert states(site, lot)[drawn[0]] == "part"


def test_nobody_came_is_said_and_the_crew_goes_on() -> None:
    site, lot, drawn = begun()
    site.mark(lot, drawn[0])
    site.stop(lot, drawn[0], "not_attended")
    site.mark(lot, drawn[0] + 1)
    assert states(site, lot)[drawn[0]] == "not_attended"
    site.stop(lot, drawn[0], "attended", kid=SECOND)  # two phones: somebody came, and recorded no look
    assert states(site, lot)[drawn[0]] == "covered"
    other, second, _ = begun()
    other.mark(second, drawn[0])
    other.stop(second, drawn[0], "not_attended", kid=LEAD)  # an administrator is at no stop
    assert states(other, second)[drawn[0]] == "due" and "no_authority" in codes(other.record())


def test_an_unsafe_place_is_an_answer() -> None:
    site, lot, drawn = begun()
    site.mark(lot, drawn[0])
    for place in site.places(lot, drawn[0]):
        site.station(drawn[0], place["from_low_end"], lot=lot, reached="unsafe")
    assert states(site, lot)[drawn[0]] == "unsafe"


def test_a_covered_place_is_never_replaced_by_an_open_one() -> None:
    site, lot, drawn = begun()
    site.mark(lot, 40)
    before = [(stop["panel"], stop["places"]) for stop in site.record()["lots"][lot]["drawn"]]
    assert set(states(site, lot).values()) <= {"covered", "due"}
    open_one = next(panel for panel in range(40, 0, -1) if panel not in drawn)
    station = site.station(open_one, {"value": "9.5", "unit": "ft"}, lot=lot)
    record = site.record()
    assert [(stop["panel"], stop["places"]) for stop in record["lots"][lot]["drawn"]] == before
    said = next(flag for flag in record["flags"] if flag["code"] == "place_not_drawn")
    assert said["digest"] == record["stations"][station]["digest"]


def test_a_place_chosen_by_hand_is_no_drawn_one_though_it_stands_there() -> None:
    site, lot, drawn = begun()
    site.mark(lot, drawn[0])
    for place in site.places(lot, drawn[0]):
        site.station(drawn[0], place["from_low_end"], lot=lot, chosen="hand")
    assert states(site, lot)[drawn[0]] == "due" and "place_not_drawn" not in codes(site.record())


def test_a_look_recorded_after_the_cover_is_no_look_in_the_same_chain() -> None:
    site, lot, drawn = begun()
    site.mark(lot, drawn[0])
    places = site.places(lot, drawn[0])
    site.mark(lot, drawn[0] + 1)
    site.look(lot, drawn[0])
    assert states(site, lot)[drawn[0]] == "covered"
    late = [flag for flag in site.record()["flags"] if flag["code"] == "looked_after_cover"]
    assert len(late) == len(places) == 3


def test_a_mark_that_was_a_slip_covers_nothing_once_it_is_corrected() -> None:
    site, lot, drawn = begun()
    slip = site.mark(lot, drawn[0] + 9, subject="m")
    site.mark(lot, drawn[0], subject="m", replaces=(slip,))
    site.look(lot, drawn[0])
    assert states(site, lot)[drawn[0]] == "looked" and "looked_after_cover" not in codes(site.record())


def test_a_look_from_another_phone_counts_though_it_arrives_after_the_cover() -> None:
    site, lot, drawn = begun()
    site.mark(lot, drawn[0] + 1)
    site.look(lot, drawn[0], kid=INSPECTOR)
    assert states(site, lot)[drawn[0]] == "looked" and "looked_after_cover" not in codes(site.record())


def test_correcting_a_look_after_the_cover_does_not_make_it_late_nor_a_late_one_early() -> None:
    site, lot, drawn = begun()
    site.mark(lot, drawn[0])
    early = site.look(lot, drawn[0])[0]
    site.mark(lot, drawn[0] + 1)
    first = next(one for one in site.entries if one["payload"]["subject"] == early)
    site.say(FOREMAN, "station", early, {**first["payload"]["body"], "note": "x"}, replaces=(first["digest"],))
    assert states(site, lot)[drawn[0]] == "looked"
    late = site.station(drawn[0], {"value": "1", "unit": "ft"}, chosen="hand", subject="late")
    entry = next(one for one in site.entries if one["payload"]["subject"] == late)
    site.say(INSPECTOR, "station", late, entry["payload"]["body"], replaces=(entry["digest"],))
    assert "looked_after_cover" in codes(site.record())


def test_a_failure_counts_whoever_found_it_but_a_pass_only_by_who_may_look() -> None:
    site, lot, drawn = begun()
    site.mark(lot, drawn[0])
    site.look(lot, drawn[0], kid=LEAD)
    assert states(site, lot)[drawn[0]] == "due"
    other, second, _ = begun()
    other.mark(second, drawn[0])
    bad = other.look(second, drawn[0], kid=LEAD, fails="screw")
    stop = next(one for one in other.record()["lots"][second]["drawn"] if one.get("panel") == drawn[0])
    assert [place["station"] for place in stop["places"]] == bad


def test_of_two_looks_at_one_place_the_failed_one_stands_there() -> None:
    site, lot, drawn = begun()
    site.mark(lot, drawn[0])
    site.look(lot, drawn[0])
    bad = site.look(lot, drawn[0], kid=SECOND, fails="dimple")
    stop = next(one for one in site.record()["lots"][lot]["drawn"] if one.get("panel") == drawn[0])
    assert [place["station"] for place in stop["places"]] == bad
    assert stop["results"]["major"] == "bad"


def test_panels_not_reached_drop_out_when_the_day_is_over() -> None:
    site, lot, drawn = begun()
    site.mark(lot, drawn[1], night=True)
    site.release(lot, drawn[1], "night")
    found = states(site, lot)
    assert {panel for panel, state in found.items() if state == "dropped"} == set(drawn[2:])
    lots = site.record()["lots"]
    assert (lots[lot]["placed"], lots[lot]["set"], lots[lot]["placed_to"]) == (drawn[1], drawn[1], drawn[1])


def test_extra_panels_get_an_extension_draw_of_their_own() -> None:
    site, lot, _ = begun()
    site.mark(lot, 45)
    assert site.record()["lots"][lot]["extra"] == [[41, 45]]
    more = site.plan(41, 50, n=1, extends=lot)
    record = site.record()
    root, extension = record["lots"][lot], record["lots"][more]
    assert root["extensions"] == [more] and root["extra"] == [] and extension["holds"] == []
    assert (root["placed"], root["set"], extension["set"], extension["placed_to"]) == (45, 40, 5, 45)
    assert "same_panels" not in codes(record)
    site.mark(more, 50)
    record = site.record()
    assert record["lots"][lot]["placed_to"] == 50 == record["lots"][more]["placed_to"]
    assert all(stop["state"] in ("covered", "due") for stop in record["lots"][more]["drawn"])


def test_lots_that_extend_each_other_in_a_ring_are_still_lots() -> None:
    site = Site()
    site.plan(1, 10)
    one = site.plan(11, 20, n=1)
    for entry in site.entries:
        if entry["payload"]["kind"] == "lot":
            entry["payload"]["body"]["extends"] = one if entry["payload"]["subject"] != one else one[:-1] + "0"
    site.mark(one, 15)
    lots = site.record()["lots"]
    assert sorted(len(lot["extensions"]) for lot in lots.values()) == [0, 1]
    assert sum(lot["set"] for lot in lots.values()) == 15


@pytest.mark.parametrize("places, found", [({}, "due"), ({"reached": "covered"}, "covered")])
def test_an_audit_waits_for_nobody_and_sees_covered_panels(places: dict[str, Any], found: str) -> None:
    site = Site()
    site.mark(site.plan(1, 40), 40)
    audit = site.plan(1, 40, kid=INSPECTOR, purpose="audit", series="audit")
    panels = [stop["panel"] for stop in site.record()["lots"][audit]["drawn"]]
    for panel in panels[1:]:
        site.look(audit, panel, kid=INSPECTOR)
    for place in site.places(audit, panels[0]) if places else []:
        site.station(panels[0], place["from_low_end"], kid=INSPECTOR, lot=audit, **places)
    assert [states(site, audit)[panel] for panel in panels] == [found] + ["looked"] * (len(panels) - 1)
    assert site.record()["lots"][audit]["closed"] == (found != "due")


def test_a_lot_is_closed_by_the_crews_next_day_and_by_nobody_elses() -> None:
    site, lot, _ = begun()
    site.plan(41, 50, n=1, day="2026-11-26", crew="another")
    assert not site.record()["lots"][lot]["closed"]
    site.plan(51, 60, n=2, day="2026-11-26", crew=" 2 ")
    assert site.record()["lots"][lot]["closed"]


def test_a_lot_is_closed_when_its_last_leg_is_covered() -> None:
    site = Site(across=30)
    lot = site.plan(1, 30)
    site.mark(lot, 29)
    assert not site.record()["lots"][lot]["closed"] and site.record()["lots"][lot]["open_panel"] == 29
    site.mark(lot, 30)  # finished at an edge: it covers the last seam and has none
    assert site.record()["lots"][lot]["closed"] and site.record()["lots"][lot]["open_panel"] is None
