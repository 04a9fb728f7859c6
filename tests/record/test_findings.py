"""A finding goes from opened to closed by what was said of it, and nothing said of it is lost."""

from tests.record.finding_sample import FAILED, VERDICT, Place, picture
from tests.record.rhythm_sample import ENGINEER, FOREMAN, INSPECTOR, LEAD, OWNER, SECOND, WALK, codes


def test_a_failed_answer_opens_a_finding_at_its_place() -> None:
    site = Place()
    told = site.told()
    assert (told["state"], told["source"], told["result"]) == ("open", "answer", "fail")
    assert (told["area"], told["panel"], told["zone"], told["severity"]) == ("area", 9, "field", "major")
    assert told["opened"]["digest"] == site.failing and told["photos"] == [picture("before")]
    assert told["crew"] == site.record()["walks"][WALK]["crew"] and told["firm"] is None


def test_it_is_corrected_rechecked_closed_and_reopened() -> None:
    site = Place()
    correction = site.correct()
    assert site.state() == "corrected"
    recheck = site.recheck(correction)
    told = site.told()
    assert told["state"] == "closed" and told["closed_by"]["digest"] == recheck and told["closed_by"]["by"] == "ira"
    site.reopen(recheck, kid=OWNER)
    told = site.told()
    assert told["state"] == "open" and told["closed_by"] is None
    assert [one["state"] for one in told["corrections"]] == ["spent"] and told["rechecks"][0]["spent"] is True
    assert site.state() == "open" and len(told["history"]) == 4
    site.recheck(site.correct(SECOND))
    assert site.state() == "closed"


def test_a_correction_that_somebody_found_not_good_leaves_it_open() -> None:
    site = Place()
    correction = site.correct()
    site.recheck(correction, "good", kid=INSPECTOR)
    site.recheck(correction, "not_good", kid=LEAD)
    assert site.state() == "open"
    site.recheck(site.correct())
    assert site.state() == "closed"


def test_an_engineer_s_concession_stands_until_it_is_reopened() -> None:
    site = Place()
    conceded = site.concede(ENGINEER, document=picture("letter"))
    told = site.told()
    assert told["state"] == "conceded" and told["concession"]["document"] == picture("letter")
    assert told["closed_by"]["by"] == "eno" and told["problems"] == []
    site.reopen(conceded)
    assert site.state() == "open"


def test_a_correction_and_a_good_recheck_come_before_a_concession() -> None:
    site = Place()
    site.concede(ENGINEER, document=picture("letter"))
    site.correct()
    assert site.state() == "conceded"
    site.recheck(site.correct())
    assert site.state() == "closed"


def test_an_answer_taken_back_withdraws_its_finding_and_leaves_it_there() -> None:
    site = Place("critical")
    changed = site.reply("pass", "critical", replaces=(site.failing,))
    told = site.told()
    assert (told["state"], told["result"], told["severity"]) == ("withdrawn", "pass", "critical")
    assert told["closed_by"] == {"digest": changed, "by": "fay", "at": told["closed_by"]["at"]}
    assert told["problems"] == ["withdrawn_critical"] and "withdrawn_critical" in codes(site.record())
    site.reply("fail", "critical", replaces=(changed,))
    assert site.state() == "open" and site.told()["opened"]["digest"] == site.failing


def test_one_that_was_never_fail_opens_nothing() -> None:
    site = Place()
    site.answer(site.station(10, {"value": "1", "unit": "ft"}), "screw", "too_close")
    assert list(site.record()["findings"]) == [site.finding]


def test_one_opened_by_hand_has_a_place_of_its_own_and_lives_as_any_other() -> None:
    site = Place()
    name = site.hand(area=None, station=site.at, panel=9)
    told = site.told(name)
    assert (told["source"], told["area"], told["zone"], told["item"]) == ("hand", "area", "field", None)
    assert (told["required"], told["found"]) == ("seam closed", "seam open")
    site.recheck(site.correct(finding=name), finding=name)
    assert site.state(name) == "closed" and site.state() == "open"


def test_a_place_named_by_panel_and_distance_is_in_the_zone_that_the_roof_gives_it() -> None:
    site = Place()
    area = site.record()["areas"]["area"]
    assert site.told(site.hand())["zone"] in area["zones"] and site.told(site.hand(panel=9999))["zone"] is None


def test_who_corrects_it_and_why_it_came_about_stand_with_it() -> None:
    site = Place()
    site.assign()
    told = site.told()
    assert (told["firm"], told["crew"]) == ("Gable (invented)", "Crew 9")
    assert told["assignment"]["cause"] == {"code": None, "words": "torque"}


def test_a_reading_that_still_fails_neither_corrects_nor_closes() -> None:
    site = Place(rule="limit@1")
    site.correct(reading={"head": "0.3"}, verdict=FAILED)
    assert site.state() == "open" and "correction_fails" in site.told()["problems"]
    good = site.correct(reading={"head": "0.0"}, verdict=VERDICT)
    site.recheck(good, reading={"head": "0.3"}, verdict=FAILED)
    assert site.state() == "corrected" and "recheck_fails" in codes(site.record())
    site.recheck(good, kid=LEAD)
    assert site.state() == "closed"


def test_what_was_measured_and_is_not_measured_again_is_said() -> None:
    site = Place(rule="limit@1")
    site.recheck(site.correct())
    assert site.told()["problems"] == ["reading_not_taken_again"]
    site = Place(rule="limit@1")
    site.recheck(site.correct(), reading={"head": "0.0"}, verdict=VERDICT)
    assert site.told()["problems"] == []


def test_the_history_keeps_what_names_another_behind_it_whatever_the_clocks_say() -> None:
    site = Place()
    correction = site.correct()
    recheck = site.recheck(correction)
    reopening = site.reopen(recheck)
    for entry in site.entries:
        if entry["digest"] in (recheck, reopening):
            entry["payload"]["at"] = "2001-01-01T00:00:00.000+14:00"
    order = [one["digest"] for one in site.told()["history"]]
    assert order == [site.failing, correction, recheck, reopening]


def test_times_are_compared_by_what_they_are_and_not_by_how_they_are_written() -> None:
    site = Place()
    one, other = site.correct(FOREMAN), site.correct(SECOND)
    for entry in site.entries:
        at = {one: "2026-11-26T01:00:00.000+09:00", other: "2026-11-25T20:00:00.000-05:00"}.get(entry["digest"])
        entry["payload"]["at"] = at or "2026-11-20T08:00:00.000-05:00"
    assert [one["digest"] for one in site.told()["corrections"]] == [one, other]
