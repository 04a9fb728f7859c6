"""A verdict is of the reading signed beside it, by the rule that its checklist asks."""

import json
from itertools import product
from pathlib import Path

import pytest

from inspect_app.again.checklists import checklists
from inspect_app.again.inputs import _other, inputs_fact
from inspect_app.checklist.load import load_all
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN
from inspect_app.evidence.signed_record import read_record
from inspect_app.evidence.verify import Looked, Verification
from inspect_app.record.judge import judge_item
from tests.evidence.drawn import Site
from tests.evidence.packed import DEFINITION, NAMED
from tests.evidence.record import counted, files
from tests.phone import new_uuid

WALK = new_uuid()
SUBJECT = f"{WALK}/nail_flange/item_1"
HERE = checklists({}, [DEFINITION])


def fact(reading, change=lambda verdict: None, here=HERE):
    """The fact of one answer with this reading, its verdict of a count of 3 ``change``d."""
    site, body = Site(), counted(SUBJECT, 3, "fail")
    change(body["verdict"])
    site.say(site.foreman, "walk", WALK, {"definition": NAMED, "areas": [site.area]})
    site.say(site.foreman, "answer", SUBJECT, body | {"definition": NAMED, "reading": reading})
    record = read_record(files(site.made()))
    return inputs_fact(Looked(Verification([], [], None), {}, None, record), here)


@pytest.mark.parametrize("reading", [{"count": 3}, {"count": "3"}, {"count": 3, "of": 9}])
def test_what_the_reading_says_holds_however_its_number_is_written(reading):
    assert fact(reading).status == HOLDS


@pytest.mark.parametrize("reading", [{"count": 4}, {"count": "33"}, {"of": 3}, None, {"count": True}, {"count": [3]},
                                     {"count": {"value": "3"}}])  # fmt: skip
def test_another_reading_or_none_is_found(reading):
    found = fact(reading)
    assert (found.status, found.reason, found.about["input"]) == (FAILS, "other_input", "reading")


def test_another_rule_than_the_checklist_s_is_found_and_a_later_version_of_it_is_not():
    assert fact({"count": 3}, lambda verdict: verdict.update(rule="plate@1")).about["input"] == "rule"
    assert fact({"count": 3}, lambda verdict: verdict.update(rule="limit@2")).status == HOLDS


def test_an_unknown_whose_inputs_were_left_out_claims_nothing():
    def left_out(verdict):
        verdict.update(result="not_determinable", inputs={}, values={})

    assert fact(None, left_out).status == HOLDS
    assert fact({"count": 3}, lambda verdict: verdict.update(inputs={})).status == FAILS, "it is said to have failed"


def test_another_limit_than_the_item_s_and_an_input_that_it_does_not_ask_for_are_found():
    def laxer(verdict):
        verdict.update(inputs=verdict["inputs"] | {"at_most": 5}, result="pass")

    assert fact({"count": 3}, laxer).about["input"] == "at_most"
    assert fact({"count": 3}, lambda verdict: verdict["inputs"].update(at_least=1)).about["input"] == "at_least"
    assert fact({"count": 3}, lambda verdict: verdict["inputs"].pop("at_most")).about["input"] == "at_most"


VALUES = (None, {"value": "1", "unit": "in"}, 3)  # of a reading; None: nobody told


def judged(item, told, roof):
    """As a phone judges and records it; ``roof``: what stands at every path that is not the reading's."""
    context = {}
    for path in filter(lambda one: isinstance(one, str) and "." in one, item["rule"]["inputs"].values()):
        value = told.get(path) if path in told else roof
        held, steps = context, path.split(".")
        for step in steps[:-1]:
            held = held.setdefault(step, {})
        if value is not None:
            held[steps[-1]] = value
    found = judge_item(item, context)
    return {"reading": context.get("reading"),
            "verdict": {"rule": found["rule"], "result": found["verdict"], "inputs": found["inputs"]}}  # fmt: skip


def test_whatever_a_phone_honestly_judges_by_our_checklists_holds_also_where_something_is_missing():
    checklists_of = load_all(Path(__file__).parents[2] / "checklists").by_digest.values()
    items = [item for one in checklists_of for item in one.definition["items"] if item.get("rule")]
    results = set()
    for item in items:
        paths = sorted({one for one in item["rule"]["inputs"].values() if str(one).startswith("reading.")})
        for values, roof in product(list(product(VALUES, repeat=len(paths)))[:81], VALUES):
            body = judged(item, dict(zip(paths, values, strict=True)), roof)
            results.add(body["verdict"]["result"])
            assert _other(body, item) is None, (item["id"], body)
    assert {"pass", "fail", "not_determinable"} <= results


def test_without_the_item_nobody_can_tell_and_a_strange_checklist_breaks_nothing():
    assert fact({"count": 3}, here={}).reason == "item_gone"
    assert fact({"count": 3}, here={NAMED: {"items": [{"id": "item_9"}]}}).status == UNKNOWN
    strange = json.loads(DEFINITION) | {"items": [7]}
    assert fact({"count": 3}, here={NAMED: strange}).reason == "checklist_strange"
    assert checklists({"definitions.txt": b"7\n[]\nnull\n{\n\xff\n"}, [b""]) == {}
