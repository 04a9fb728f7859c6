"""An item's rule: known, fully fed, and from places where such a thing is recorded."""

import json

import pytest

from inspect_app.checklist.paths import PATHS, READINGS
from inspect_app.entry.kinds import check_body
from inspect_app.record.area import from_high_end, longest_run, panel_count, panel_length
from inspect_app.record.instruments import instruments
from tests.bodies import body_of
from tests.checklist.sample import RULES, problems, sample, with_item


def found(name, inputs, **changed):
    told = problems(with_item(1, rule={"name": name, "inputs": inputs}, **changed))
    return [(one.field.removeprefix("items[1]."), one.code) for one in told]


GAPS = {"gaps": "reading.gaps"}


@pytest.mark.parametrize(
    ("limit", "code"),
    [
        ("zon.spacing", "unknown_root"),
        ("zone.spacng", "unknown_path"),
        ("reading.value", "unknown_path"),
        ("assembly.gauge", "wrong_dimension"),
        ("job.metal_low", "wrong_dimension"),
        ("wide", "wrong_dimension"),
        (True, "wrong_dimension"),
        (12, "wrong_dimension"),
        ({"value": "12", "unit": "F"}, "wrong_dimension"),
        ({"value": "12", "unit": "inch"}, "bad_quantity"),
        ({"value": "1e3", "unit": "in"}, "bad_quantity"),
        ({"value": ".5", "unit": "in"}, "bad_quantity"),
    ],
)
def test_an_input_from_nowhere_or_of_another_kind_is_refused(limit, code):
    assert found("spacing@1", {**GAPS, "limit": limit}) == [("rule.inputs.limit", code)]


def test_a_rule_or_version_that_the_rulebook_lacks_is_answered_with_those_it_has():
    (told,) = problems(with_item(1, rule={"name": "spacing@9", "inputs": GAPS}))
    assert told.code == "unknown_rule_version"
    assert told.facts["allowed"] == ", ".join(sorted(one for one in RULES if one.startswith("spacing@")))
    (told,) = problems(with_item(1, rule={"name": "space@1", "inputs": GAPS}))
    assert told.code == "unknown_rule" and "slot@1" in told.facts["allowed"]


def test_each_missing_and_each_unknown_input_is_told():
    assert found("spacing@1", {**GAPS, "limt": "zone.spacing"}) == [
        ("rule.inputs", "missing_input"),
        ("rule.inputs.limt", "unknown_input"),
    ]


def test_a_word_must_be_one_that_the_rule_knows():
    inputs = {"gauge": "assembly.gauge", "system": "XYZ", "reading": "reading.value"}
    told = found("thickness@1", inputs, instrument="number")
    assert told == [("rule.inputs.system", "choice")]


def test_a_whole_walk_has_no_station_and_no_zone():
    data = sample()
    data["per"] = "walk"
    assert [one.code for one in problems(json.dumps(data))] == ["no_station"]


def test_every_path_of_the_table_lies_in_a_body_that_intake_accepts():
    bodies = {kind: body_of(kind) for kind in ("job", "assembly", "area", "walk", "station")}
    length = {"value": "1", "unit": "in"}
    for name in ("slot_length", "slot_pitch", "clip_travel_outward", "clip_travel_inward", "fastener_length"):
        bodies["assembly"].setdefault(name, length)
    bodies["assembly"] |= {"fastener_head_diameter": length, "fasteners_per_clip": 2}
    for name in ("slot_width", "fold_return", "fold_engagement", "penetration", "fixed_clip_run"):
        bodies["assembly"][name] = length
    bodies["assembly"] |= {"tested_gauge": "24", "tested_gauge_system": "MSG"}
    bodies["job"] |= {"acceptance": "guarded", "instruments": instruments({})}
    bodies["assembly"]["zones"][0].setdefault("pressure", {"value": "30", "unit": "psf"})
    bodies["area"]["fixed_line"] = {"from_low_end": length, "by": "a row of screws", "fasteners": 3}
    bodies["walk"] |= {"head_count": 4}
    bodies["walk"]["weather"]["air"] = {"value": "60", "unit": "F"}
    for kind, body in bodies.items():
        check_body(kind, body)
    bodies["area"] |= {
        "panel_length": panel_length(bodies["area"]),
        "panel_count": panel_count(bodies["area"], bodies["assembly"]),
        "run": longest_run(bodies["area"]),
    }
    bodies["area"]["fixed_line"]["from_high_end"] = from_high_end(bodies["area"])
    bodies["zone"] = bodies["assembly"]["zones"][0]
    absent = []
    for path in PATHS:
        value = bodies
        for step in path.split("."):
            value = value.get(step) if isinstance(value, dict) else None
        if value is None:
            absent.append(path)
        elif isinstance(value, dict):
            assert set(value) == {"value", "unit"}, path
    assert absent == [], "never recorded, or missing from the sample bodies"


def test_every_instrument_leaves_something_to_read():
    assert all(READINGS.values())
