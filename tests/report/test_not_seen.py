"""What was asked and not answered: neither less nor more than the phone asks at that place."""

import copy

import pytest

from inspect_app.report.not_seen import not_seen
from tests.report.laid_out import sample_contents
from tests.report.sample import record
from tests.report.sample_definitions import CLIP, DEFINITIONS, item
from tests.report.sample_ground import digest


def left(rec):
    told = sample_contents(rec)["not_seen"]
    return {
        (one["facts"]["station"], question["en"])
        for one in told if one["code"] == "items_not_answered" for question in one["facts"]["questions"]
    }  # fmt: skip


@pytest.fixture
def clips(monkeypatch):
    """The clip checklist with one item for fixed clips and one for both kinds."""
    wider = copy.deepcopy(CLIP) | {"applies": {"attachment": ["fixed_clip", "expansion_clip"]}}
    wider["items"] += [
        item("slides", "Can it slide past its fixed clips?", "¿Puede?", applies={"attachment": ["fixed_clip"]}),
        item("hooked", "Is it hooked?", "¿Está?", applies={"attachment": ["fixed_clip", "expansion_clip"]}),
    ]
    monkeypatch.setitem(DEFINITIONS, digest("clip"), wider)


def test_an_item_for_another_kind_of_clip_is_not_said_to_be_left_out(clips):
    rec = record()
    assert {question for station, question in left(rec) if station == 4} == {"Is it hooked?"}
    rec["assemblies"]["a-clip"]["attachment"] = "fixed_clip"
    assert {question for station, question in left(rec) if station == 4} == {
        "Is it hooked?", "Can it slide past its fixed clips?",
    }  # fmt: skip


def test_a_checklist_of_the_job_that_nobody_began_at_a_reached_place_is_left_out(clips):
    rec = record()
    rec["job"]["definitions"]["clip"] = digest("clip")
    moved = rec["answers"].pop("s4/clip/tab")
    rec["answers"]["s4/end-of-day/loose"] = moved | {
        "id": "s4/end-of-day/loose", "item": "loose", "definition": digest("day"),
    }  # fmt: skip
    assert {question for station, question in left(rec) if station == 4} >= {
        "Where does the tab stand?",
        "Is it hooked?",
    }


@pytest.mark.parametrize("purpose", ["audit", "work"])
def test_at_a_place_of_an_audit_what_its_draw_asks_is_asked_and_nothing_else(clips, purpose):
    rec = record()
    rec["job"]["definitions"] |= {"clip": digest("clip"), "end-of-day": digest("day")}
    told = sample_contents(rec)
    (place,) = [one for one in told["stations"] if one["n"] == 4]
    asks = {"critical": ["end-of-day/loose"], "major": ["clip/tab"]}
    rec["lots"] = {"lot": {"purpose": purpose, "population": [], "asks": asks}}
    found = not_seen(rec, DEFINITIONS, {"walks": {}}, [place | {"lot": "lot"}], told["answers"], [], True)
    assert [question["en"] for one in found for question in one["facts"]["questions"]] == [
        "Is anything loose?" if purpose == "audit" else "Is it hooked?"]  # fmt: skip


def test_places_are_counted_by_how_they_were_chosen_and_whether_they_were_reached():
    rec = record()
    rec["stations"]["s1"]["chosen"] = rec["stations"]["s5"]["chosen"] = "drawn"
    rec["stations"]["s2"]["reached"] = "covered"
    rec["stations"]["s3"].pop("reached")
    assert sample_contents(rec)["cover"]["places"] == [
        {"chosen": "drawn", "count": 2, "yes": 1, "unsafe": 1, "covered": 0, "unknown": 0},
        {"chosen": "hand", "count": 3, "yes": 1, "unsafe": 0, "covered": 1, "unknown": 1},
    ]


@pytest.mark.parametrize(("kind", "counted"), [("closeout", [20]), ("walk", [])])
def test_panels_told_by_a_walk_and_by_marks_are_counted_once_and_by_a_part_of_the_job_not_at_all(kind, counted):
    rec = record()
    marked = {"purpose": "work", "placed_to": 20, "population": [{"area": "quay", "from": 11, "to": 20}]}
    areas = [{"id": "quay", "name": "Quay slope", "placed": [{"from": 1, "to": 14}]}]
    rec["lots"] = {"lot": marked}
    told = not_seen(rec, DEFINITIONS, {"walks": {}}, [], [], areas, kind == "closeout")
    assert [one["facts"]["placed"] for one in told if one["code"] == "panels_looked"] == counted
