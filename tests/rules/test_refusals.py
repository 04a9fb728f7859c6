"""Whatever comes in, the rulebook answers with finite numbers or refuses by field; nothing else gets out."""

import json
import math
from pathlib import Path

import pytest

from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import RELEASED, describe, full_name, judge, names
from tests.rules.hostile import spoiled

ROOT = Path(__file__).parents[2]
VECTORS = json.loads((ROOT / "tests" / "vectors" / "rules.json").read_text("utf-8"))
WORDS = json.loads((ROOT / "static" / "words" / "rules.json").read_text("utf-8"))
CASES = spoiled(VECTORS)
LENGTH = {"value": "1", "unit": "ft"}


def q(value: str, unit: str) -> dict[str, str]:
    return {"value": value, "unit": unit}


def test_every_rule_is_attacked_in_every_input() -> None:
    assert {rule for rule, _ in CASES} == {f"{name}@{version}" for name in RELEASED for version in RELEASED[name]}
    assert len(CASES) > 3000


def _tells(value: object) -> bool:
    """A finite number, a word, or a list of whole numbers."""
    if isinstance(value, list):
        return all(type(one) is int for one in value)
    return value != "" if isinstance(value, str) else math.isfinite(value)


def test_a_spoiled_input_is_refused_by_field_or_judged_with_finite_numbers() -> None:
    refused_at: dict[str, list[str]] = {}
    for rule, inputs in CASES:
        try:
            found = judge(rule, inputs)
        except Refused as refused:
            assert refused.field.partition("[")[0].partition(".")[0] in describe(rule), (rule, inputs)
            assert f"refused.{refused.code}.way_out" in WORDS
            refused_at.setdefault(rule, []).append(refused.code)
            continue
        assert found["verdict"] in ("pass", "fail", "not_determinable", "too_close", None)
        assert all(_tells(value["value"]) for value in found["values"].values())
    assert len({code for codes in refused_at.values() for code in codes}) > 12  # it is not all one refusal


@pytest.mark.parametrize("name", names())
def test_what_a_rule_needs_is_named_when_it_is_missing(name: str) -> None:
    full = next(one["inputs"] for one in VECTORS if one["rule"] == full_name(name) and not one["refused"])
    for field, wants in describe(name).items():
        if wants["required"]:
            with pytest.raises(Refused) as refused:
                judge(name, {key: full[key] for key in full if key != field})
            assert (refused.value.code, refused.value.field) == ("missing", field)


def test_a_refusal_says_the_value_as_it_was_given() -> None:
    window = next(one["inputs"] for one in VECTORS if one["rule"] == "window@1")
    with pytest.raises(Refused) as refused:
        judge("window", {**window, "shank": {"value": "1.0", "unit": "in"}})
    assert (refused.value.code, refused.value.value) == ("shank_fills_slot", "1.0 in")


@pytest.mark.parametrize("name", ["", "windows", "window@2", "window@", "window@1@1", "@1", None, 7, ["window"]])
def test_a_rule_that_is_not_released_is_refused(name: object) -> None:
    with pytest.raises(Refused, match="unknown_rule"):
        judge(name, {})  # type: ignore[arg-type]


def test_a_system_that_is_none_is_refused() -> None:
    with pytest.raises(Refused, match="not_choice"):
        judge("movement", {"distance": LENGTH}, "metric")


def test_a_thousand_gaps_are_taken_and_more_are_refused() -> None:
    assert judge("spacing", {"gaps": [LENGTH] * 1000, "limit": LENGTH})["verdict"] == "pass"
    with pytest.raises(Refused, match="too_many"):
        judge("spacing", {"gaps": [LENGTH] * 1001, "limit": LENGTH})


def test_an_uncertainty_below_nothing_is_refused() -> None:
    with pytest.raises(Refused) as refused:
        judge("limit@1", {"reading": q("2", "in"), "at_least": q("1", "in"), "uncertainty": q("-0.5", "in")})
    assert (refused.value.code, refused.value.field, refused.value.value) == ("negative", "uncertainty", "-0.5 in")


@pytest.mark.parametrize("coating", ["0.03", "0.05"])
def test_a_coating_as_thick_as_the_whole_sheet_is_refused(coating: str) -> None:
    given = {"gauge": "24", "system": "MSG", "reading": q("0.03", "in"), "coating_thickness": q(coating, "in")}
    with pytest.raises(Refused) as refused:
        judge("thickness@1", given)
    assert (refused.value.code, refused.value.field) == ("out_of_range", "coating_thickness")
