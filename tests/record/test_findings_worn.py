"""Evidence that is no evidence, and evidence that somebody tries to take from others: what counts, and what is said."""

from typing import Any

import pytest

from tests.bodies import body_of
from tests.record.finding_sample import VERDICT, Place, picture
from tests.record.rhythm_sample import ASSEMBLY, FOREMAN, LEAD, OWNER, SECOND, Site, codes

AFTER, SEEN = {"photos": [picture("after")]}, {"photos": [picture("seen")]}


def closed() -> Place:
    site = Place("critical")
    site.recheck(site.correct(**AFTER), **SEEN)
    assert site.state() == "closed"
    return site


def test_a_photo_dropped_from_the_newest_version_is_still_no_new_one() -> None:
    site = Place("critical")
    site.reply("fail", "critical", replaces=(site.failing,))
    site.entries[-1]["payload"]["body"]["photos"] = []
    site.recheck(site.correct(photos=[picture("before")]), **SEEN)
    assert site.state() == "corrected" and "critical_without_evidence" in codes(site.record())
    name = site.hand(severity="critical")
    site.hand(subject=name, severity="critical", photos=[], replaces=(site.told(name)["opened"]["digest"],))
    site.recheck(site.correct(finding=name, photos=[picture("hand")]), finding=name, **SEEN)
    assert site.state(name) == "corrected"


def test_where_an_eye_failed_the_place_no_reading_shows_that_it_is_good() -> None:
    site = Place("critical")
    other: dict[str, Any] = {"reading": {"frame": "1"}, "verdict": VERDICT | {"rule": "thickness@2"}}
    site.recheck(site.correct(**other), **other)
    assert site.state() == "corrected" and "critical_without_evidence" in codes(site.record())


def test_a_picture_by_whoever_corrected_is_no_second_look_whichever_correction_named_it() -> None:
    site = Place("critical")
    first = site.correct(**AFTER)
    site.correct(photos=[picture("other")])
    site.recheck(first, photos=[picture("other")])
    assert site.state() == "corrected"
    site.recheck(first, **SEEN)
    assert site.state() == "closed"


@pytest.mark.parametrize("how", ["a reopening of nothing", "a recheck by who may not", "a version by who may not"])
def test_what_counts_for_nothing_takes_no_evidence_away(how: str) -> None:
    site, photos = closed(), AFTER["photos"] + SEEN["photos"]
    if how == "a reopening of nothing":
        site.reopen(kid=OWNER)
        site.entries[-1]["payload"]["body"]["photos"] = photos
    elif how == "a recheck by who may not":
        site.recheck("x" * 43, "not_good", kid=OWNER, photos=photos)
    else:
        site.reply("fail", "critical", kid=OWNER)
        site.entries[-1]["payload"]["body"]["photos"] = photos
    assert site.state() == "closed" and "critical_without_evidence" not in codes(site.record())


def test_a_place_that_fails_again_after_it_was_closed_is_pointed_out() -> None:
    site = Place()
    site.recheck(site.correct())
    assert site.told()["problems"] == []
    passed = site.reply("pass", replaces=(site.failing,))
    assert site.state() == "withdrawn"
    site.reply("fail", replaces=(passed,))
    assert site.state() == "closed" and site.told()["problems"] == ["contradicted"]


def test_a_changed_answer_whose_severity_nobody_told_is_pointed_out_as_a_critical_one() -> None:
    site = Place(None)
    site.reply("pass", None, replaces=(site.failing,))
    assert site.state() == "withdrawn" and "withdrawn_critical" in codes(site.record())


def test_two_who_each_look_at_the_other_s_correction_are_pointed_out() -> None:
    site = Place()
    site.correct(FOREMAN)
    site.recheck(site.correct(SECOND), kid=FOREMAN)
    assert site.state() == "closed" and site.told()["problems"] == ["recheck_by_corrector"]
    site.recheck(site.correct(SECOND), kid=LEAD)
    assert site.told()["closed_by"]["by"] == "lee" and site.told()["problems"] == []


def test_a_version_by_who_may_not_does_not_speak_for_a_finding_and_several_by_who_may_are_pointed_out() -> None:
    site = Place()
    name = site.hand(severity="major")
    site.hand(OWNER, subject=name, severity="critical", found="nothing", panel=1)
    assert (site.told(name)["found"], site.told(name)["panel"]) == ("seam open", 9)
    site.hand(SECOND, subject=name, severity="critical", found="another thing")
    assert site.told(name)["found"] == "another thing" and "unresolved" in site.told(name)["problems"]


def test_who_may_not_approve_an_assembly_moves_none_however_long_they_search_for_a_digest() -> None:
    site = Site()
    for n in range(12):
        site.say(OWNER, "assembly", ASSEMBLY, body_of("assembly") | {"name": str(n)})
    told = site.record()["assemblies"][ASSEMBLY]
    assert told["digest"] == site.assembly and len(told["heads"]) == 13 and "no_authority" in codes(site.record())
