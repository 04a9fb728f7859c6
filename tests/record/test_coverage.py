"""Coverage without make-up, and the marks, photos and ranges it rests on."""

import random
from typing import Any

import pytest

from inspect_app.record.ranges import common, count, merged, without
from tests.record.rhythm_sample import AREA, FOREMAN, INSPECTOR, SECOND, WALK, Site, codes, drawn_first

BY_HAND = {"value": "3", "unit": "ft"}


def runs(site: Site, area: str = AREA) -> list[tuple[int, int, str]]:
    told = site.record()["coverage"][area]
    assert sum(told["counts"].values()) == told["panels"]
    return [(run["from"], run["to"], run["state"]) for run in told["runs"]]


def test_every_panel_is_exactly_what_is_known_of_it() -> None:
    site = Site()
    lot = site.plan(1, 40)
    site.mark(lot, 1)
    site.answer(site.station(1, BY_HAND, chosen="hand"), "screw", "pass")
    site.release(lot, 1)
    drawn = drawn_first()
    free = [panel for panel in range(2, 30) if panel not in drawn]
    site.mark(lot, free[0])
    site.photo(free[0])
    site.mark(lot, drawn[0])
    site.stop(lot, drawn[0], "not_attended")
    site.mark(lot, 30)
    found = {panel: state for low, high, state in runs(site) for panel in range(low, high + 1)}
    assert found[1] == "looked_at" and found[free[0]] == "photographed" and found[drawn[0]] == "offered"
    assert all(found[panel] == "covered_unseen" for panel in drawn[1:] if panel < 30)
    assert all(found[panel] == "waiting" for panel in free[1:] if panel < 30)
    assert (found[30], found[31], found[61]) == ("open", "to_come", "no_seam")


def walked(fails: str = "") -> tuple[Site, str]:
    """A whole day: every stop looked at, the leg released for the night."""
    site = Site()
    lot = site.plan(1, 40)
    site.mark(lot, 1)
    site.answer(site.station(1, BY_HAND, chosen="hand"), "screw", "pass")
    site.release(lot, 1)
    for panel in drawn_first():
        site.mark(lot, panel)
        site.look(lot, panel, fails=fails)
        if fails:
            site.release(lot, panel, "failed", way="fixed")
    site.mark(lot, 40, night=True)
    site.station(40, BY_HAND, chosen="hand")
    site.release(lot, 40, "night")
    return site, lot


def test_an_accepted_lot_releases_its_panels_and_one_that_is_not_leaves_them_unseen() -> None:
    site, lot = walked()
    assert site.record()["lots"][lot]["decision"]["state"] == "accepted" and codes(site.record()) == set()
    assert {state for _, high, state in runs(site) if high <= 40} == {"looked_at", "released"}
    bad, lot = walked("screw")
    assert bad.record()["lots"][lot]["decision"]["state"] == "not_accepted"
    assert {state for _, high, state in runs(bad) if high <= 40} == {"looked_at", "covered_unseen"}


def test_panels_set_beyond_any_plan_belong_to_no_lot_and_are_unseen() -> None:
    site, lot = walked()
    site.mark(lot, 45)
    assert (41, 44, "covered_unseen") in runs(site) and site.record()["lots"][lot]["extra"] == [[41, 45]]


def test_what_an_audit_sees_later_was_covered_unseen_all_the_same() -> None:
    site = Site()
    site.walk(FOREMAN, "old", placed=[{"area": AREA, "from": 1, "to": 20}])
    assert runs(site) == [(1, 19, "covered_unseen"), (20, 20, "open"), (21, 60, "to_come"), (61, 61, "no_seam")]
    audit = site.plan(1, 20, kid=INSPECTOR, purpose="audit", series="audit")
    for stop in site.record()["lots"][audit]["drawn"]:
        site.look(audit, stop["panel"], kid=INSPECTOR)
    assert runs(site)[0] == (1, 19, "covered_unseen")


def test_a_look_after_the_cover_makes_nothing_looked_at() -> None:
    site = Site()
    lot = site.plan(1, 40)
    site.mark(lot, 30)
    site.station(3, BY_HAND, chosen="hand")
    site.photo(4)
    found = {panel: state for low, high, state in runs(site) for panel in range(low, high + 1)}
    assert found[3] not in ("looked_at",) and found[4] != "photographed"
    assert [flag["code"] for flag in site.record()["flags"]].count("looked_after_cover") == 2


def test_marks_of_two_phones_on_one_lot_are_both_kept_and_the_farther_counts() -> None:
    site = Site()
    lot = site.plan(1, 40)
    mine = site.mark(lot, 12, metal_temperature={"value": "71", "unit": "F"}, metal_temperature_by="contact")
    theirs = site.mark(lot, 16, kid=SECOND, metal_temperature={"value": "76", "unit": "F"})
    back = site.mark(lot, 9, kid=SECOND)
    told = site.record()["lots"][lot]
    assert told["marks"] == [back, mine, theirs] and told["placed_to"] == 16 == told["open_panel"]
    assert (told["metal"]["value"], told["metal"]["by"]) == ("76", None)


def test_a_mark_beyond_the_area_covers_what_is_there_and_is_pointed_out() -> None:
    site = Site(across=30)
    lot = site.plan(1, 30)
    site.mark(lot, 2**53 - 1)
    assert runs(site)[-1] == (30, 30, "no_seam") and site.record()["lots"][lot]["placed_to"] == 30
    assert "panel_beyond_area" in codes(site.record())


def test_two_lots_over_the_same_panels_are_both_kept_and_pointed_out() -> None:
    site = Site()
    one, two = site.plan(1, 40), site.plan(30, 60, kid=SECOND, crew="3")
    said = {flag["facts"]["other"] for flag in site.record()["flags"] if flag["code"] == "same_panels"}
    assert said == {one, two} == set(site.record()["lots"])


@pytest.mark.parametrize("placed, pointed_out", [(29, False), (30, True), (None, True)])
def test_panels_that_a_day_never_came_to_may_be_planned_again(placed: int | None, pointed_out: bool) -> None:
    site = Site()
    lot = site.plan(1, 40)
    if placed:
        site.mark(lot, placed)
    site.plan(30, 60, n=1, day="2026-11-26")
    assert ("same_panels" in codes(site.record())) == pointed_out


def test_a_panel_not_reached_is_its_next_lots_alone() -> None:
    site = Site()
    first = site.plan(1, 40)
    site.mark(first, 29)
    second = site.plan(30, 60, n=1, day="2026-11-26")
    site.mark(second, 60)
    lots = site.record()["lots"]
    assert {stop["state"] for stop in lots[first]["drawn"] if stop["panel"] >= 30} == {"dropped"}
    assert (lots[first]["set"], lots[second]["set"], lots[first]["open_panel"]) == (29, 31, None)


def test_a_rolling_photo_is_asked_of_every_fifth_panel_and_of_the_ends_of_zones() -> None:
    site = Site()
    lot = site.plan(3, 40)
    site.mark(lot, 7)
    assert site.record()["lots"][lot]["rolling"] == {"due": [8], "taken": [], "missed": [3]}
    site.mark(lot, 8)
    site.photo(8)
    site.mark(lot, 13)
    assert site.record()["lots"][lot]["rolling"] == {"due": [13], "taken": [8], "missed": [3]}
    whole = Site()
    day = whole.plan(1, 60)
    whole.mark(day, 60)  # the field begins on panel 1 and is last met on panel 60
    assert whole.record()["lots"][day]["rolling"]["missed"] == list(range(1, 60, 5))
    assert whole.record()["lots"][day]["rolling"]["due"] == [60]


@pytest.mark.parametrize("ranges, wanted", [
    ([[5, 9], [1, 3]], [[1, 3], [5, 9]]), ([[1, 4], [5, 9]], [[1, 9]]), ([[1, 9], [2, 3]], [[1, 9]]), ([[4, 3]], []),
])  # fmt: skip
def test_ranges_merge(ranges: list[list[int]], wanted: list[list[int]]) -> None:
    assert merged(ranges) == wanted


def test_ranges_do_what_sets_of_numbers_do() -> None:
    chance = random.Random(5)
    for _ in range(300):
        one, two = ([[low, low + chance.randrange(-1, 6)] for low in chance.sample(range(30), 4)] for _ in "ab")
        first, second = (({n for low, high in each for n in range(low, high + 1)}) for each in (one, two))
        low = chance.randrange(30)
        span = set(range(low, low + 8))
        for told, wanted in ((merged(one), first), (without(merged(one), merged(two)), first - second),
                             (common(merged(one), low, low + 7), first & span)):  # fmt: skip
            assert {n for a, b in told for n in range(a, b + 1)} == wanted and count(told) == len(wanted)


def test_walks_with_wild_ranges_break_nothing() -> None:
    site = Site(across=20)
    rows: list[dict[str, Any]] = [{"area": AREA, "from": -(2**50), "to": 2**50}, {"area": "none", "from": 9, "to": 1}]
    site.walk(FOREMAN, WALK + "2", placed=rows)
    assert runs(site) == [(1, 19, "covered_unseen"), (20, 20, "no_seam")]
