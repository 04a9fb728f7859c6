"""What the invented job's days hold: each thing that a roof has to show, in its record and in its report."""

import json
import os
import re
from dataclasses import replace
from datetime import UTC, datetime

import pytest

from inspect_app.application import create_app
from inspect_app.command_line import main
from inspect_app.demo.audit import SEEN
from inspect_app.demo.crew_day import Plan
from inspect_app.demo.followed import AGAIN
from inspect_app.demo.run import make, whole_roof
from inspect_app.record.trends import trends
from inspect_app.rules.layout import layout
from inspect_app.settings import settings_from, shipped, sqlite_in
from tests.demo.firms_shown import shows_its_people
from tests.office import CHEAP

EVENING = datetime(2026, 11, 25, 17, 40, tzinfo=UTC)
ONE_DAY = ((0, Plan("ferry", "Crew 2 (invented)", 1, 3, tight_at=2, went_over=2)),)


def app_of(folder):
    settings = settings_from({})
    return create_app(replace(settings, data=folder, database_url=sqlite_in(folder)), hasher=CHEAP)


def record_of(folder):
    app = app_of(folder)
    job = json.loads((folder / "demonstration.json").read_text("utf-8"))["job"]
    with app.app_context():
        return app.extensions["seamwalk"].records.record(job)


def test_a_crew_s_day_is_drawn_walked_gone_over_and_not_accepted_for_its_tight_screws(tmp_path):
    make(tmp_path / "made", app_of, EVENING, os.urandom, lambda said: None, ONE_DAY)
    record = record_of(tmp_path / "made")
    (lot,) = [one for one in record["lots"].values() if one["purpose"] == "work"]
    assert (lot["size"], lot["n"], lot["placed"], lot["closed"]) == (3, 3, 3, True)
    assert {one["state"] for one in lot["drawn"]} == {"looked"}
    assert lot["decision"]["state"] == "not_accepted" and lot["decision"]["by"]["major"]["found"] == 1
    rain, day = record["days"]
    assert [one["why"] for one in rain["no_work"]] == ["rain"] and not rain["work_done"] and day["problems"] == []
    assert [(one["from"], one["to"]) for one in day["work_done"] if one["by"] == "marks"] == [(1, 3)]
    assert day["entries"][0]["equipment"]
    states = {(one["panel"], one["why"]): one["state"] for one in lot["holds"]}
    assert states[2, "change"] == "covered_against" and states[1, "first"] == states[3, "night"] == "released"
    assert not [flag for flag in record["flags"] if flag["code"] in ("looked_after_cover", "released_unseen")]
    follows_its_findings(record)
    is_audited(record)
    shows_its_people(tmp_path / "made", app_of(tmp_path / "made"))


def follows_its_findings(record):
    """Closed with a photo before and after, opened again, waiting, let stand by an engineer's letter, two by hand."""
    findings = record["findings"].values()
    states = [one["state"] for one in findings]
    assert {"open", "corrected", "closed", "conceded"} == set(states) and states.count("closed") == 1
    closed = next(one for one in findings if one["state"] == "closed")
    assert closed["photos"] and closed["corrections"][0]["photos"] and closed["problems"] == []
    (reopened,) = [one for one in findings if one["reopenings"]]
    assert reopened["state"] == "open" and reopened["rechecks"][0]["spent"]
    conceded = next(one["concession"] for one in findings if one["state"] == "conceded")
    assert conceded["role"] == "engineer" and conceded["document"]
    by_hand = {one["severity"]: (one["state"], one["problems"]) for one in findings if one["source"] == "hand"}
    assert by_hand == {"minor": ("open", []), "critical": ("corrected", ["critical_without_evidence"])}


def is_audited(record):
    """Drawn by a ticket of its own, looked at by what still shows, compared; what was mended since is no more."""
    (lot,) = [one for one in record["lots"].values() if one["purpose"] == "audit"]
    assert (lot["ticket"]["series"], lot["plans"]["major"]["level"], lot["n"]) == ("audit", "II", 3)
    assert [one["state"] for one in lot["drawn"]].count("part") == 1, "one place cannot be seen"
    compared = record["audits"][lot["id"]]
    assert [(one["found"], one["n"]) for one in (compared["audit"], compared["foreman"])] == [(1, 2), (1, 3)]
    told = trends(record)["agreement"]
    assert [one["item"] for one in told["pairs"] if one["cell"] == "audit_only"] == ["nail-flange-fastening/head_free"]
    assert {one["item"] for one in told["apart"]["mended"]} == {f"nail-flange-fastening/{one}" for one in AGAIN}
    walk = record["walks"][record["stations"][lot["drawn"][0]["places"][0]["station"]]["walk"]]
    assert walk["independent"] and walk["signoff"] and walk["by"] != record["days"][0]["entries"][0]["by"]


def test_the_audit_asks_at_its_places_what_a_phone_asks():
    told = re.search(r"const SEEN = .*?\(({.*?})\)", (shipped("static") / "lot" / "seen.js").read_text("utf-8"), re.S)
    rows = re.findall(r"'([\w-]+)': \[(.*?)\]", told[1])
    assert {name: tuple(re.findall(r"'(\w+)'", items)) for name, items in rows} == SEEN


def test_the_roof_has_a_gable_a_wing_with_hips_and_valleys_and_a_low_roof_all_without_a_fault():
    page = whole_roof()
    kinds = {kind for area in page["areas"].values() for kind in area["edges"]}
    assert {"hip", "valley", "ridge", "wall"} <= kinds
    for area in page["areas"].values():
        assert layout(area, page["assemblies"][area["assembly"]])["faults"] == []


@pytest.mark.soak
def test_the_week_shows_all_that_a_roof_has_to_show(tmp_path):
    assert main(["demo", "--once", "--folder", str(tmp_path / "made")]) == 0
    record = record_of(tmp_path / "made")
    work = [lot for lot in record["lots"].values() if lot["purpose"] == "work"]
    assert sorted(lot["decision"]["state"] for lot in work) == [
        "accepted", "accepted", "not_accepted", "not_accepted", "not_determinable"]  # fmt: skip
    (rework,) = [lot for lot in record["lots"].values() if lot["purpose"] == "rework"]
    assert rework["decision"]["state"] == "accepted"
    assert any(one["state"] == "covered_against" for lot in work for one in lot["holds"])
    assert any(one["state"] == "not_attended" for lot in work for one in lot["drawn"])
    assert {one["inspection"] for one in record["series"].values()} == {"normal", "tightened"}
    told = [one for one in record["days"] if one["entries"]]
    assert [bool(one["no_work"]) for one in told] == [True, True] + [False] * 5
    (lighter,) = [row for one in told for entry in one["entries"] for row in entry["materials"]
                  if any(each["gauge"]["because"] == "lighter" for each in row["compared"])]  # fmt: skip
    assert lighter["accepted"] == "set_aside" and lighter["photos"]
    assert sum(one["counts"].get("covered_unseen", 0) for one in record["coverage"].values()) > 0
    (audit,) = [lot for lot in record["lots"].values() if lot["purpose"] == "audit"]
    assert (audit["n"], audit["decision"]["state"], audit["decision"]["lot"]["nonresponse"]) == (20, "accepted", 1)
    assert record["audits"][audit["id"]]["statement"] == "overlap"
    told = trends(record)["agreement"]
    cells = {(one["item"].split("/")[1], one["cell"]) for one in told["pairs"]}
    assert {("over_driven", "both_bad"), ("head_free", "audit_only"), ("bite", "both_good")} <= cells
    assert (told["panels"]["n"], told["panels"]["both_bad"], told["panels"]["both_good"]) == (3, 2, 1)
    assert {one["panel"] for one in told["apart"]["mended"]} == {47}, "its panels were gone over again since"
    follows_its_findings(record)
