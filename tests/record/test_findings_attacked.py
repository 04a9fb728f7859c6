"""Whoever wants a finding gone without putting it right: every way tried here leaves it standing and is pointed out."""

import pytest

from tests.record.finding_sample import VERDICT, Place, picture
from tests.record.rhythm_sample import ENGINEER, FOREMAN, INSPECTOR, LEAD, OWNER, REVIEWER, SECOND, codes


def test_who_corrected_it_does_not_recheck_it() -> None:
    site = Place()
    site.recheck(site.correct(INSPECTOR), kid=INSPECTOR)
    assert site.state() == "corrected" and "own_recheck" in codes(site.record())


def test_a_correction_signed_again_by_another_is_not_rechecked_by_its_first_author() -> None:
    site = Place()
    first = site.correct(FOREMAN, subject="c")
    again = site.correct(INSPECTOR, subject="c", replaces=(first,))
    site.recheck(again, kid=FOREMAN)
    assert site.state() == "corrected" and "own_recheck" in codes(site.record())
    site.recheck(again, kid=LEAD)
    assert site.state() == "closed"


@pytest.mark.parametrize("kid", [REVIEWER, ENGINEER, OWNER])
def test_who_may_neither_correct_nor_recheck_changes_nothing(kid: str) -> None:
    site = Place()
    site.correct(kid)
    assert site.state() == "open" and "no_authority" in site.told()["problems"]
    site.recheck(site.correct(), kid=kid)
    assert site.state() == "corrected" and "no_authority" in codes(site.record())


@pytest.mark.parametrize("kid", [FOREMAN, INSPECTOR, REVIEWER, OWNER])
def test_a_concession_is_the_engineer_s_or_the_administrator_s(kid: str) -> None:
    site = Place()
    site.concede(kid, document=picture("letter"))
    assert site.state() == "open" and "no_authority" in codes(site.record())


def test_a_concession_in_another_s_name_counts_for_nothing() -> None:
    site = Place()
    site.concede(ENGINEER, document=picture("letter"))
    site.entries[-1]["kid"] = FOREMAN  # the engineer's name over the foreman's key
    assert site.state() == "open" and "wrong_key" in codes(site.record())


def test_a_concession_names_its_document() -> None:
    site = Place()
    site.concede(ENGINEER, reference="  ")
    assert site.state() == "open" and "concession_names_nothing" in codes(site.record())
    site.concede(LEAD, reference="letter 4")
    assert site.state() == "conceded" and "concession_without_document" in codes(site.record())


def test_a_recheck_of_no_correction_of_this_finding_closes_nothing_and_counts_once_it_has_come() -> None:
    site = Place()
    other = site.hand()
    elsewhere = site.correct(finding=other)
    site.correct()
    site.recheck(elsewhere)
    assert site.state() == "corrected" and "recheck_unknown" in codes(site.record())
    assert site.state(other) == "corrected"
    late = site.correct()
    recheck = site.recheck(late)
    held = site.entries.pop(-2)
    assert held["digest"] == late and site.state() == "corrected" and site.told()["rechecks"][-1]["counts"] is False
    site.entries.append(held)
    assert site.state() == "closed" and site.told()["closed_by"]["digest"] == recheck


@pytest.mark.parametrize("wearing", ["nothing", "the correction alone", "the recheck alone", "the first photo", "one"])
def test_nothing_critical_closes_without_evidence_of_both(wearing: str) -> None:
    site = Place("critical")
    after, seen = {"photos": [picture("after")]}, {"photos": [picture("seen")]}
    before = {"photos": [picture("before")]}
    first, second = {
        "nothing": ({}, {}), "the correction alone": (after, {}), "the recheck alone": ({}, seen),
        "the first photo": (before, seen), "one": (after, after),
    }[wearing]  # fmt: skip
    site.recheck(site.correct(**first), **second)
    assert site.state() == "corrected" and "critical_without_evidence" in codes(site.record())
    site.recheck(site.correct(**after), **seen)
    assert site.state() == "closed"


def test_a_reading_is_evidence_only_by_the_rule_that_had_failed_and_only_when_it_passes() -> None:
    other = VERDICT | {"rule": "count@1"}
    close = VERDICT | {"result": "too_close"}
    for verdict, state in ((other, "corrected"), (close, "corrected"), (VERDICT, "closed")):
        site = Place("critical", "limit@1")
        correction = site.correct(photos=[picture("after")])
        site.recheck(correction, reading={"head": "0"}, verdict=verdict)
        assert site.state() == state


def test_a_severity_that_nobody_tells_or_somebody_lowers_asks_for_evidence_all_the_same() -> None:
    site = Place(None)
    site.recheck(site.correct())
    assert site.state() == "corrected"
    site = Place("critical")
    site.reply("fail", "minor", replaces=(site.failing,))
    site.recheck(site.correct())
    assert site.state() == "corrected" and site.told()["severity"] == "critical"
    name = site.hand(severity="critical")
    first = site.told(name)["opened"]["digest"]
    site.hand(subject=name, severity="minor", replaces=(first,))
    site.recheck(site.correct(finding=name), finding=name)
    assert site.state(name) == "corrected" and "severity_lowered" in codes(site.record())


def test_a_severity_that_the_draw_asked_under_is_lowered_by_no_answer() -> None:
    site = Place()
    lot = site.plan(1, 20)
    panel = site.record()["lots"][lot]["drawn"][0]
    site.mark(lot, 20)
    panel = next(one for one in site.record()["lots"][lot]["drawn"] if "panel" in one)["panel"]
    station = site.station(panel, site.places(lot, panel)[0]["from_low_end"], lot=lot)
    site.answer(station, "screw", "fail")
    assert site.told(f"{station}/flange/screw")["severity"] == "critical"


def test_a_bad_recheck_is_taken_back_by_nobody_but_its_author() -> None:
    site = Place()
    correction = site.correct(LEAD)
    bad = site.recheck(correction, "not_good", kid=SECOND, subject="r")
    site.recheck(correction, "good", kid=INSPECTOR, subject="r", replaces=(bad,))
    site.recheck(correction, "good", kid=LEAD, subject="r", replaces=(bad,))
    assert site.state() == "open" and {"not_theirs_to_replace", "own_recheck"} <= codes(site.record())
    site.recheck(correction, "good", kid=SECOND, subject="r", replaces=(bad,))
    assert site.state() == "closed"


def test_a_reopening_is_not_undone_by_who_closed_it() -> None:
    site = Place()
    correction = site.correct()
    closing = site.recheck(correction, subject="r")
    reopening = site.reopen(closing, kid=OWNER, subject="o")
    site.reopen(closing[::-1], kid=INSPECTOR, subject="o", replaces=(reopening,))
    assert site.state() == "open"
    site.recheck(correction, subject="r", replaces=(closing,))  # the same correction, said good once more
    site.recheck(correction, kid=LEAD)
    assert site.state() == "open"


def test_nobody_takes_back_what_another_said_by_signing_in_their_name() -> None:
    site = Place()
    correction = site.correct(LEAD)
    bad = site.recheck(correction, "not_good", kid=SECOND, subject="r")
    site.recheck(correction, "good", kid=SECOND, subject="r", replaces=(bad,))
    site.entries[-1]["kid"] = INSPECTOR  # the second foreman's name over another's key
    site.recheck(correction, kid=FOREMAN)
    assert site.state() == "open" and "wrong_key" in codes(site.record())


def test_a_reopening_in_another_s_name_opens_nothing_and_who_reopened_it_may_take_that_back() -> None:
    site = Place()
    closing = site.recheck(site.correct())
    reopening = site.reopen(closing, kid=OWNER, subject="o")
    assert site.state() == "open"
    site.reopen(kid=OWNER, subject="o", replaces=(reopening,))
    assert site.state() == "closed"
    site.reopen(closing, kid=OWNER)
    site.entries[-1]["kid"] = FOREMAN
    assert site.state() == "closed" and "wrong_key" in codes(site.record())


@pytest.mark.parametrize("of", [(), ("unknown",), ("the correction",)])
def test_a_reopening_that_names_nothing_opens_nothing(of: tuple[str, ...]) -> None:
    site = Place()
    correction = site.correct()
    site.recheck(correction)
    site.reopen(*[correction if one == "the correction" else one * 6 for one in of])
    assert site.state() == "closed" and "reopening_names_nothing" in codes(site.record())


def test_a_reopening_of_another_finding_leaves_this_one() -> None:
    site = Place()
    name = site.hand()
    closing = site.recheck(site.correct(finding=name), finding=name)
    site.reopen(closing)
    assert site.state(name) == "closed" and "reopening_names_nothing" in codes(site.record())


def test_a_correction_changed_after_its_recheck_waits_for_another() -> None:
    site = Place()
    first = site.correct(subject="c")
    site.recheck(first)
    site.correct(subject="c", replaces=(first,), done="something else")
    assert site.state() == "corrected" and "recheck_of_old" in codes(site.record())


def test_photos_of_a_correction_that_did_not_hold_close_nothing_critical() -> None:
    site = Place("critical")
    first = site.correct(photos=[picture("after")])
    site.recheck(first, "not_good", photos=[picture("seen")])
    site.recheck(site.correct(photos=[picture("after")]), photos=[picture("new")])
    assert site.state() == "corrected"
    site.recheck(site.correct(photos=[picture("newer")]), photos=[picture("seen")])
    assert site.state() == "corrected"


def test_a_place_found_bad_again_after_it_was_closed_is_pointed_out() -> None:
    site = Place()
    site.recheck(site.correct())
    site.recheck(site.correct(SECOND), "not_good", kid=LEAD)
    assert site.state() == "closed" and site.told()["problems"] == ["contradicted"]


def test_what_speaks_of_no_finding_is_pointed_out() -> None:
    site = Place()
    named = [site.correct(finding="f"), site.recheck("d" * 43, finding="f"), site.reopen("d", finding="f"),
             site.concede(LEAD, finding="f"), site.assign(finding="f")]  # fmt: skip
    told = {flag["digest"] for flag in site.record()["flags"] if flag["code"] == "finding_unknown"}
    assert told == set(named)


def test_an_unknown_walk_or_area_is_an_orphan() -> None:
    site = Place()
    site.hand(walk="w", area="a")
    site.correct(walk="w")
    told = [flag["facts"]["other"] for flag in site.record()["flags"] if flag["code"] == "orphan"]
    assert sorted(told) == ["a", "w", "w"]


def test_an_assignment_by_somebody_who_may_not_gives_the_finding_to_nobody() -> None:
    site = Place()
    site.assign(REVIEWER)
    assert site.told()["firm"] is None and site.told()["problems"] == ["no_authority"]
