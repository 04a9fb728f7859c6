"""The fold decides the lots of a job as they are walked, whatever the order in which the entries arrive."""

import json
import random
from typing import Any

import pytest

from inspect_app.record.fold import fold
from tests.record.lot_days import day
from tests.record.rhythm_sample import FOREMAN, ITEMS, LEAD, PEOPLE, Site, codes


@pytest.fixture(scope="module")
def site() -> Site:
    """Three days: one accepted, one not accepted by its first drawn panel, one with a drawn panel not looked at."""
    site = Site()
    day(site, 1, 15, n=0)
    day(site, 16, 30, n=1, fails="dimple", day="2026-11-26")
    day(site, 31, 45, n=2, skip=1, day="2026-11-27")
    return site


def lots(record: dict[str, Any]) -> list[dict[str, Any]]:
    return [record["lots"][name] for name in sorted(record["lots"])]


def test_three_days_come_out_as_they_were_walked(site: Site) -> None:
    record = site.record()
    assert [one["decision"]["state"] for one in lots(record)] == ["accepted", "not_accepted", "not_determinable"]
    assert [one["decision"]["reason"] for one in lots(record)] == [None, "found", "nonresponse"]
    told = record["series"]["2|assembly"]
    assert [one["symbol"] for one in told["lots"]] == ["A", "R", "N"] and told["decided"] == 2
    first, bad, _ = lots(record)
    assert {panel["results"]["major"] for panel in first["drawn"]} == {"good"}
    assert [panel["results"]["major"] for panel in bad["drawn"]] == ["bad"] + ["good"] * (len(bad["drawn"]) - 1)
    assert record["to_date"]["major"]["found"] == 1
    assert [one["decision"]["lot"]["changed"] for one in lots(record)] == [0, 0, 0]  # what fails still is not changed
    assert record["to_date"]["major"]["n"] == sum(one["decision"]["by"]["major"]["n"] for one in lots(record))


def test_the_order_in_which_entries_arrive_moves_no_decision(site: Site) -> None:
    wanted = json.dumps(site.record(), sort_keys=True)
    chance = random.Random(5)
    for _ in range(2):
        entries = site.entries + chance.choices(site.entries, k=5)
        chance.shuffle(entries)
        assert json.dumps(fold(entries, PEOPLE), sort_keys=True) == wanted


def test_places_chosen_by_hand_never_enter_the_figures() -> None:
    site = Site()
    lot = day(site, 1, 15, n=0)
    before = site.record()["lots"][lot]["decision"]
    free = min(set(range(1, 16)) - {panel["panel"] for panel in site.record()["lots"][lot]["drawn"]})
    for chosen in ("hand", "both_ways"):
        station = site.station(free, {"value": "3", "unit": "ft"}, lot=lot, chosen=chosen)
        for item in ("screw", "dimple", "wave"):
            site.answer(station, item, "fail")
    assert site.record()["lots"][lot]["decision"] == before


def test_an_answer_changed_from_bad_to_good_is_counted_as_changed() -> None:
    site = Site()
    lot = day(site, 1, 15, n=0)
    station = site.record()["lots"][lot]["drawn"][0]["places"][0]["station"]
    subject = f"{station}/flange/dimple"
    first = next(one for one in site.entries if one["payload"]["subject"] == subject)
    body = {**first["payload"]["body"], "verdict": {**first["payload"]["body"]["verdict"], "result": "fail"}}
    failed = site.say(FOREMAN, "answer", subject, body, (first["digest"],))
    assert site.record()["lots"][lot]["decision"]["state"] == "not_accepted"
    site.say(FOREMAN, "answer", subject, first["payload"]["body"], (failed,))
    decision = site.record()["lots"][lot]["decision"]
    assert (decision["state"], decision["lot"]["changed"]) == ("accepted", 1)


def test_a_lot_drawn_laxer_than_its_series_calls_for_is_flagged_and_judged_by_the_stricter_plan() -> None:
    site = Site()
    plain = site.body(31, 45, n=2, day="2026-11-27")  # drawn before anybody knew of the days before
    day(site, 1, 15, n=0, fails="dimple")
    day(site, 16, 30, n=1, fails="dimple", day="2026-11-26")
    assert "lot_laxer" not in codes(site.record())
    site.say(FOREMAN, "lot", plain["subject"], plain["body"])
    record = site.record()
    laxer = record["lots"][plain["subject"]]
    assert record["series"]["2|assembly"]["inspection"] == "tightened"
    assert laxer["decision"]["laxer"] == "tightened"
    assert laxer["decision"]["by"]["major"]["plan"]["inspection"] == "tightened"
    flagged = [flag for flag in record["flags"] if flag["code"] == "lot_laxer"]
    assert flagged == [{"digest": laxer["digest"], "code": "lot_laxer", "facts": {"other": "tightened"}}]


def test_a_lot_that_states_a_laxer_plan_than_any_version_of_the_job_is_judged_by_the_job() -> None:
    site = Site()
    drawn = site.body(1, 60)
    for severity in ("major", "minor"):
        drawn["body"]["plans"][severity].update(aql="10", level="S-1")
    site.say(FOREMAN, "lot", drawn["subject"], drawn["body"])
    plan = site.record()["lots"][drawn["subject"]]["decision"]["by"]["major"]["plan"]
    assert (plan["level"], plan["aql"]) != ("S-1", "10")


def test_the_technical_lead_s_choice_stands_with_its_lot_and_one_of_no_lot_is_flagged(site: Site) -> None:
    body = {"choice": "replace", "reason": "r", "document": None, "reference": "", "name": "Lee", "role": "lead"}
    bad = lots(site.record())[1]["id"]
    added = Site()
    added.entries, added.chains = list(site.entries), {kid: list(chain) for kid, chain in site.chains.items()}
    added.say(LEAD, "disposition", bad, {**body, "lot": bad})
    elsewhere = "x" * 43 + "/audit/0"
    nowhere = added.say(LEAD, "disposition", elsewhere, {**body, "lot": elsewhere})
    record = added.record()
    assert record["lots"][bad]["disposition"]["stands"] and record["lots"][bad]["decision"]["state"] == "not_accepted"
    assert [flag["digest"] for flag in record["flags"] if flag["code"] == "lot_unknown"] == [nowhere]


def test_from_a_failed_panel_good_ones_running_are_counted_both_ways() -> None:
    site = Site()
    lot = site.plan(1, 40)
    site.mark(lot, 20)
    at = {"value": "3", "unit": "ft"}

    def look(panel: int, result: str = "pass", chosen: str = "both_ways") -> None:
        station = site.station(panel, at, lot=lot, chosen=chosen)
        for item in ("screw", "dimple", "wave"):
            site.answer(station, item, result if item == "dimple" else "pass")

    def failed() -> list[dict[str, Any]]:
        found: list[dict[str, Any]] = site.record()["lots"][lot]["failed"]
        return found

    def sides(at: int = 0) -> tuple[int, int, bool]:
        one = failed()[at]
        return one["toward_start"], one["toward_end"], one["bounded"]

    assert failed() == []
    look(18, "fail", "hand")
    assert failed() == [{"panel": 18, "severity": "major", "toward_start": 0, "toward_end": 0, "bounded": False}]
    look(19, chosen="hand")
    assert sides() == (0, 0, False)  # a look at a place somebody liked bounds nothing
    for panel in (19, 20):
        look(panel)
    assert sides() == (0, 2, False)  # the end of what is set: no panel is left on that side
    for panel in (17, 15, 16):
        look(panel)
    assert sides() == (3, 2, True)
    site.mark(lot, 24)
    assert sides() == (3, 2, False)  # more is set now
    look(21, "fail")
    assert [one["panel"] for one in failed()] == [18, 21] and sides(0) == (3, 0, False)
    for panel in (22, 23, 24):
        look(panel)
    assert sides(0) == (3, 3, True) and sides(1) == (3, 3, True)  # 20, 19, then past 18


def test_the_last_panel_has_no_seam_and_no_look_is_wanted_there() -> None:
    site = Site(across=10)
    lot = site.plan(1, 9)
    site.mark(lot, 10)
    for panel in (6, 7, 8, 9):
        station = site.station(panel, {"value": "3", "unit": "ft"}, lot=lot, chosen="both_ways")
        for item in ITEMS:
            site.answer(station, item, "fail" if panel == 9 and item == "dimple" else "pass")
    found = site.record()["lots"][lot]["failed"]
    assert found == [{"panel": 9, "severity": "major", "toward_start": 3, "toward_end": 0, "bounded": True}]


def test_a_record_without_lots_has_the_same_shape(site: Site) -> None:
    record = Site().record()
    assert (record["lots"], record["series"], record["audits"]) == ({}, {}, {})
    assert {name: one["n"] for name, one in record["to_date"].items()} == {"critical": 0, "major": 0, "minor": 0}
