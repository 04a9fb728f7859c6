"""What somebody might try who wants an easy sample or a clean bar of coverage: none of it passes for a look."""

from inspect_app.record.decision import decide
from inspect_app.record.sampling import OURS
from tests.record.lot_sample import lot as lot_of
from tests.record.rhythm_sample import AREA, FOREMAN, Site, codes, drawn_first, drawn_panels

BY_HAND = {"value": "3", "unit": "ft"}


def state(site: Site, panel: int) -> str:
    runs = site.record()["coverage"][AREA]["runs"]
    return next(run["state"] for run in runs if run["from"] <= panel <= run["to"])


def test_a_draw_of_fewer_panels_than_its_own_plan_asks_for_decides_nothing() -> None:
    short = decide(lot_of("ggg"), OURS)  # three of five: more than half, all good
    assert (short["state"], short["reason"]) == ("not_determinable", "draw_small")
    assert decide(lot_of("gggxx"), OURS)["state"] == "accepted"  # two that the day never came to
    assert decide(lot_of("ggggg"), OURS, "tightened")["state"] == "accepted"  # drawn before the series was known


def test_a_lot_that_states_fewer_places_is_held_to_those_of_the_job() -> None:
    site = Site()
    drawn = site.body(1, 40)
    site.say(FOREMAN, "lot", drawn["subject"], {**drawn["body"], "places": 1})
    site.mark(drawn["subject"], drawn_first()[0])
    assert len(site.places(drawn["subject"], drawn_first()[0])) == 3
    assert "lot_laxer" in codes(site.record())


def test_a_panel_that_nobody_drew_was_not_offered() -> None:
    site = Site()
    lot = site.plan(1, 40)
    site.mark(lot, 30)
    plain = next(panel for panel in range(2, 30) if panel not in drawn_first())
    for panel in (plain, drawn_first()[0]):
        site.stop(lot, panel, "not_attended")
    assert (state(site, plain), state(site, drawn_first()[0])) == ("waiting", "offered")


def test_a_first_look_that_calls_itself_rework_releases_nothing_and_shows_no_covered_panel() -> None:
    site = Site()
    lot = site.plan(1, 40)
    site.mark(lot, 40, night=True)
    site.plan(41, 60, n=1, day="2026-11-26")
    again = site.plan(1, 39, n=2, purpose="rework")  # of no lot
    for panel in drawn_panels(site.known(), again):
        site.look(again, panel)
    assert site.known()["lots"][again]["decision"]["state"] == "accepted"
    assert {state(site, panel) for panel in range(1, 39)} == {"covered_unseen"}
    true = site.plan(1, 39, n=3, purpose="rework", reworks=lot)
    for panel in drawn_panels(site.known(), true):
        site.look(true, panel)
    plain = [panel for panel in range(2, 39) if panel not in drawn_first()]  # drawn and covered stays unseen
    assert {state(site, panel) for panel in plain} == {"looked_at", "released"}


def test_nobody_extends_another_crews_day_to_leave_a_series() -> None:
    site = Site()
    first = site.plan(1, 20, crew="A")
    other = site.plan(21, 40, crew="B", n=1, extends=first)
    site.mark(other, 30)
    record = site.record()
    assert record["lots"][first]["extensions"] == [] and record["lots"][first]["placed"] == 0
    assert len(record["series"]) == 2 and "draw_differs" in codes(record)
    own = site.plan(41, 50, crew="A ", n=2, extends=first)
    assert site.record()["lots"][first]["extensions"] == [own]


def test_blanks_and_capitals_make_no_other_crew() -> None:
    site = Site()
    site.plan(1, 20, crew="Crew A")
    site.plan(21, 40, crew=" crew  a ", n=1, day="2026-11-26")
    told = site.record()["series"]
    assert len(told) == 1 and [len(one["lots"]) for one in told.values()] == [2]


def test_a_lot_drawn_on_another_areas_outline_is_pointed_out() -> None:
    site = Site()
    wide = site.add_area("another", 61)
    drawn = site.body(1, 40)
    row = {**drawn["body"]["population"][0], "area_entry": wide}
    site.say(FOREMAN, "lot", drawn["subject"], {**drawn["body"], "population": [row]})
    assert "draw_differs" in codes(site.record())


def called_good(site: Site, digest: str) -> None:
    payload = next(one for one in site.entries if one["digest"] == digest)["payload"]
    good = {**payload["body"], "choice": "pass", "verdict": {**payload["body"]["verdict"], "result": "pass"}}
    site.say(FOREMAN, "answer", payload["subject"], good, (digest,))


def failed(site: Site, lot: str) -> dict[int, str]:
    held = site.record()["lots"][lot]["holds"]
    return {one["panel"]: one["state"] for one in held if one["why"] == "failed"}


def test_a_failure_that_was_covered_stays_gone_over_when_its_answer_is_called_good() -> None:
    site = Site()
    lot = site.plan(1, 40)
    site.mark(lot, 9)
    slip, bad = (site.answer(site.station(9, BY_HAND, chosen="hand"), "screw", "fail") for _ in (1, 2))
    called_good(site, bad)
    called_good(site, slip)
    assert failed(site, lot) == {}  # set right while the leg was open
    bad = site.answer(site.station(9, BY_HAND, chosen="hand"), "screw", "fail")
    site.mark(lot, 12)
    called_good(site, bad)
    assert failed(site, lot) == {9: "covered_against"}


def test_a_mark_moved_to_another_lot_is_one_taken_back() -> None:
    site = Site()
    lot = site.plan(1, 20)
    other = site.plan(21, 40, n=1)
    first = site.mark(lot, 12, subject="mark")
    site.mark(other, 21, subject="mark", replaces=(first,))
    told = [flag for flag in site.record()["flags"] if flag["code"] == "mark_taken_back"]
    assert [flag["facts"]["other"] for flag in told] == [first]


def test_who_came_by_and_answered_nothing_has_not_looked() -> None:
    site = Site()
    lot = site.plan(1, 40)
    site.mark(lot, 1)
    bare = site.station(1, BY_HAND, chosen="hand")
    site.answer(bare, "screw", "not_determinable")
    site.release(lot, 1)
    site.mark(lot, 3)
    assert state(site, 1) != "looked_at" and "released_unseen" in codes(site.record())


def test_a_look_at_a_drawn_place_that_is_called_one_by_hand_later_is_pointed_out() -> None:
    site = Site()
    lot = site.plan(1, 40)
    site.mark(lot, drawn_first()[0])
    first = site.look(lot, drawn_first()[0], fails="dimple")[0]
    assert "place_not_drawn" not in codes(site.record())
    said = next(one for one in site.entries if one["payload"]["subject"] == first)
    site.say(FOREMAN, "station", first, {**said["payload"]["body"], "chosen": "hand"}, (said["digest"],))
    assert "place_not_drawn" in codes(site.record())


def test_a_lot_for_another_day_than_its_own_is_pointed_out_and_one_for_tomorrow_is_not() -> None:
    for day, told in (("2026-11-25", False), ("2026-11-26", False), ("2026-11-24", True), ("2026-11-27", True)):
        site = Site()
        site.plan(1, 40, day=day)
        assert ("day_not_its_own" in codes(site.record())) is told, day


def test_a_good_answer_given_after_the_cover_was_not_seen_and_a_bad_one_counts_all_the_same() -> None:
    for result, told in (("pass", "part"), ("fail", "looked")):
        site = Site()
        lot = site.plan(1, 40)
        panel = drawn_first()[0]
        site.mark(lot, panel)
        stations = [site.station(panel, place["from_low_end"], lot=lot) for place in site.places(lot, panel)]
        for station in stations:
            for item in ("screw", "wave"):
                site.answer(station, item, "pass")
        site.mark(lot, panel + 1)  # the next panel is over it
        for station in stations:
            site.answer(station, "dimple", result)
        drawn = next(one for one in site.record()["lots"][lot]["drawn"] if one.get("panel") == panel)
        assert {place["state"] for place in drawn["places"]} == {told}
        assert site.record()["lots"][lot]["decision"]["by"]["major"]["found"] == (result == "fail")


def test_a_word_given_in_time_and_measured_after_the_cover_still_counts() -> None:
    site = Site()
    lot = site.plan(1, 40)
    panel = drawn_first()[0]
    site.mark(lot, panel)
    stations = [site.station(panel, place["from_low_end"], lot=lot) for place in site.places(lot, panel)]
    said = [site.answer(station, item, "pass") for station in stations for item in ("screw", "dimple", "wave")]
    site.mark(lot, panel + 1)
    first = next(one for one in site.entries if one["digest"] == said[0])["payload"]
    site.say(FOREMAN, "answer", first["subject"], first["body"], (said[0],))  # the taps, made in the truck
    drawn = next(one for one in site.record()["lots"][lot]["drawn"] if one.get("panel") == panel)
    assert {place["state"] for place in drawn["places"]} == {"looked"}
