"""A wear mark's verdict, recorded in a warranty survey, is judged again from its own inputs as every other is."""

from typing import Any

import pytest

from inspect_app.evidence.entries import entry_facts
from inspect_app.rules.rulebook import judge
from tests.bodies import body_of
from tests.evidence.drawn import Site
from tests.evidence.record import files
from tests.phone import new_uuid

INPUTS = {
    "mark": {"value": "0.5", "unit": "in"}, "uncertainty": {"value": "0.0625", "unit": "in"},
    "expansion": {"value": "6.5e-6", "unit": "/F"}, "distance": {"value": "40", "unit": "ft"},
    "metal_low": {"value": "-20", "unit": "F"}, "metal_high": {"value": "180", "unit": "F"},
}  # fmt: skip


def verdict() -> dict[str, Any]:
    """As a phone records it."""
    found = judge("wear@1", INPUTS)
    values = {name: {"value": str(one["value"]), "unit": one["unit"]} for name, one in found["values"].items()}
    return {"result": "not_applicable", "rule": "wear@1", "rulebook": "", "inputs": INPUTS, "values": values,
            "reason": {"code": found["reason"]["code"], "facts": {}}}  # fmt: skip


def fact(**changed: Any) -> str:
    site = Site()
    wear = body_of("survey")["wear"] | {"verdict": verdict() | changed}
    site.say(site.chief, "survey", new_uuid(), {"area": site.area, "wear": wear})
    made = site.made()
    return next(one.status for one in entry_facts(files(made), made.contents) if one.name == "verdicts_recompute")


def test_a_wear_mark_as_the_rule_gives_it_holds():
    assert verdict()["reason"]["code"] == "wear_shorter" and fact() == "holds"


@pytest.mark.parametrize("changed", [
    {"reason": {"code": "wear_longer", "facts": {}}}, {"reason": None}, {"result": "fail"},
    {"values": {"movement": {"value": "0.2", "unit": "in"}}},
])  # fmt: skip
def test_a_wear_mark_that_its_rule_does_not_give_is_found(changed: dict[str, Any]):
    assert fact(**changed) == "fails"
