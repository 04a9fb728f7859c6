"""What a report says of a finding: its state and everything that led there, with the photos before and after."""

import re

import pytest

from inspect_app.report.contents import report_contents
from tests.report.laid_out import lay_out, texts_of
from tests.report.sample import DEFINITIONS, OPTIONS, log, photos
from tests.report.sample_answers import clip, recorded
from tests.report.sample_findings import EVERYBODY, entry, findings, named
from tests.report.sample_ground import FOREMAN, INSPECTOR, q
from tests.report.sample_pictures import TAB, WHAT_1, write_pictures
from tests.report.test_contents import whole

GAPS, SLOT = "s2/nail-flange/spacing", "s3/nail-flange/slot"


def contents(*said, change=None, **options):
    rec, flags = whole(), []
    rec["findings"] = findings(rec, *said, flags=flags)
    rec["flags"] = flags
    if change:
        change(rec)
    return report_contents(rec, EVERYBODY, DEFINITIONS, log(), photos(), OPTIONS | options)


def read(told, folder):
    return " ".join("".join(texts_of(lay_out(told, write_pictures(folder).get)[0], folder)).split())


def corrected(finding=SLOT, minute=1, **more):
    return entry("correction", f"c{minute}", minute, finding=finding, **more)


def rechecked(of, finding=SLOT, minute=2, **more):
    return entry("recheck", f"r{minute}", minute, finding=finding, correction=of["digest"], **more)


def the(told, finding=SLOT):
    return next(one for one in told["findings"] if one["id"] == finding)


def test_a_closed_finding_says_who_corrected_it_who_looked_and_what_they_read(tmp_path):
    done = corrected(photos=[TAB])
    good = recorded("spacing@1", {"gaps": [q("11.5", "in")], "limit": q("12", "in")})
    told = contents(
        entry("assignment", SLOT, 0, finding=SLOT), done,
        rechecked(done, photos=[WHAT_1], reading={"gaps": [q("11.5", "in")]}, verdict=good, note="Slides freely."),
    )  # fmt: skip
    text = read(told, tmp_path)
    assert the(told)["state"] == "closed" and the(told)["people"][INSPECTOR]["role"] == "inspector"
    block = text.split("Finding 2: major, closed")[-1]
    for said in (
        "Required, found Required", "Cause Tool or machine set wrong “clutch never set back”",
        "To correct it Gannet Sheet Metal (invented), crew 2, by 27 November 2026",
        "Corrected Put right. Screw backed off and set anew. Somebody else found it good. Tomas Ridgeway (invented)",
        "Rechecked Good. Slides freely. Mara Plumb (invented), inspector, 26 November 2026, 09:02:00",
        "11.5 in", "spacing@1 — Accepted", "Before · Photo", "After · Photo 5", "At the recheck · Photo",
    ):  # fmt: skip
        assert said in block, said


def test_an_open_one_a_reopened_one_and_a_conceded_one_say_so(tmp_path):
    done = corrected()
    look = rechecked(done)
    told = contents(done, look, entry("reopening", "o", 3, finding=SLOT, of=[look["digest"]]),
                    entry("concession", GAPS, 4, finding=GAPS))  # fmt: skip
    text = read(told, tmp_path)
    assert (the(told)["state"], the(told, GAPS)["state"]) == ("open", "conceded")
    assert "Reopened Does not hold. Came loose again." in text and "this no longer holds" in text
    assert "Accepted May stand as it is. Holds the uplift of this zone. Document: letter 9 (invented)." in text
    assert "Iris Vane (invented), engineer" in text and "Accepted by reference alone" in text
    assert "Findings: 1 open, 1 accepted as it is, by document." in text


def test_what_has_no_effect_is_printed_with_why(tmp_path):
    done = corrected(by=INSPECTOR)
    told = contents(done, rechecked(done))
    assert the(told)["state"] == "corrected"
    text = read(told, tmp_path)
    assert "This has no effect." in text and "Somebody rechecked their own correction: it does not count." in text
    caution = next(one["facts"] for one in told["cautions"] if one["facts"].get("flag") == "own_recheck")
    assert caution["findings"] == [the(told)["n"]] and "(finding 2)" in text


def test_one_opened_by_hand_stands_at_its_place_and_on_the_cover(tmp_path):
    def passing(rec):
        for answer in rec["answers"].values():
            answer["result"] = "pass"
        rec["findings"] = {name: one for name, one in rec["findings"].items() if one["source"] == "hand"}

    told = contents(entry("finding", "f", 1, walk="walk", severity="critical"), change=passing, final=True)
    assert (told["cover"]["verdict"], told["cover"]["raised"], told["cover"]["critical"]) == ("raised", 1, 1)
    text = read(told, tmp_path)
    assert "No answer failed, but a finding made by hand is not settled" in text
    assert "Where Quay slope, panel 5, 3 ft from its low end" in text
    assert "Seam closed over its whole length." in text and "Two hands open at the eave." in text
    assert re.search(r"\bF1\b", text), "on the plan of its area"


def test_a_critical_one_leaves_the_cover_when_it_is_closed_and_not_before():
    photo, other = {"photos": [TAB]}, {"photos": [WHAT_1]}
    bare = corrected(GAPS)
    assert contents(bare, rechecked(bare, GAPS))["cover"]["critical"] == 1, "no evidence"
    shown = corrected(GAPS, **photo)
    told = contents(shown, rechecked(shown, GAPS, **other))
    assert told["cover"]["critical"] == 0 and told["cover"]["states"] == {"open": 1, "closed": 1}
    assert told["cover"]["verdict"] == "fails", "the answer failed all the same"


def test_a_withdrawn_one_is_told_and_counts_no_more(tmp_path):
    def changed(rec):
        one = rec["answers"][SLOT]
        first = one["versions"][0]
        one["versions"] = [first, first | {"digest": "later", "result": "pass"}]
        one |= {"result": "pass", "digest": "later"}
        rec["findings"] = findings(rec)

    told = contents(change=changed)
    assert the(told)["state"] == "withdrawn" and the(told)["told"]["closed_by"]["digest"] == "later"
    assert "The answer that failed was changed; it now says: Passes." in read(told, tmp_path)


def test_a_photo_that_an_entry_names_and_that_has_not_arrived_keeps_the_report_a_draft(tmp_path):
    told = contents(corrected(photos=["9" * 64]), final=True)
    one = next(one for one in told["missing"] if one["code"] == "finding_photo_missing")
    assert one["facts"] == {"finding": 2, "sha256": "9" * 64} and not told["final"]
    text = read(told, tmp_path)
    assert "A photo that an entry about finding 2 names has not arrived" in text
    assert "The bytes of this photo have not arrived." in text


def test_a_severity_that_the_checklist_does_not_give_is_pointed_out_and_the_worse_is_printed(tmp_path):
    def milder(rec):
        rec["findings"][GAPS]["severity"] = "minor"

    told = contents(change=milder)
    assert the(told, GAPS)["severity"] == "critical" and told["cover"]["critical"] == 1
    assert "Finding 1: the phone said minor, the checklist says critical." in read(told, tmp_path)


def test_a_reading_that_judged_again_gets_another_verdict_is_pointed_out():
    forged = clip("0.9") | {"result": "pass"}
    told = contents(corrected(reading={"value": q("0.9", "in")}, verdict=forged))
    assert {"code": "finding_recomputed_different", "facts": {"finding": 2}} in told["cautions"]


@pytest.mark.parametrize("language", ["en", "es"])
def test_whatever_people_write_in_it_comes_out(tmp_path, language):
    wild = "<b>&</i> \u202e " + "x" * 4000 + "\n" * 40
    done = corrected(done=wild, photos=[TAB])
    told = contents(
        entry("finding", "f", 1, required=wild, found=wild, panel=-4, from_low_end=q("1e9", "ft")),
        entry("assignment", SLOT, 0, finding=SLOT, firm=wild, crew="", by_day=None, note=wild,
              cause={"code": "unheard_of", "words": wild}),
        done, rechecked(done, note=wild), entry("reopening", "o", 3, finding=SLOT, of=[], reason=wild),
        entry("concession", GAPS, 4, finding=GAPS, reason=wild, reference=wild), language=language,
    )  # fmt: skip
    assert lay_out(told)[0].startswith(b"%PDF-")


def test_findings_are_numbered_as_one_walks_and_those_by_hand_after_their_walk():
    told = contents(entry("finding", "f", 1, walk="walk"), entry("finding", "e", 2, walk="another"))
    assert [one["id"] for one in told["findings"]] == [GAPS, SLOT, "f", "e"]
    assert [one["n"] for one in told["findings"]] == [1, 2, 3, 4] and FOREMAN in the(told)["people"]
    assert the(told, "f")["told"]["opened"]["digest"] == named("finding", "f", 1)
