"""The report's days: ten letters each, what nobody told said so, the lighter label in bold words, in both languages."""

import copy
import re
from pathlib import Path

import pytest

from inspect_app.record.day_record_items import LETTERS
from inspect_app.report.daily import named_by_days
from inspect_app.words import Words
from tests.record.day_sample import COIL, say_day, with_assembly
from tests.record.rhythm_sample import INSPECTOR, SECOND, Site
from tests.report.laid_out import STATIC, lay_out, sample_contents, texts_of
from tests.report.test_contents import whole

LABEL = "a" * 64
LIGHT = {**COIL, "gauge": "26", "accepted": "set_aside", "coil": "C-88 <b>", "photos": [LABEL]}
WORDS = Words(STATIC / "words")


def told():
    """Days of the crew's own record under the hand-made sample: worked, told twice, without work, known from marks."""
    site = with_assembly(Site())
    lot = site.plan(1, 20)
    site.mark(lot, 9, metal_temperature={"value": "66", "unit": "F"})
    failed = site.station(5, {"value": "3", "unit": "ft"}, chosen="hand", lot=lot)
    site.answer(failed, "dimple", "fail")
    say_day(site, head_count=4, materials=[COIL, LIGHT], work="Valley & <i>eave</i>", delays=[{"why": "rain",
            "hours": "1"}], equipment=[{"what": "seamer", "operator": "Ada", "setting": "die 2", "hours": "6"}],
            instructions=[{"by": "Lee", "said": "Stop at the valley"}], tied_down="bundles; tarp on the hatch",
            safety="none", offsite="none", weather=[{"at": "07:30", "sky": "wet", "wind": "gusts"}])  # fmt: skip
    say_day(site, SECOND, head_count=5)
    say_day(site, INSPECTOR, day="2026-11-16", no_work="rain", statement=WORDS.say("day_record.statement.no_work"))
    rec = whole()
    rec["days"] = site.record()["days"]
    return rec


def test_each_day_has_all_ten_items_under_their_own_letter_and_name_in_contents_and_on_the_page(tmp_path):
    contents = sample_contents(told())
    for day in contents["daily"]:
        assert [(one["letter"], one["name"]) for one in day["items"]] == list(LETTERS)
    text = " ".join(" ".join(texts_of(lay_out(contents)[0], tmp_path)).split())
    section = text.rsplit("Day by day", 1)[-1]
    for letter, name in LETTERS:
        assert f"{letter}) " in section and WORDS.say(f"day_record.item.{name}").split()[0] in section
    assert section.count("Not told.") == sum(
        not one["told"] for day in contents["daily"] if day["worked"] for one in day["items"]
    )
    assert "no work that day: rain" in section.lower() and "16 November 2026 · 2 · No work" in section
    assert "Of the 8 days between 16 November 2026 and 25 November 2026 nothing is recorded." in section
    assert "at least every seventh day" in section


def test_the_lighter_label_is_pointed_out_with_both_thicknesses_and_markup_of_people_stays_text(tmp_path):
    text = " ".join(" ".join(texts_of(lay_out(sample_contents(told()))[0], tmp_path)).split())
    # CSSBI Facts 10-12: MSG 26 is delivered with 0.0170 in at least, MSG 24 with 0.0227 in.
    assert "◆ Lighter than the approved gauge: 26 (MSG) has 0.017 in" in text.replace("0.0170", "0.017")
    assert "24 (MSG) has 0.0227 in" in text and "C-88 <b>" in text and "Valley & <i>eave</i>" in text
    assert "The records give different head counts." in text and "Record 2:" in text
    assert "tarp on the hatch" in text and "bundles strapped" in text


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_word_of_the_days_stands_in_the_report_s_language(tmp_path, language):
    text = "".join(texts_of(lay_out(sample_contents(told(), language=language))[0], tmp_path))
    for key in ("item.plant", "item.offsite", "what.coil", "accepted.set_aside", "equipment.seamer"):
        assert WORDS.say(f"day_record.{key}", language).split()[0] in text
    assert not re.search(r"day_record\.|set_aside|near_miss|day_phase", text)
    signed = "No work was done on the roof" in text
    assert signed and ("(as recorded" not in text or language == "es"), "what was signed is never translated"


def test_a_label_that_never_came_is_missing_and_keeps_the_report_a_draft():
    rec = told()
    assert named_by_days(rec) == [LABEL]
    contents = sample_contents(rec, final=True)
    missing = [one for one in contents["missing"] if one["code"] == "day_photo_missing"]
    assert [one["facts"]["sha256"] for one in missing] == [LABEL] and not contents["final"]
    for state in ("lost", "damaged"):
        held = {LABEL: {"held": False, "lost": state}}
        assert f"day_photo_{state}" in [one["code"] for one in sample_contents(rec, held)["missing"]]


def test_whatever_a_phone_can_press_in_a_day_s_record_has_a_word(tmp_path):
    screen = (Path(STATIC) / "day_record" / "pressed.js").read_text("utf-8")
    groups = re.findall(r"(\w+): \[([^\]]*)\]", screen)
    assert {"what", "accepted", "stored", "equipment", "why", "tied", "safety"} <= {name for name, _ in groups}
    keys = [f"day_record.{name}.{code}" for name, codes in groups for code in re.findall(r"'(\w+)'", codes)]
    assert len(keys) > 30 and [key for key in keys if key not in WORDS] == []


def test_a_job_without_any_day_says_so(tmp_path):
    rec = copy.deepcopy(whole())
    rec["days"] = []
    assert "Nothing is recorded of any day." in "".join(texts_of(lay_out(sample_contents(rec))[0], tmp_path))
