"""Holds: a leg waits for its release, and going over it stays visible."""

from typing import Any

from tests.bodies import body_of
from tests.record.rhythm_sample import FOREMAN, INSPECTOR, REVIEWER, SECOND, WALK, Site, codes

BY_HAND = {"value": "3", "unit": "ft"}


def holds(site: Site, lot: str) -> dict[tuple[int, str], dict[str, Any]]:
    return {(one["panel"], one["why"]): one for one in site.record()["lots"][lot]["holds"]}


def begun() -> tuple[Site, str]:
    site = Site()
    return site, site.plan(1, 40)


def test_the_first_panel_of_the_day_is_held_before_it_is_set_and_until_it_is_released() -> None:
    site, lot = begun()
    assert holds(site, lot)[1, "first"]["state"] == "ahead"
    site.mark(lot, 1)
    assert holds(site, lot)[1, "first"]["state"] == "open"
    site.answer(site.station(1, BY_HAND, chosen="hand"), "screw", "pass")
    given = site.release(lot, 1)
    site.mark(lot, 12)
    one = holds(site, lot)[1, "first"]
    assert (one["state"], one["release"], one["unseen"]) == ("released", given, False)


def test_covering_without_a_release_is_gone_over_and_a_release_afterwards_does_not_undo_it() -> None:
    site, lot = begun()
    site.mark(lot, 2)
    assert holds(site, lot)[1, "first"]["state"] == "covered_against"
    given = site.release(lot, 1)
    one = holds(site, lot)[1, "first"]
    assert (one["state"], one["release"]) == ("covered_against", given)


def test_what_was_gone_over_stays_visible_when_its_mark_is_corrected() -> None:
    site, lot = begun()
    said = site.mark(lot, 5, subject="m", against=[1])
    site.mark(lot, 1, subject="m", replaces=(said,))
    site.release(lot, 1)
    record = site.record()
    assert record["lots"][lot]["placed_to"] == 1
    assert holds(site, lot)[1, "first"]["state"] == "covered_against"
    back = [flag["facts"] for flag in record["flags"] if flag["code"] == "mark_taken_back"]
    assert back == [{"other": said, "from": 5, "to": 1}]


def test_going_over_what_had_been_released_before_is_nothing() -> None:
    site, lot = begun()
    site.mark(lot, 1)
    site.release(lot, 1)
    site.mark(lot, 4, against=[1])
    assert holds(site, lot)[1, "first"]["state"] == "released"


def test_a_release_from_another_phone_counts_since_nothing_proves_that_it_came_late() -> None:
    site, lot = begun()
    site.mark(lot, 6)
    site.release(lot, 1, kid=INSPECTOR)
    assert holds(site, lot)[1, "first"]["state"] == "released"


def test_signing_a_mark_again_does_not_move_the_cover_behind_a_release() -> None:
    site, lot = begun()
    said = site.mark(lot, 6, subject="m")
    site.release(lot, 1)
    site.mark(lot, 6, subject="m", replaces=(said,))
    assert holds(site, lot)[1, "first"]["state"] == "covered_against"


def test_who_may_not_release_releases_nothing() -> None:
    site, lot = begun()
    site.mark(lot, 1)
    site.release(lot, 1, kid=REVIEWER)
    assert holds(site, lot)[1, "first"]["state"] == "open" and "no_authority" in codes(site.record())


def test_a_change_holds_the_next_panel_again() -> None:
    site, lot = begun()
    site.mark(lot, 8, change=["coil", "driver_hand"])
    assert holds(site, lot)[9, "change"]["state"] == "ahead"
    told = site.record()["lots"][lot]["changes"]
    assert told == [{"panel": 9, "change": "coil"}, {"panel": 9, "change": "driver_hand"}]
    site.mark(lot, 9)
    assert holds(site, lot)[9, "change"]["state"] == "open"
    site.mark(lot, 10)
    assert holds(site, lot)[9, "change"]["state"] == "covered_against"
    site.mark(lot, 40, change=["long_stop"])  # tomorrow's first panel is held anyway
    assert (41, "change") not in holds(site, lot)


def test_the_night_leg_is_held_until_released_and_closes_the_lot() -> None:
    site, lot = begun()
    site.mark(lot, 22, night=True)
    record = site.record()
    assert holds(site, lot)[22, "night"]["state"] == "open" and not record["lots"][lot]["closed"]
    assert record["lots"][lot]["night"]["panel"] == 22 and len(record["lots"][lot]["night"]["places"]) == 5
    site.release(lot, 22, "night")
    assert site.record()["lots"][lot]["closed"]


def test_the_next_mornings_first_panel_covers_the_night_leg() -> None:
    site, lot = begun()
    site.mark(lot, 22, night=True)
    later = site.plan(23, 60, n=1, day="2026-11-26")
    assert holds(site, lot)[22, "night"]["state"] == "open"
    site.mark(later, 23)
    assert holds(site, lot)[22, "night"]["state"] == "covered_against"
    assert holds(site, later)[23, "first"]["state"] == "open"


def test_a_failed_place_holds_its_panel_until_it_is_dealt_with() -> None:
    site, lot = begun()
    site.mark(lot, 9)
    bad = site.station(9, BY_HAND, chosen="hand")
    site.answer(bad, "screw", "fail")
    assert holds(site, lot)[9, "failed"]["state"] == "open"
    site.release(lot, 9, "failed", way="fixed")
    site.mark(lot, 10)
    one = holds(site, lot)[9, "failed"]
    assert (one["state"], one["unseen"]) == ("released", False)


def test_going_on_over_a_known_failure_is_gone_over() -> None:
    site, lot = begun()
    site.mark(lot, 9)
    site.answer(site.station(9, BY_HAND, chosen="hand"), "screw", "fail")
    site.mark(lot, 10)
    assert holds(site, lot)[9, "failed"]["state"] == "covered_against"


def test_a_failure_learnt_after_the_cover_waits_for_its_way_out_and_blames_nobody() -> None:
    site, lot = begun()
    site.mark(lot, 9)
    station = site.station(9, BY_HAND, chosen="hand")
    site.mark(lot, 10)
    site.answer(station, "screw", "fail")  # taps made in the truck
    assert holds(site, lot)[9, "failed"]["state"] == "open"
    site.release(lot, 9, "failed", way="finding_open")
    assert holds(site, lot)[9, "failed"]["state"] == "released"
    other, second = begun()
    other.mark(second, 9)
    other.answer(other.station(9, BY_HAND, chosen="hand", kid=INSPECTOR), "screw", "fail", kid=INSPECTOR)
    other.mark(second, 10)  # the foreman's phone may not have known
    assert holds(other, second)[9, "failed"]["state"] == "open"


def test_what_only_is_written_down_and_what_an_audit_finds_hold_nothing() -> None:
    site, lot = begun()
    site.mark(lot, 9)
    station = site.station(9, BY_HAND, chosen="hand")
    digest = site.answer(station, "note", "fail")
    entry = next(one for one in site.entries if one["digest"] == digest)
    entry["payload"]["body"]["severity"] = "record"
    audit = site.plan(1, 9, kid=INSPECTOR, purpose="audit", series="audit")
    site.answer(site.station(5, BY_HAND, kid=INSPECTOR, lot=audit), "screw", "fail", kid=INSPECTOR)
    assert set(holds(site, lot)) == {(1, "first")}


def test_a_release_without_a_look_is_pointed_out() -> None:
    site, lot = begun()
    site.mark(lot, 1)
    site.release(lot, 1)
    assert holds(site, lot)[1, "first"]["unseen"] and "released_unseen" in codes(site.record())
    site.answer(site.station(1, BY_HAND, chosen="hand"), "screw", "pass")  # a look after the release
    assert holds(site, lot)[1, "first"]["unseen"]
    other = site.station(1, BY_HAND, chosen="hand", kid=SECOND)  # another phone's: nothing proves that it came after
    site.answer(other, "screw", "pass", kid=SECOND)
    assert not holds(site, lot)[1, "first"]["unseen"] and "released_unseen" not in codes(site.record())


def test_a_release_may_rest_on_the_walk_it_names_but_not_on_yesterdays() -> None:
    site, lot = begun()
    site.mark(lot, 1)
    site.say(FOREMAN, "answer", f"{WALK}/watch/leg", {**answered(), "item": "leg"})
    site.release(lot, 1, walk=WALK)
    assert not holds(site, lot)[1, "first"]["unseen"]
    late = Site()
    late.say(FOREMAN, "answer", f"{WALK}/watch/leg", {**answered(), "item": "leg"})
    second = late.plan(1, 40)
    late.mark(second, 1)
    late.release(second, 1, walk=WALK)
    assert holds(late, second)[1, "first"]["unseen"]
    late.release(second, 2, "change", walk="none")
    assert "released_unseen" in codes(late.record())


def answered() -> dict[str, Any]:
    return {**body_of("answer"), "walk": WALK, "station": None}
