"""The released definitions: frozen, whole, safe to stand on a roof with, and judged by the rulebook."""

import json
import re
from pathlib import Path

import pytest

from inspect_app.checklist.load import load_all
from inspect_app.intake.job_file import read_yaml
from inspect_app.record.area import panel_length
from inspect_app.record.judge import judge_item
from inspect_app.settings import shipped

FROZEN = json.loads((Path(__file__).parent.parent / "vectors" / "definitions.json").read_text("utf-8"))
LOADED = load_all(shipped("checklists"))
SCENARIO = read_yaml((Path(shipped("demo")) / "scenario.yaml").read_text("utf-8"))
DEFINITIONS = {one.definition["id"]: one.definition for one in LOADED.by_digest.values()}
ITEMS = [(name, item) for name, one in sorted(DEFINITIONS.items()) for item in one["items"]]
COMPUTED = [(name, item) for name, item in ITEMS if item["rule"]]
SOURCES = [source for _, item in COMPUTED for source in item["rule"]["inputs"].values()]
PATHS = sorted({one for one in SOURCES if isinstance(one, str) and not one.startswith("reading.")})


def named(pair):
    return f"{pair[0]}/{pair[1]['id']}"


def test_no_released_version_ever_changes():
    """A change of these files is a new version; only then is a line added to the vectors."""
    assert LOADED.problems == {}
    frozen = {(one["id"], one["version"]): one["digest"] for one in FROZEN}
    assert LOADED.by_version == frozen
    for one in FROZEN:
        assert LOADED.by_digest[one["digest"]].data.decode() == one["compiled"]


@pytest.mark.parametrize(("name", "item"), ITEMS, ids=map(named, ITEMS))
def test_a_question_fits_a_phone_in_the_sun_and_texts_stay_short(name, item):
    for language in ("en", "es"):
        assert len(item["question"][language]) <= 70
        assert len(item["why"][language]) <= 220
        assert len(item["how"][language]) <= 320
        assert not re.search(r"step back to|dé un paso atrás para", item["how"][language])


@pytest.mark.parametrize(("name", "item"), ITEMS, ids=map(named, ITEMS))
def test_what_voids_rests_on_the_approval_or_a_published_source_and_common_practice_says_so(name, item):
    if item["severity"] == "critical":
        assert item["basis_kind"] in ("assembly", "published")
        assert item["photo"] in ("required", "on_fail")
    if item["basis_kind"] == "common_practice":
        assert item["basis"]["en"].startswith("Common practice, no published source")
        assert item["basis"]["es"].startswith("Práctica común, sin fuente publicada")


@pytest.mark.parametrize("name", sorted(DEFINITIONS))
def test_the_cautions_name_every_danger_in_both_languages(name):
    english = " ".join(one["en"] for one in DEFINITIONS[name]["cautions"])
    spanish = " ".join(one["es"] for one in DEFINITIONS[name]["cautions"])
    for word in ("Falls", "step back", "120 °F", "140 °F", "wet", "Wind", "10 ft", "Cut edges", "unsafe"):
        assert word in english
    for word in ("Caídas", "paso atrás", "49 °C", "60 °C", "mojado", "Viento", "3 m", "Bordes", "inseguro"):
        assert word in spanish


@pytest.mark.parametrize("attachment", ["nail_flange", "fixed_clip", "expansion_clip"])
def test_a_clean_station_takes_eight_answers_at_most(attachment):
    """One for each item that is looked at by itself, and one press for all quick ones."""
    (name,) = [
        name for name, one in DEFINITIONS.items()
        if one["per"] == "station" and attachment in one["applies"]["attachment"]
    ]  # fmt: skip
    items = DEFINITIONS[name]["items"]
    asked = [one for one in items if attachment in one["applies"].get("attachment", [attachment])]
    alone = [item for item in asked if not item["quick"]]
    assert len(alone) + 1 <= 8
    assert len(asked) - len(alone) >= 4


def context(area: str, reading: dict) -> dict:
    """The invented job of the demonstration, at a place with the metal at 70 °F."""
    body = dict(SCENARIO["areas"][area])
    assembly = SCENARIO["assemblies"][body["assembly"]]
    body["panel_length"] = panel_length(body)
    low = "0" if area == "quay" else "100"  # both are as far from the fixed line as the roof allows
    return {
        "job": SCENARIO["job"], "assembly": assembly, "area": body,
        "walk": {"metal_temperature": {"value": "70", "unit": "F"}, "metal_uncertainty": {"value": "2", "unit": "dF"}},
        "station": {"from_low_end": {"value": low, "unit": "ft"}, "zone": "field", "panel": 3},
        "reading": reading,
    }  # fmt: skip


def q(value: str, unit: str = "in") -> dict:
    return {"value": value, "unit": unit}


CENTRED = {"ridge_end": ["100", "50"], "eave_end": ["1100", "50"], "screw": ["590", "50"]}
OFF = {"ridge_end": ["100", "50"], "eave_end": ["1100", "50"], "screw": ["250", "50"]}
# Slot: 40 ft of steel, window -0.0618 to +0.1242 in toward the free end (the eave). Tab: 100 ft, aim -0.078 in.
CASES = [
    ("nail-flange-fastening", "spacing", "quay", {"gaps": [q("11.5"), q("12")]}, "pass"),
    ("nail-flange-fastening", "spacing", "quay", {"gaps": [q("12.5"), q("11")]}, "fail"),
    ("nail-flange-fastening", "spacing", "quay", {"count": 11, "over": q("10", "ft")}, "not_determinable"),
    ("nail-flange-fastening", "slot_place", "quay", {"taps": CENTRED}, "pass"),
    ("nail-flange-fastening", "slot_place", "quay", {"taps": OFF}, "fail"),
    ("nail-flange-fastening", "slot_place", "quay", {"end_hidden": "ridge"}, "fail"),
    ("nail-flange-fastening", "slot_place", "quay", {"third": "middle"}, "too_close"),
    ("clip-fastening", "spacing", "yard", {"gaps": [q("24"), q("23")]}, "pass"),
    ("clip-fastening", "spacing", "yard", {"gaps": [q("25")]}, "fail"),
    ("clip-fastening", "fasteners_per_clip", "yard", {"count": 2}, "pass"),
    ("clip-fastening", "fasteners_per_clip", "yard", {"count": 1}, "fail"),
    ("clip-fastening", "tab_place", "yard", {"value": q("-0.08")}, "pass"),
    ("clip-fastening", "tab_place", "yard", {"value": q("0.75")}, "fail"),
    ("end-of-day-walk", "hem_gap", "quay", {"value": q("0.5")}, None),
    ("end-of-day-walk", "coil_thickness", "quay", {"value": q("0.0200")}, "fail"),
    ("end-of-day-walk", "coil_thickness", "quay", {"value": q("0.0260")}, "not_determinable"),
    ("end-of-day-walk", "slope", "quay", {"value": q("4", "/12")}, "pass"),
    ("end-of-day-walk", "slope", "quay", {"value": q("2.5", "/12")}, "fail"),
]


@pytest.mark.parametrize(("name", "item", "area", "reading", "verdict"), CASES)
def test_every_computed_item_is_judged_from_the_record(name, item, area, reading, verdict):
    (found,) = [one for one in DEFINITIONS[name]["items"] if one["id"] == item]
    answer = judge_item(found, context(area, reading))
    assert answer["verdict"] == verdict, answer
    assert not answer["reason"] or answer["reason"]["code"] not in ("missing_input", "missing"), answer


def test_no_computed_item_is_left_without_a_case():
    assert {(name, item["id"]) for name, item in COMPUTED} == {(name, item) for name, item, *_ in CASES}


def test_the_hem_gap_is_shown_beside_the_shrink_still_to_come():
    (item,) = [one for one in DEFINITIONS["end-of-day-walk"]["items"] if one["id"] == "hem_gap"]
    answer = judge_item(item, context("quay", {"value": q("0.5")}))
    assert answer["values"]["movement"]["value"] == pytest.approx(6.5e-6 * 480 * 90)  # 0.2808 in, first principles


@pytest.mark.parametrize("path", PATHS)
def test_every_path_leads_to_something_in_the_record(path):
    places = [context(area, {}) for area in ("quay", "yard")]
    for place in places:
        place["zone"] = place["assembly"]["zones"][0]
    values = []
    for value in places:
        for step in path.split("."):
            value = (value or {}).get(step)
        values.append(value)
    assert any(value is not None for value in values)


def test_an_area_without_a_fixed_line_is_no_pass_for_the_hem_and_still_a_verdict_for_the_slot():
    place = context("quay", {"value": q("0.5"), "taps": OFF})
    place["area"]["fixed_line"] = None
    (hem,) = [one for one in DEFINITIONS["end-of-day-walk"]["items"] if one["id"] == "hem_gap"]
    (slot,) = [one for one in DEFINITIONS["nail-flange-fastening"]["items"] if one["id"] == "slot_place"]
    assert judge_item(hem, place)["verdict"] == "not_determinable"
    assert judge_item(slot, place)["verdict"] == "fail"
