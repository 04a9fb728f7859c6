"""The fit check is printed line by line as it was recorded, and says what has changed since."""

import copy

import pytest

from inspect_app.record.fit import fit
from inspect_app.report.pages.fit_sides import line_name, sides
from inspect_app.report.pages.look import load_fonts
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.voice import Voice
from tests.record.fit_sample import CLIPS, DAY, FIXED, FLANGE, world
from tests.report.laid_out import FONTS, WORDS, lay_out, sample_contents, texts_of
from tests.report.sample import record
from tests.report.sample_fit import FOUND, checked
from tests.report.sample_ground import q
from tests.report.test_contents import whole


def read(contents, folder):
    return " ".join("".join(texts_of(lay_out(contents)[0], folder)).split())


def lines(contents):
    return {one["line"]: one for one in contents["fits"][0]["lines"]}


def test_each_line_is_printed_with_its_two_numbers_what_is_between_them_and_what_to_get(tmp_path):
    """By hand: (1 − 0.190 − 2 × 0.125) / (6.5e-6 × 200) = 430.77 in = 35.9 ft, and 40 − 35.9 = 4.1."""
    text = read(sample_contents(whole(), final=True), tmp_path)
    for said in (
        "4.1 ft too much",
        "at most 35.9 ft",
        "1:12 to spare",
        "at least 3:12",
        "in force until 1 March 2028",
        "462 days left",
        "nothing to spare",
        "exactly 1 place",
        "To get: the length of the folded return, from the",
    ):
        assert said in text, said
    assert (
        text.index("Movement the slot or clip can") < text.index("Gap left in the fold") < text.index("Longest panel")
    )
    assert "rise in 12 = 12 × tan(angle)" in text and "First principles; no published rule" in text


@pytest.mark.parametrize(("language", "paper", "units"), [("es", "a4", "SI"), ("en", "letter", "US")])
def test_it_comes_in_both_languages_and_says_who_recorded_it_when_and_for_which_day(tmp_path, language, paper, units):
    text = read(sample_contents(whole(), language=language, paper=paper, units=units), tmp_path)
    who = {"en": "25 November 2026, 16:01:05 (UTC−05:00) · Tomas Ridgeway (invented), foreman",
           "es": "25 de noviembre de 2026, 16:01:05 (UTC−05:00) · Tomas Ridgeway (invented), capataz"}  # fmt: skip
    assert who[language] in text
    assert {"en": "As of 25 November 2026, against Snap-lock", "es": "Al día 25 de noviembre de 2026"}[language] in text
    assert {"en": "◆ Does not pass", "es": "◆ No pasa"}[language] in text
    assert ("1.25 m" in text) == (units == "SI")  # 4.1 ft too much


def test_an_area_without_a_check_is_not_looked_at_and_with_one_it_is_not_named_there(tmp_path):
    told = sample_contents(whole(), final=True)
    assert [one["facts"]["area"] for one in told["not_seen"] if one["code"] == "area_no_fit"] == ["Yard slope"]
    assert "Yard slope: no fit check is on record" in read(told, tmp_path)
    rec = whole()
    rec["fits"] = {}
    assert len([one for one in sample_contents(rec)["not_seen"] if one["code"] == "area_no_fit"]) == 2
    assert "No fit check has been recorded" in read(sample_contents(rec), tmp_path)


def test_what_is_printed_as_approved_is_what_the_line_was_judged_by_not_what_stands_now():
    rec = whole()
    rec["assemblies"]["a-flange"]["approval"]["expires"] = "2026-01-01"
    rec["assemblies"]["a-flange"]["deck"] = "another deck"
    told = lines(sample_contents(rec))
    assert (told["approval"]["pair"]["limit"], told["approval"]["now"]) == ("2028-03-01", "fail")
    assert told["deck"]["pair"]["limit"] == "5/8 in plywood"


@pytest.mark.parametrize(("what", "thing"), [("area", ("areas", "quay")), ("assembly", ("assemblies", "a-flange"))])
def test_a_check_older_than_a_change_says_so_and_what_its_lines_would_be_now(tmp_path, what, thing):
    rec = whole()
    assert sample_contents(rec)["fits"][0]["later"] == []
    own = rec[thing[0]][thing[1]]
    own["at"] = "2026-11-25T22:30:00.000+00:00"
    if what == "assembly":
        own["longest_run"] = q("30", "ft")
    told = sample_contents(rec)
    assert [one["what"] for one in told["fits"][0]["later"]] == [what]
    assert "was changed after this check (25 November 2026, 22:30:00" in read(told, tmp_path)
    line = lines(told)["longest_panel"]
    assert (line["result"], line["now"]) == ("pass", "fail" if what == "assembly" else None)
    assert line["pair"]["limit"] == {"value": "40.0", "unit": "ft"}  # what it was judged by, not what stands now
    own["at"] = "2026-11-25T20:00:00.000+00:00"  # 16:01 at −05:00 is later than that
    assert sample_contents(rec)["fits"][0]["later"] == []


def test_a_line_that_the_record_asks_for_and_the_check_lacks_is_named(tmp_path):
    rec = whole()
    rec["fits"]["quay"]["lines"] = [one for one in rec["fits"]["quay"]["lines"] if one["line"] != "run"]
    told = sample_contents(rec)
    assert told["fits"][0]["left_out"] == ["run"]
    assert "asks for lines that this check does not have: Movement the slot" in read(told, tmp_path)


@pytest.mark.parametrize(
    ("line", "change"),
    [
        ("run", {"result": "pass"}),
        ("run", {"result": "pass", "rule": None, "inputs": {}, "values": {}}),
        ("run", {"result": "pass", "rule": "limit@1", "values": {},
                 "inputs": {"reading": q("1", "ft"), "at_most": q("2", "ft")}}),
        ("deck", {"inputs": {"approved": "5/8 in plywood", "deck": "other"}}),
        ("underlayment", {"result": "pass"}),
        ("fixed_place", {"inputs": {}}),
        ("fold_gap", {"result": "pass", "inputs": {}}),
    ],
)  # fmt: skip
def test_a_line_that_its_own_rule_or_words_do_not_give_is_pointed_out(tmp_path, line, change):
    rec = whole()
    assert {one["recomputed"] for one in lines(sample_contents(rec)).values()} == {"same"}
    next(one for one in rec["fits"]["quay"]["lines"] if one["line"] == line)["verdict"] |= change
    told = sample_contents(rec)
    assert {name for name, one in lines(told).items() if one["recomputed"] == "different"} == {line}
    assert [one["facts"]["line"] for one in told["cautions"] if one["code"] == "fit_recomputed_different"] == [line]
    assert "a different verdict" in read(told, tmp_path)


def test_the_cover_says_that_a_line_fails_even_where_no_answer_does(tmp_path):
    rec = whole()
    for answer in rec["answers"].values():
        answer["result"] = "pass"
    rec["findings"] = {}
    told = sample_contents(rec, final=True)
    assert (told["cover"]["verdict"], told["cover"]["fit"]) == ("fit_fails", {"areas": 1, "fail": 2, "open": 3})
    assert "2 lines of the fit check do not pass" in texts_of(lay_out(told)[0], tmp_path)[0]
    rec["fits"] = {}
    assert sample_contents(rec, final=True)["cover"]["verdict"] == "none_found"


def test_every_line_and_everything_to_get_has_words_in_both_languages():
    kinds = {one["line"] for roof in (FLANGE, CLIPS, FIXED) for one in fit(*world(roof).values(), DAY)} | {"zones"}
    load_fonts(FONTS)
    for language in ("en", "es"):
        page = Page({}, Voice(WORDS, language, "US"), lambda _: None)
        assert [kind for kind in kinds if line_name(page, kind) == kind.replace("_", " ")] == []
    gets = {one.get("get") for roof in ({}, {"attachment": "expansion_clip"}, {"attachment": "fixed_clip"})
            for one in fit({}, roof, {}, {}, "")} - {None}  # fmt: skip
    assert len(gets) > 15
    assert sorted(key for key in gets if f"fit.get.{key}" not in WORDS) == []


def test_a_line_that_passes_without_a_number_of_this_roof_does_not_call_it_unknown():
    load_fonts(FONTS)
    page = Page({}, Voice(WORDS, "en", "US"), lambda _: None)
    one = {"line": "zone:field", "working": {"rule": "zone_spacing@1"}, "result": "pass",
           "pair": {"sense": "at_most", "limit": q("24", "in")}}  # fmt: skip
    assert sides(page, one)[1] == ""
    assert sides(page, one | {"result": "not_determinable"})[1] == "not known"


HOSTILE = ["nan", "1e999", "", "<b>", None, [], {}, 10**30, {"value": "x", "unit": []}]


@pytest.mark.parametrize("value", HOSTILE, ids=repr)
def test_whatever_stands_in_a_line_a_report_comes_out(value):
    rec = whole()
    own = rec["fits"]["quay"] = copy.deepcopy(rec["fits"]["quay"])
    for one in own["lines"]:
        one["verdict"]["inputs"] = dict.fromkeys(one["verdict"]["inputs"], value)
        one["verdict"]["values"] = {name: value if at % 2 else {"value": value, "unit": "in"}
                                    for at, name in enumerate(one["verdict"]["values"])}  # fmt: skip
        one["verdict"]["reason"] = {"code": value, "facts": {"path": value, "input": value}}
    own["lines"].append({"line": "of a later release", "verdict": dict(own["lines"][0]["verdict"])})
    own["lines"].append({"line": "zone:", "verdict": dict(own["lines"][0]["verdict"])})
    own["versions"] = [*own["versions"], own["versions"][0] | {"digest": "x", "result": value}]
    assert lay_out(sample_contents(rec))[0].startswith(b"%PDF-")


def test_a_check_of_an_area_that_is_not_here_is_printed_all_the_same(tmp_path):
    rec = whole()
    rec["fits"]["gone"] = checked(record(), "quay") | {"id": "gone", "area": "gone"}
    told = sample_contents(rec)
    assert [one["area"] for one in told["fits"]] == ["quay", "gone"]
    assert told["fits"][1]["found"] == FOUND
    assert "gone" in read(told, tmp_path)
