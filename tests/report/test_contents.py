"""What a report says is decided from the record alone, and says what it does not know."""

import copy
import json
import random
from typing import Any

import pytest

from inspect_app.report.contents import contents_bytes, contents_digest, report_contents
from tests.report.sample import DEFINITIONS, LOST, OPTIONS, PEOPLE, log, photos, record
from tests.report.sample_ground import KEY, digest, q


def contents(rec: dict[str, Any] | None = None, held: dict[str, Any] | None = None, **options: Any) -> Any:
    return report_contents(
        record() if rec is None else rec, PEOPLE, DEFINITIONS, log(), photos() if held is None else held,
        OPTIONS | options,
    )  # fmt: skip


def whole() -> dict[str, Any]:
    """The sample without the photo that never arrived."""
    rec = record()
    del rec["photos"][LOST]
    for answer in rec["answers"].values():
        answer["photos"] = [name for name in answer["photos"] if name != LOST]
    return rec


def codes(things: list[dict[str, Any]]) -> list[str]:
    return [one["code"] for one in things]


def test_the_same_inputs_give_the_same_bytes_in_whatever_order_they_are_held():
    chance = random.Random(7)

    def shuffled(value: Any) -> Any:
        if isinstance(value, dict):
            keys = list(value)
            chance.shuffle(keys)
            return {key: shuffled(value[key]) for key in keys}
        return [shuffled(one) for one in value] if isinstance(value, list) else value

    first = contents_bytes(contents())
    for _ in range(5):
        again = report_contents(
            shuffled(record()), shuffled(PEOPLE), shuffled(DEFINITIONS), shuffled(log()), shuffled(photos()), OPTIONS
        )
        assert contents_bytes(again) == first
    assert json.loads(first) == contents()


def test_the_inputs_are_left_as_they_were():
    rec = record()
    before = copy.deepcopy(rec)
    contents(rec)
    assert rec == before


def test_a_photo_that_has_not_arrived_is_listed_and_forbids_a_final_report():
    told = contents(final=True)
    assert told["final"] is False
    assert codes(told["missing"]) == ["photo_missing"]
    assert told["missing"][0]["facts"]["sha256"] == LOST
    assert contents(whole(), final=True)["final"] is True
    assert contents(whole(), final=False)["final"] is False


@pytest.mark.parametrize(
    ("damage", "code"),
    [
        (lambda rec: rec["chains"][KEY].update(gaps=[[3, 4]]), "entries_missing"),
        (lambda rec: rec["walks"]["walk"].update(signoff=None), "not_signed"),
        (lambda rec: rec["flags"].append({"digest": "d", "code": "orphan", "facts": {"other": "w"}}), "entry_orphan"),
        (lambda rec: rec["areas"].pop("yard"), "area_missing"),
        (lambda rec: rec["assemblies"].pop("a-clip"), "assembly_missing"),
        (lambda rec: rec.update(job=None), "job_missing"),
        (lambda rec: rec["walks"]["walk"].update(definition="x" * 43), "definition_missing"),
        (lambda rec: rec["answers"]["s4/clip/tab"].update(photos=["e" * 64]), "photo_undeclared"),
    ],
)
def test_whatever_may_still_arrive_is_named_and_forbids_a_final_report(damage, code):
    rec = whole()
    damage(rec)
    told = contents(rec, final=True)
    assert code in codes(told["missing"])
    assert told["final"] is False


def test_a_required_photo_that_nobody_took_is_listed_but_cannot_hold_up_the_report_for_ever():
    rec = whole()
    rec["answers"]["s1/nail-flange/slot"]["photos"] = []
    told = contents(rec, final=True)
    assert codes(told["missing"]) == ["required_photo"]
    assert told["final"] is True


def test_the_verdict_speaks_of_what_was_looked_at_and_of_nothing_else():
    assert contents()["cover"]["verdict"] == "fails"
    rec = whole()
    for answer in rec["answers"].values():
        answer["result"] = "pass"
    rec["findings"] = {}
    rec["fits"] = {}  # a line that fails there has a verdict of its own
    assert contents(rec)["cover"]["verdict"] == "none_found"
    rec["answers"]["s4/clip/tab"]["result"] = "too_close"
    assert contents(rec)["cover"]["verdict"] == "open"
    rec["answers"]["s4/clip/tab"]["result"] = "a word from a later release"
    assert contents(rec)["cover"]["verdict"] == "open"
    rec["answers"] = {}
    assert contents(rec)["cover"]["verdict"] == "nothing"
    assert contents({})["cover"]["verdict"] == "nothing"


def test_what_was_not_looked_at_is_said():
    told = contents()
    assert [one["facts"]["station"] for one in told["not_seen"] if one["code"] == "station_unsafe"] == [5]
    panels = {one["facts"]["area"]: one["facts"] for one in told["not_seen"] if one["code"] == "panels_looked"}
    assert (panels["Quay slope"]["looked"], panels["Quay slope"]["placed"]) == (3, 14)
    left = [one["facts"] for one in told["not_seen"] if one["code"] == "items_not_answered"]
    assert {(one["station"], one["count"]) for one in left} == {(1, 1), (2, 3), (3, 3)}
    rec = record()
    rec["stations"] = {key: one for key, one in rec["stations"].items() if one["area"] == "quay"}
    assert "area_not_looked" in codes(contents(rec)["not_seen"])


def test_places_chosen_by_hand_are_said_to_be_so():
    caution = next(one for one in contents()["cautions"] if one["code"] == "chosen_by_hand")
    assert caution["facts"]["stations"] == [1, 2, 3, 4, 5]
    rec = record()
    for station in rec["stations"].values():
        station["chosen"] = "drawn"
    assert "chosen_by_hand" not in codes(contents(rec)["cautions"])


def test_places_of_a_walk_that_nobody_was_on_the_roof_for_are_pointed_out():
    rec = record()
    (walk, stations) = next((one, one["stations"]) for one in rec["walks"].values() if len(one["stations"]) > 1)
    assert "places_from_the_ground" not in codes(contents(rec)["cautions"])
    walk["fall_protection"] = "not_on_roof"
    (told,) = [one["facts"] for one in contents(rec)["cautions"] if one["code"] == "places_from_the_ground"]
    assert told["count"] == len([one for one in stations if rec["stations"][one]["reached"] == "yes"]) > 1
    for one in stations:
        rec["stations"][one]["reached"] = "covered"
    assert "places_from_the_ground" not in codes(contents(rec)["cautions"])


def test_a_verdict_that_recomputes_differently_stands_as_it_was_shown_and_is_pointed_out():
    rec = record()
    assert {one["recomputed"] for one in contents(rec)["answers"]} == {None, "same"}
    answer = rec["answers"]["s4/clip/tab"]
    assert answer["verdict"]["result"] == "pass"
    answer["verdict"]["inputs"]["tab"] = q("0.9", "in")
    told = contents(rec)
    shown = next(one for one in told["answers"] if one["id"] == "s4/clip/tab")
    assert (shown["result"], shown["recomputed"]) == ("pass", "different")
    assert "recomputed_different" in codes(told["cautions"])


def test_forks_broken_chains_and_flags_are_listed_not_hidden():
    rec = record()
    rec["chains"][KEY].update(forks=[{"seq": 4, "digests": ["a", "b"]}], orphans=["c"])
    rec["flags"] = [{"digest": "d", "code": "no_authority", "facts": {"kind": "job"}}]
    told = contents(rec)
    assert {"fork", "chain_broken", "flag"} <= set(codes(told["cautions"]))
    key = next(one for one in told["hashes"]["keys"] if one["kid"] == KEY)
    assert (key["forks"], key["broken"], key["person"]) == (1, 1, PEOPLE["p-foreman"]["name"])


def test_two_clocks_are_compared_and_an_unknown_zone_is_not_made_up():
    by_number = {one["n"]: one for one in contents()["photos"]}
    assert {one["clocks"] for one in by_number.values()} == {"same", "differ", "unknown"}
    held = photos()
    for facts in held.values():
        facts.update(exif_time="2026:11:25 21:20:05", exif_offset="+00:00")
    assert {one["clocks"] for one in contents(held=held)["photos"]} == {"same"}
    for facts in held.values():
        facts.update(exif_time="0000:00:00 99:99:99")
    assert {one["clocks"] for one in contents(held=held)["photos"]} == {"unknown"}


def test_a_correction_is_shown_beside_what_it_corrects():
    rec = record()
    answer = rec["answers"]["s4/clip/tab"]
    answer["versions"] = [
        {"digest": digest("old"), "by": "p-foreman", "at": "2026-11-25T16:29:00.000-05:00", "result": "fail"},
        {"digest": answer["digest"], "by": "p-foreman", "at": answer["at"], "result": "pass"},
    ]
    shown = next(one for one in contents(rec)["answers"] if one["id"] == "s4/clip/tab")
    assert [(one["result"], one["stands"]) for one in shown["versions"]] == [("fail", False), ("pass", True)]


def test_an_approved_line_is_tallied_with_the_answers_that_tested_it():
    flange = next(one for one in contents()["assemblies"] if one["id"] == "a-flange")
    lines = {one["field"]: one["found"] for one in flange["lines"]}
    assert lines["slot_length"] == [{"result": "fail", "count": 1}, {"result": "pass", "count": 1}]
    assert lines["deck"] == []
    assert {zone["name"]: zone["found"] for zone in flange["zones"]} == {
        "field": [], "edge": [{"result": "fail", "count": 1}],
    }  # fmt: skip


def test_the_elements_required_of_an_inspection_report_are_there():
    """ISO/IEC 17020:2012, 7.4.2 a to g."""
    told = contents(whole(), final=True)
    assert told["issuer"]  # a) issuing body
    assert told["number"] and told["issued"]  # b) identification and date of issue
    assert told["cover"]["dates"]  # c) dates of inspection
    assert told["cover"]["areas"] and told["cover"]["assemblies"]  # d) items inspected
    assert told["cover"]["signed_by"]  # e) indication of approval
    assert told["cover"]["verdict"]  # f) statement of conformity
    assert told["answers"]  # g) results


def test_every_digest_of_the_record_is_in_the_contents():
    text = contents_bytes(contents()).decode()
    rec = record()
    things = [rec["job"], *(one for name in ("assemblies", "areas", "walks", "stations", "answers", "photos")
                            for one in rec[name].values())]  # fmt: skip
    assert [one["digest"] for one in things if one["digest"] not in text] == []


def test_any_change_changes_the_digest_in_the_footer():
    rec = record()
    rec["answers"]["s4/clip/tab"]["note"] = "."
    assert contents_digest(contents(rec)) != contents_digest(contents())
    assert contents_digest(contents(number=2)) != contents_digest(contents())
