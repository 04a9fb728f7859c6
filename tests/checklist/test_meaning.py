"""Combinations that would mislead: each is refused, and the nearest sound one is not."""

import pytest

from inspect_app.checklist.compile import Compiled, compile_text
from tests.checklist.sample import RULES, codes, problems, with_item

NUMBER = {"instrument": "number", "unit": {"US": "in", "SI": "mm"}}
LIMIT = {"name": "limit@1", "inputs": {"reading": "reading.value", "at_most": {"value": "2", "unit": "in"}}}
MEASURE = {"kind": "measure", **NUMBER, "rule": LIMIT}
SLOPE = {"name": "slope@1", "inputs": {"slope": "area.slope", "minimum": "assembly.minimum_slope"}}
TAPS = {"name": "slot@1", "inputs": {
    "taps": "reading.taps", "expansion": "assembly.expansion", "metal_low": "job.metal_low",
    "metal_high": "job.metal_high", "metal_now": "walk.metal_temperature", "slot": "assembly.slot_length",
    "shank": "assembly.fastener_diameter", "station": "station.from_low_end", "length": "area.panel_length",
}}  # fmt: skip


@pytest.mark.parametrize(
    ("changed", "code"),
    [
        ({"kind": "measure"}, "instrument_for_kind"),
        ({"kind": "count", **NUMBER}, "instrument_for_kind"),
        ({"kind": "note", "severity": "record", "photo": "optional", "instrument": "choice"}, "instrument_for_kind"),
        ({"instrument": "number"}, "instrument_for_kind"),
        ({**MEASURE, "instrument": "slot_taps", "unit": ...}, "taps_without_slot"),
        ({"rule": LIMIT}, "rule_for_kind"),
        ({**MEASURE, "unit": ...}, "unit_missing"),
        ({"unit": {"US": "in", "SI": "mm"}}, "unit_unused"),
        ({**MEASURE, "unit": {"US": "in", "SI": "C"}}, "unit_mixed"),
        ({"severity": "critical", "basis_kind": "assembly", "photo": "optional"}, "critical_photo"),
        ({"severity": "critical"}, "critical_common_practice"),
        ({"severity": "critical", "basis_kind": "assembly", "quick": True}, "not_quick"),
        ({"photo": "required", "quick": True}, "not_quick"),
        ({**MEASURE, "quick": True}, "not_quick"),
        ({"severity": "record", "photo": "optional"}, "record_judged"),
        ({**MEASURE, "severity": "record", "photo": "optional"}, "record_judged"),
        ({**MEASURE, "rule": ...}, "unjudged"),
        ({"kind": "note"}, "unjudged"),
        ({"kind": "note", "severity": "record"}, "photo_never"),
        ({**MEASURE, "rule": {"name": "slope@1", "inputs": {"slope": "area.slope"}}}, "reading_unused"),
        ({**MEASURE, "rule": {"name": "movement@1", "inputs": {
            "distance": "area.panel_length", "expansion": "assembly.expansion"}}}, "unjudged"),
        ({"kind": "compute"}, "rule_needed"),
        ({"kind": "compute", "instrument": "choice", "rule": SLOPE}, "instrument_for_kind"),
        ({"kind": "compute", "rule": LIMIT}, "unknown_path"),
        ({"kind": "compute", "rule": {"name": "movement@1", "inputs": {
            "distance": "area.run", "expansion": "assembly.expansion"}}}, "unjudged"),
    ],
)  # fmt: skip
def test_a_combination_that_misleads_is_refused(changed, code):
    assert code in codes(problems(with_item(0, **changed)))


@pytest.mark.parametrize(
    "changed",
    [
        {"quick": True},
        {"instrument": "choice"},
        {"photo": "required"},
        {"severity": "critical", "basis_kind": "assembly"},
        {"severity": "critical", "basis_kind": "published", "photo": "required"},
        {"kind": "note", "severity": "record", "photo": "required"},
        MEASURE,
        {**MEASURE, "rule": ..., "severity": "record", "photo": "optional"},
        {"kind": "measure", "instrument": "slot_taps", "rule": TAPS},
        {"kind": "count", "instrument": "count", "severity": "record", "photo": "optional"},
        {"kind": "compute", "rule": SLOPE},
    ],
)
def test_a_sound_combination_compiles(changed):
    assert isinstance(compile_text(with_item(0, **changed), RULES), Compiled)
