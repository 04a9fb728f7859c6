"""What was measured and counted is printed, to the digits that redo the sum."""

import re

import pytest

from tests.report.laid_out import lay_out, sample_contents, texts_of
from tests.report.sample_answers import answer, by_eye, clip, recorded
from tests.report.sample_ground import q
from tests.report.test_contents import whole

HEM = recorded("movement@1", {
    "distance": q("40", "ft"), "expansion": q("0.0000065", "/F"), "metal_low": q("-20", "F"),
    "metal_high": q("74", "F"),
}) | {"result": "not_applicable"}  # fmt: skip


def written(name, verdict, reading, instrument=None, **more):
    """The pages' text with one more answer of the whole walk."""
    rec = whole()
    one = answer(None, "end-of-day", name, verdict, 45, reading=reading, **more)
    rec["answers"][one["id"]] = one
    contents = sample_contents(rec, final=True)
    next(each for each in contents["answers"] if each["id"] == one["id"])["instrument"] = instrument
    return contents, one["id"]


def read(contents, folder):
    return " ".join("".join(texts_of(lay_out(contents)[0], folder)).split())


def test_a_gap_that_was_measured_is_printed_and_is_not_called_not_applicable(tmp_path):
    contents, _ = written("hem_gap", HEM, {"value": q("0.5", "in")})
    text = read(contents, tmp_path)
    assert "Measured 0.5 in" in text
    assert "movement 0.293 in" in text  # 6.5e-6 × 480 in × 94 °F = 0.29328 in, by hand
    assert "Not applicable" not in text
    assert (contents["cover"]["counts"]["recorded"], contents["cover"]["counts"]["not_applicable"]) == (1, 0)


def test_a_count_that_was_written_down_is_printed(tmp_path):
    noted = by_eye("not_applicable") | {"reason": {"code": "recorded", "facts": {}}}
    contents, _ = written("drawn_places", noted, {"count": 4}, "count", choice=None)
    text = read(contents, tmp_path)
    assert "Counted 4" in text and "• Recorded" in text


def test_what_a_person_said_does_not_apply_is_still_called_so(tmp_path):
    contents, _ = written("hem_gap", by_eye("not_applicable"), None)
    assert contents["cover"]["counts"]["not_applicable"] == 1
    assert "Not applicable" in read(contents, tmp_path)


@pytest.mark.parametrize(
    ("language", "drawn", "by_hand"),
    [
        ("en", "Drawn: 1; reached: 0; not reached: 1 (unsafe 1", "Chosen by hand: 4; reached: 4"),
        ("es", "Por sorteo: 1; alcanzados: 0; no alcanzados: 1 (inseguros 1", "Elegidos a mano: 4; alcanzados: 4"),
    ],
    ids=["en", "es"],
)
def test_how_many_places_were_reached_is_printed(tmp_path, language, drawn, by_hand):
    rec = whole()
    rec["stations"]["s5"]["chosen"] = "drawn"
    text = read(sample_contents(rec, language=language, final=True), tmp_path)
    assert drawn in text and by_hand in text


def test_sheet_metal_is_printed_to_four_places(tmp_path):
    """24 MSG is 0.0239 in (Manufacturers' Standard Gauge for steel sheet, from memory); 95 % of it is 0.0227."""
    inputs = {"gauge": "24", "system": "MSG", "reading": q("0.02265", "in"), "coated": True}
    contents, _ = written("coil", recorded("thickness@1", inputs), {"value": q("0.02265", "in")})
    text = read(contents, tmp_path)
    assert "nominal 0.0239 in" in text and "minimum 0.0227 in" in text
    assert "Measured 0.02265 in" in text and "reading 0.02265 in" in text


def test_what_was_put_in_is_never_printed_coarser_than_it_was_recorded(tmp_path):
    """A shank of 3/16 in is 0.1875 in: printed as 0.188 the sum would not come out."""
    rec = whole()
    one = rec["answers"]["s1/nail-flange/slot"]
    one["verdict"]["inputs"] = one["verdict"]["inputs"] | {"shank": q("0.1875", "in"), "station": q("10.0625", "ft")}
    text = read(sample_contents(rec, final=True), tmp_path)
    assert "shank diameter 0.1875 in" in text and "place from the low end 10.0625 ft" in text


@pytest.mark.parametrize(
    ("language", "said"),
    [("en", "One critical finding is not settled."), ("es", "Un hallazgo crítico no está resuelto.")],
)
def test_the_cover_says_how_many_findings_are_critical(tmp_path, language, said):
    first = texts_of(lay_out(sample_contents(whole(), language=language, final=True))[0], tmp_path)[0]
    assert said in " ".join(first.split())
    rec = whole()
    del rec["findings"]["s2/nail-flange/spacing"]
    again = texts_of(lay_out(sample_contents(rec, language=language, final=True))[0], tmp_path)[0]
    assert said not in " ".join(again.split())


@pytest.mark.parametrize(
    ("inches", "units", "said"),
    [
        ("-0.05", "US", "Measured 0.05 in toward the eave"),
        ("0.25", "US", "Measured 0.25 in toward the ridge"),
        ("0", "US", "Measured 0 in from the middle"),
        ("-0.05", "SI", "Measured 1.3 mm (0.05 in) toward the eave"),
    ],
)
def test_a_tab_is_printed_with_the_side_it_stands_toward_and_no_sign(tmp_path, inches, units, said):
    rec = whole()
    one = rec["answers"]["s4/clip/tab"]
    one |= {"verdict": clip(inches), "reading": {"value": q(inches, "in")}}
    text = read(sample_contents(rec, final=True, units=units), tmp_path)
    assert said in text and "Measured −" not in text


def test_a_number_that_is_no_tab_keeps_its_sign(tmp_path):
    contents, _ = written("cold", recorded("limit@1", {"reading": q("-4", "F"), "at_least": q("-10", "F")}),
                          {"value": q("-4", "F")})  # fmt: skip
    assert "Measured −4 °F" in read(contents, tmp_path)


@pytest.mark.parametrize(("language", "one", "two"), [("en", "photo", "photos"), ("es", "foto", "fotos")])
def test_one_photo_is_not_called_photos(tmp_path, language, one, two):
    text = read(sample_contents(whole(), language=language, final=True), tmp_path)
    assert re.search(rf"· {one} \d+ ·", text) and re.search(rf"· {two} \d+, \d+", text)
    assert not re.search(rf"· {two} \d+ ·", text)


@pytest.mark.parametrize(
    ("language", "said"),
    [("en", "belong to this report alone"), ("es", "valen solo para este informe")],
)
def test_the_findings_say_that_their_numbers_belong_to_this_report(tmp_path, language, said):
    rec = whole()
    assert read(sample_contents(rec, language=language, final=True), tmp_path).count(said) == 1
    rec["findings"] = {}
    assert said not in read(sample_contents(rec, language=language, final=True), tmp_path)


def test_every_item_without_an_answer_is_named(tmp_path):
    contents = sample_contents(whole(), final=True)
    left = next(one for one in contents["not_seen"] if one["code"] == "items_not_answered")["facts"]
    whole_row = "the long row as it was approved by the engineer of record, to its last bolt and its washer?"
    asked = [f"Is part {n} of {whole_row}" for n in range(1, 31)]
    left |= {"count": 30, "questions": [{"en": one, "es": one} for one in asked]}
    text = read(contents, tmp_path)
    assert [n for n in range(1, 31) if f"Is part {n} of" not in text] == []
    assert text.count("washer?") == 30
