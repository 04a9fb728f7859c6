"""A record narrowed to one walk or one audit: all that belongs to it, nothing that does not, and no doubt lost."""

import copy
import random

import pytest

from inspect_app.record.fold import fold
from inspect_app.record.scope import WHOLE, narrowed, outside, scope_of
from inspect_app.rules.refused import Refused
from tests.bodies import body_of
from tests.record.rhythm_sample import AREA, FOREMAN, OWNER, PEOPLE, REVIEWER, SECOND, WALK, Site

OTHER, SHED = "walk-other", "area-shed"


def place(site, walk, panel, result="pass", *, kid=FOREMAN, area=AREA, lot=None, subject=None):
    """A place looked at on a walk, and the answer given there."""
    station = subject or site.new_id()
    body = {"walk": walk, "area": area, "panel": panel, "from_low_end": {"value": "5", "unit": "ft"}, "zone": "field",
            "chosen": "hand", "reached": "yes"} | ({"lot": lot} if lot else {})  # fmt: skip
    site.say(kid, "station", station, body)
    told = body_of("answer") | {"walk": walk, "station": station, "area": area, "item": "screw", "choice": result,
                                "reading": None, "photos": []}  # fmt: skip
    told["verdict"] = told["verdict"] | {"result": result}
    site.say(kid, "answer", f"{station}/flange/screw", told)
    return station


def two_walks():
    """Two crews on a day, each on an area of its own; each finds one thing, and each has something flagged."""
    site = Site()
    site.add_area(SHED, 20)
    site.walk(SECOND, OTHER, areas=[SHED], crew="7")
    site.lot = site.plan(1, 40)
    site.other_lot = site.plan(1, 20, kid=SECOND, area=SHED, crew="7")
    site.mark(site.lot, 6)
    site.mark(site.other_lot, 4, kid=SECOND, area=SHED)
    place(site, WALK, 3, "fail", lot=site.lot, subject="here")
    place(site, OTHER, 2, "fail", kid=SECOND, area=SHED, lot=site.other_lot, subject="there")
    site.flagged_here = site.say(OWNER, "stop", f"{site.lot}/9", stop(site.lot, AREA))
    site.flagged_there = site.say(OWNER, "stop", f"{site.other_lot}/9", stop(site.other_lot, SHED))
    for walk, kid in ((WALK, FOREMAN), (OTHER, SECOND)):
        site.say(kid, "signoff", walk, body_of("signoff") | {"walk": walk, "covers": []})
    return site


def stop(lot, area):
    return {"lot": lot, "area": area, "panel": 9, "outcome": "attended", "note": ""}


SITE = two_walks()
RECORD = SITE.record()
HERE = narrowed(RECORD, {"kind": "walk", "walk": WALK})


def test_the_whole_job_is_all_of_it():
    assert narrowed(RECORD, WHOLE) == RECORD
    assert outside(RECORD, RECORD) == {"walks": 0, "stations": 0, "findings": 0, "lots": 0, "unsettled": 0,
                                       "critical": 0, "areas": []}  # fmt: skip


def test_a_walk_keeps_its_own_places_answers_lots_marks_areas_and_findings_and_no_others():
    assert list(HERE["walks"]) == [WALK] and list(HERE["stations"]) == ["here"]
    assert list(HERE["answers"]) == list(HERE["findings"]) == ["here/flange/screw"]
    assert list(HERE["lots"]) == [SITE.lot] and {one["lot"] for one in HERE["marks"].values()} == {SITE.lot}
    assert list(HERE["areas"]) == [AREA] and list(HERE["assemblies"]) == ["assembly"]
    assert [(one["day"], one["crew"]) for one in HERE["days"]] == [("2026-11-25", "2")]
    assert HERE["walks"][WALK]["signoff"] == RECORD["walks"][WALK]["signoff"] is not None


def test_what_is_decided_over_the_whole_job_stays_as_the_whole_job_decides_it():
    assert HERE["lots"][SITE.lot] == RECORD["lots"][SITE.lot]
    assert HERE["findings"]["here/flange/screw"] == RECORD["findings"]["here/flange/screw"]
    assert HERE["chains"] == RECORD["chains"] and HERE["sampling"] == RECORD["sampling"]
    assert HERE["coverage"] == HERE["series"] == HERE["to_date"] == {}


def test_narrowing_leaves_the_record_as_it_was():
    before = copy.deepcopy(RECORD)
    narrowed(RECORD, {"kind": "walk", "walk": OTHER})
    assert before == RECORD


def test_a_flag_on_what_is_left_out_goes_and_one_on_what_stays_stays_with_its_doubt():
    assert {flag["digest"] for flag in RECORD["flags"]} >= {SITE.flagged_here, SITE.flagged_there}
    digests = {flag["digest"] for flag in HERE["flags"]}
    assert SITE.flagged_here in digests and SITE.flagged_there not in digests
    doubt = next(one for one in HERE["doubts"] if one["code"] == "no_authority")
    assert doubt["n"] == 1 and [one["digest"] for one in doubt["entries"]] == [SITE.flagged_here]


def test_a_forked_chain_is_told_in_every_part_whoever_forked_it():
    site = two_walks()
    chain = site.chains[SECOND]
    twin = copy.deepcopy(next(one for one in site.entries if one["digest"] == chain[-1]))
    twin["digest"] = "x" * 43
    record = fold([*site.entries, twin], PEOPLE)
    part = narrowed(record, {"kind": "walk", "walk": WALK})
    assert "fork" in {one["code"] for one in record["doubts"]}
    assert [one for one in part["doubts"] if one["code"] == "fork"] == [
        one for one in record["doubts"] if one["code"] == "fork"
    ]


def test_a_flag_that_cannot_be_placed_stays():
    record = RECORD | {"flags": [{"digest": "?" * 43, "code": "orphan", "facts": {}}]}
    assert narrowed(record, {"kind": "walk", "walk": WALK})["flags"] == record["flags"]


def test_what_is_outside_is_counted_with_what_nobody_has_settled_there():
    assert outside(RECORD, HERE) == {"walks": 1, "stations": 1, "findings": 1, "lots": 1, "unsettled": 1,
                                     "critical": 1, "areas": [RECORD["areas"][SHED]["name"]]}  # fmt: skip


def test_a_finding_acted_on_during_a_walk_belongs_to_it_wherever_it_was_opened():
    site = two_walks()
    done = body_of("correction") | {"finding": "there/flange/screw", "walk": WALK, "photos": []}
    site.say(FOREMAN, "correction", "mended", done)
    part = narrowed(site.record(), {"kind": "walk", "walk": WALK})
    assert sorted(part["findings"]) == ["here/flange/screw", "there/flange/screw"]
    assert SHED in part["areas"] and "there" not in part["stations"], "its place is named, not told as looked at"


def test_a_drawn_panel_of_the_crew_s_lot_stays_although_this_walk_never_came_to_it():
    assert HERE["lots"][SITE.lot]["drawn"] and not [
        one for one in HERE["lots"][SITE.lot]["drawn"] if one["state"] == "looked"
    ]


def audited():
    site = two_walks()
    site.walk(REVIEWER, "audit-walk", areas=[AREA], crew="", independent=True)
    site.audit = site.plan(1, 5, kid=REVIEWER, purpose="audit", series="audit", crew="", day="2026-11-26")
    place(site, "audit-walk", 3, kid=REVIEWER, lot=site.audit, subject="again")
    place(site, "audit-walk", 5, kid=REVIEWER, subject="beside")
    return site


def test_an_audit_keeps_its_lot_and_whole_the_walks_that_looked_at_its_places():
    site = audited()
    record = site.record()
    part = narrowed(record, {"kind": "audit", "lot": site.audit})
    assert list(part["lots"]) == [site.audit] and list(part["walks"]) == ["audit-walk"]
    assert sorted(part["stations"]) == ["again", "beside"], "also what was looked at beside the draw"
    assert part["audits"] == {site.audit: record["audits"][site.audit]} and part["days"] == []


@pytest.mark.parametrize(
    ("scope", "field"),
    [({"kind": "walk", "walk": "none"}, "walk"), ({"kind": "walk", "walk": ["a"]}, "walk"), ({"kind": "walk"}, "scope"),
     ({"kind": "audit", "lot": SITE.lot}, "lot"), ({"kind": "roof"}, "kind"), ({}, "kind"), (None, "kind"),
     ({"kind": ["walk"]}, "kind"), ({"kind": "closeout", "walk": WALK}, "scope"),
     ({"kind": "walk", "walk": WALK, "lot": "x"}, "scope")],
)  # fmt: skip
def test_a_scope_that_names_nothing_here_or_more_than_it_may_is_refused(scope, field):
    with pytest.raises(Refused) as refused:
        narrowed(RECORD, scope)
    assert (refused.value.code, refused.value.field) == ("scope_unknown", field)


def test_a_scope_is_put_together_from_what_a_kind_names():
    assert scope_of("walk", {"walk": "w", "lot": "l"}) == {"kind": "walk", "walk": "w"}
    assert scope_of("closeout", {"walk": "w"}) == WHOLE
    with pytest.raises(Refused):
        scope_of("roof", {})


def test_any_order_of_the_same_entries_narrows_to_the_same():
    site = audited()
    scopes = [{"kind": "walk", "walk": WALK}, {"kind": "audit", "lot": site.audit}]
    wanted = [narrowed(site.record(), scope) for scope in scopes]
    shuffled = random.Random(7)
    for _ in range(5):
        entries = site.entries * 2
        shuffled.shuffle(entries)
        assert [narrowed(fold(entries, PEOPLE), scope) for scope in scopes] == wanted


def test_parts_of_all_walks_together_leave_nothing_of_what_walks_recorded_out():
    site = audited()
    record = site.record()
    parts = [narrowed(record, {"kind": "walk", "walk": walk}) for walk in record["walks"]]
    for name in ("stations", "answers", "photos", "findings"):
        assert {key for part in parts for key in part[name]} == set(record[name])
