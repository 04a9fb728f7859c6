"""A warranty survey as pages: what it says of one place, in both languages, and how a false one is found. Invented."""

import copy

import pytest

from inspect_app.evidence.scope_told import scope_fact
from inspect_app.report.contents import report_contents
from tests.bodies import body_of
from tests.record.finding_sample import HERE, Place
from tests.record.rhythm_sample import AREA, LEAD, PEOPLE, REVIEWER
from tests.report.laid_out import lay_out, texts_of
from tests.report.sample import DEFINITIONS, OPTIONS, log


def q(value, unit):
    return {"value": value, "unit": unit}


SCOPE = {"kind": "survey", "area": AREA, "panel": 9, "from_low_end": HERE, "radius": q("4", "ft")}
VALUES = {"movement": q("0.507", "in"), "difference": q("-0.007", "in"), "bound": q("0.06", "in")}


def site():
    made = Place("critical")
    made.assembly = made.say(LEAD, "assembly", "assembly", {
        **body_of("assembly"), "expansion": q("6.5e-6", "/F"), "zones": [{"name": "field", "spacing": q("12", "in")}],
        "approval": {"reference": "A 14 (invented)", "issued": "2026-01-01", "expires": "2026-11-24"},
    }, (made.assembly,))  # fmt: skip
    lot = made.plan(1, 40)
    made.mark(lot, 20, metal_temperature=q("61", "F"))
    made.correct(photos=["a" * 64])
    asked = {**body_of("survey"), "area": AREA, "panel": 9, "from_low_end": HERE}
    asked["wear"]["verdict"] |= {"rule": "wear@1", "result": "not_applicable", "values": VALUES,
                                 "reason": {"code": "wear_as_computed", "facts": {}}}  # fmt: skip
    made.say(REVIEWER, "survey", "s1", asked, at="2031-04-11T09:30:00.000-05:00")
    return made


def contents(made, **options):
    return report_contents(made.record(), PEOPLE, DEFINITIONS, log(), {}, OPTIONS | {"scope": SCOPE} | options)


def words(pdf, folder):
    return " ".join(" ".join(texts_of(pdf, folder)).split())


def test_the_pages_say_where_what_was_approved_that_day_and_what_nobody_saw(tmp_path):
    pdf, _ = lay_out(contents(site()))
    said = words(pdf, tmp_path)
    for text in ("panel 9, 7.5 ft from its low end", "radius 4 ft", "Not in force on that day",
                 "Named by that day's own lot", "Fastener places", "Bag 7: one clip", "the owner; locked",
                 "Nobody told where", "0.5 in ± 0.06 in", "blames nobody", "Two panels each side",
                 "a correction", "by its own marks", "holds about one place on it"):  # fmt: skip
        assert text in said or text.replace("Nobody told where", "own fixed line") in said, text
    assert "while its fastening" not in said, "of a survey nothing of it can be seen any more"


def test_what_people_were_asked_of_another_place_near_by_names_that_place(tmp_path):
    made = site()
    other = {**body_of("survey"), "area": AREA, "panel": 10, "from_low_end": q("9.5", "ft")}
    made.say(REVIEWER, "survey", "s2", other, at="2031-04-12T09:30:00.000-05:00")
    said = words(lay_out(contents(made))[0], tmp_path)
    for name in ("panel 10, 9.5 ft from its low end", "panel 9, 7.5 ft from its low end"):
        assert said.count("Of " + made.record()["areas"][AREA]["name"] + ", " + name) == 2, name


def test_in_spanish_no_word_of_it_stays_english_nor_stands_for_itself(tmp_path):
    pdf, _ = lay_out(contents(site(), language="es", units="SI", paper="a4"))
    said = words(pdf, tmp_path)
    for text in ("Inspección de garantía de un lugar", "No vigente ese día", "Bolsa 7", "no culpa a nadie",
                 "guarda de un lugar suyo"):  # fmt: skip
        assert text in said, text
    for text in ("mientras su fijación", "in force", "wear mark", "survey.", "astener places"):
        assert text not in said, text


def test_the_chronicle_names_the_day_s_record_and_says_once_that_something_lies_beyond_the_radius(tmp_path):
    told = contents(site())
    told["survey"]["events"] = [told["survey"]["events"][0] | change for change in (
        {"kind": "day", "how": "panel", "area": AREA, "panel": 9, "distance": None},
        {"kind": "finding", "how": "beside", "area": None, "panel": None, "distance": 26.8})]  # fmt: skip
    said = words(lay_out(told)[0], tmp_path)
    assert said.count("beyond the radius") == 1 and "the day's record" in said and "On which day" not in said


def test_a_photo_that_a_survey_names_and_nobody_sent_keeps_the_report_a_draft():
    told = contents(site())
    assert "survey_photo_missing" in {one["code"] for one in told["missing"]} and told["final"] is False


def test_without_anything_recorded_it_says_so_instead_of_nothing(tmp_path):
    made = Place()
    empty = {**SCOPE, "panel": 40}
    pdf, _ = lay_out(contents(made, scope=empty))
    said = words(pdf, tmp_path)
    assert "No signed statement tells when these panels were set" in said
    assert "Nobody has signed what a reviewer asks first" in said


def test_other_kinds_of_report_say_nothing_of_a_survey():
    told = contents(site(), scope={"kind": "closeout"})
    assert told["survey"] is None


@pytest.mark.parametrize("change", [
    lambda told: told["events"].pop(), lambda told: told["beside"].pop(),
    lambda told: told["set"][0]["assembly"].update(changed=["gauge"]),
    lambda told: told["set"][0]["assembly"]["in_force"].update(verdict="pass"),
    lambda told: told["unseen"]["places"].update(looked_at=9),
    lambda told: told["asked"][0]["wear"].update(length=q("0.2", "in")),
    lambda told: told["place"].update(radius=q("1", "ft")),
])  # fmt: skip
def test_whatever_is_changed_in_a_survey_does_not_follow_from_its_entries(change):
    made = site()
    told = contents(made)
    record = made.record()
    assert scope_fact(told, record).status == "holds", scope_fact(told, record)
    false = copy.deepcopy(told)
    change(false["survey"])
    assert scope_fact(false, record).status == "fails"
