"""Readings of the finer instruments are printed to be done again; how they were accepted is said, with its risk."""

import pytest

from tests.report.laid_out import lay_out, sample_contents, texts_of
from tests.report.sample_answers import answer, by_eye, recorded
from tests.report.sample_ground import q
from tests.report.sample_tools import FINE, from_the_ground, with_tools
from tests.report.test_contents import whole

INSTRUMENTS = {name: instrument for name, (_, _, instrument) in FINE.items()}


def fine(**options):
    contents = sample_contents(with_tools(whole()), **options)
    for one in contents["answers"]:  # the sample's checklist does not ask them
        one["instrument"] = INSTRUMENTS.get(one["item"], one["instrument"])
    return contents


def read(contents, folder):
    return " ".join("".join(texts_of(lay_out(contents)[0], folder)).split())


def test_every_fine_reading_is_printed_with_what_it_takes_to_do_it_again(tmp_path):
    text = read(fine(), tmp_path)
    for said in (
        "A card of bank size (ISO/IEC 7810 ID-1) lay in the picture.", "slot 1.25 in, with a card in the picture",
        "corners of the card, in the same pixels: (1568.45, 1143.94) (1568.45, 1952.86)",
        "Metal then 96 °F ± 5 °F, infrared thermometer, read 4 min before",
        "Measured 0.0262 in, over the coating, coating of both sides together 0.0016 in", "base metal 0.0246 in",
        "21 readings of the phone laid on the slope; their median counts, with that of 22 more turned end for end",
        "angle 1.22°", "spread 0.03°", "the phone's own error −0.20°",
        "Counted 2 of 20", "share 10 %", "no blade entered", "thickest blade that entered: 0.03 in",
    ):  # fmt: skip
        assert said in text, said
    assert "tilt" not in text.split("corners of the card")[1].split("Rule")[0]  # the card tells it


def test_it_comes_in_spanish_and_si(tmp_path):
    text = read(fine(language="es", units="SI", paper="a4"), tmp_path)
    for said in ("Una tarjeta de tamaño bancario", "leído 4 min antes", "0.6655 mm (0.0262 in), sobre el recubrimiento",
                 "2 de 20", "no entró ninguna galga", "error propio del teléfono −0.20°"):  # fmt: skip
        assert said in text, said


def test_how_each_reading_was_accepted_is_said_with_what_it_risks(tmp_path):
    """By hand: 1.22° against atan(0.25/12) = 1.1935° with U = 0.2518: half erfc(0.0265 × 2 / 0.2518 / √2) = 41.7 %;
    11.97 against 12 in with U = 0.0625: 0.03 × 2 / 0.0625 = 0.96 deviations, 16.9 % beyond (normal tables: 0.1685)."""
    contents = fine()
    by = {one["answer"].split("/")[-1]: one for one in contents["acceptance"]["readings"] if "answer" in one}
    assert {name: (by[name]["used"], by[name]["known"]) for name in FINE if name in by} == {
        "card_slot": ("guarded", True), "sheet": ("guarded", True), "phone_slope": ("simple", True),
        "crack": ("guarded", True), "gap": ("simple", False), "row": ("simple", True),
    }  # fmt: skip
    assert by["phone_slope"]["risk"][:5] == "0.416" and by["row"]["risk"][:5] == "0.168"
    text = read(contents, tmp_path)
    for said in ("at most", "2.5 %", "ILAC-G8:09/2019", "risk up to 41.7 %", "risk up to 16.9 %",
                 "what that risks is not known (up to 50 % at the limit)"):  # fmt: skip
        assert said in text, said


def test_a_fail_by_simple_acceptance_carries_no_risk_of_a_wrong_pass():
    rec = whole()
    wide = recorded("spacing@2", {"gaps": [q("12.5", "in")], "limit": q("12", "in"), "uncertainty": q("0.0625", "in")})
    one = answer("s1", "nail-flange", "row", wide, 12)
    rec["answers"][one["id"]] = one
    told = next(one for one in sample_contents(rec)["answers"] if one["item"] == "row")
    assert (told["result"], told["accepted"]) == ("fail", {"used": "simple", "known": True, "risk": None})


def test_every_instrument_is_listed_with_how_far_off_it_may_be_and_who_says_so(tmp_path):
    contents = sample_contents(whole())
    text = read(contents, tmp_path)
    assert [one["instrument"] for one in contents["uncertainties"]][:3] == ["tape", "rule", "feeler"]
    assert len(contents["uncertainties"]) == 10
    assert "Tape ± 0.0625 in ours: common practice, no source" in text
    assert "Micrometer ± 0.0002 in the job: invented: checked on a gauge block" in text
    in_si = read(sample_contents(whole(), units="SI"), tmp_path)
    assert "± 0.025 mm" in in_si and "± 0 mm" not in in_si


@pytest.mark.parametrize(("area", "asked"), [("yard", "Are the clips"), ("quay", "Are the slots")])
def test_a_walk_of_one_area_from_the_ground_leaves_out_only_what_applies_there(tmp_path, area, asked):
    contents = sample_contents(from_the_ground(whole(), area), final=True)
    left = [one["facts"] for one in contents["not_seen"] if one["code"] == "items_not_answered"]
    mine = [one for one in left if one["walk"] == 2]
    assert [[each["en"][:13] for each in one["questions"]] for one in mine] == [[asked]]
    text = read(contents, tmp_path)
    assert "not on the roof: this walk was done from the ground" in text
    assert "not read: nobody was on the roof" in text
    assert f"roof area {'Yard' if area == 'yard' else 'Quay'} slope" in text


def test_a_finding_of_a_whole_area_says_which_area_it_is_in(tmp_path):
    rec = from_the_ground(whole(), "yard")
    one = rec["answers"]["papers walk/papers/approval"]
    one |= {"result": "fail", "verdict": by_eye("fail")}
    rec["findings"][one["id"]] = {"id": one["id"], "result": "fail", "state": "open"}
    assert "Yard slope, as a whole" in read(sample_contents(rec, final=True), tmp_path)


def test_an_area_seen_as_a_whole_only_is_said_to_be_so():
    rec = from_the_ground(whole(), "yard")
    rec["stations"] = {key: one for key, one in rec["stations"].items() if one["area"] == "quay"}
    codes = {(one["code"], one["facts"].get("area")) for one in sample_contents(rec)["not_seen"]}
    assert ("area_whole_only", "Yard slope") in codes and ("area_not_looked", "Yard slope") not in codes


@pytest.mark.parametrize("code", ["key", "self", "language", "count"])
def test_a_fact_of_a_reason_may_have_any_name(code):
    rec = whole()
    odd = by_eye("fail") | {"rule": "slot@1", "reason": {"code": "outside_window", "facts": {code: "x"}}}
    rec["answers"]["s4/clip/tab"]["verdict"] = odd
    assert lay_out(sample_contents(rec))[0].startswith(b"%PDF-")
