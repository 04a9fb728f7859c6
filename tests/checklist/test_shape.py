"""The shape of a definition: missing, unknown and ill-formed fields."""

import pytest

from inspect_app.checklist.schema import Definition, Item
from tests.checklist.sample import codes, problems, sample, spoil, with_item

OPTIONAL = {"quick", "applies", "instrument", "unit", "step", "rule"}


@pytest.mark.parametrize("name", sorted(set(Item().fields) - OPTIONAL))
def test_an_item_without_a_required_field_is_told_which(name):
    found = problems(with_item(0, **{name: ...}))
    assert [(one.code, one.field, one.facts["name"]) for one in found] == [("required", f"items[0].{name}", name)]


@pytest.mark.parametrize("name", sorted(set(Definition().fields) - {"applies", "causes"}))
def test_a_definition_without_a_required_field_is_told_which(name):
    import json

    data = sample()
    del data[name]
    assert [(one.code, one.field) for one in problems(json.dumps(data))] == [("required", name)]


@pytest.mark.parametrize("name", ["question", "why", "how", "basis"])
@pytest.mark.parametrize("language", ["en", "es"])
def test_a_text_in_one_language_only_is_told_as_such(name, language):
    found = problems(with_item(0, **{name: {language: "x"}}))
    other = "es" if language == "en" else "en"
    assert [(one.code, one.field) for one in found] == [("missing_language", f"items[0].{name}.{other}")]


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("version: 3", 'version: "3"', "not_number"),
        ("version: 3", "version: true", "not_number"),
        ("version: 3", "version: 0", "bad_version"),
        ("hold: false", "hold: no", "not_flag"),
        ("hold: false", "hold: 0", "not_flag"),
        ("id: sample-check", "id: Sample", "bad_id"),
        ("id: sample-check", 'id: "sample-check\\n"', "bad_id"),
        ("id: straight", "id: is-straight", "bad_item_id"),
        ("performed_by: [foreman]", "performed_by: []", "empty"),
        ("performed_by: [foreman]", "performed_by: foreman", "not_list"),
        ("performed_by: [foreman]", "performed_by: [foreman, foreman]", "repeated_value"),
        ("performed_by: [foreman]", "performed_by: [roofer]", "choice"),
        ("sampling: null", "sampling: {level: II, aql: '2.6', critical: zero_acceptance}", "choice"),
        ("en: Look.", "en: ' '", "blank"),
        ("en: Look.", 'en: "Look.\\n"', "blank"),
        ("en: Look.", "en: 7", "not_text"),
        ("en: Is it straight?", f"en: {'x' * 81}", "too_long"),
        ("how:", "howto:", "misspelt_field"),
        ("kind: judge", "kind: judge\n    weight: 5", "unknown_field"),
        ("sampling: null", "sampling: null\ncauses: []", "cause_count"),
        ("sampling: null", "sampling: null\ncauses: [{code: Hurry, en: Hurry, es: Prisa}]", "bad_cause_code"),
        ("sampling: null", "sampling: null\ncauses: [{code: hurry, en: Hurry, es: ' '}]", "blank"),
        ("sampling: null", "sampling: null\ncauses: [{code: hurry, en: Hurry}]", "missing_language"),
        ("sampling: null", f"sampling: null\ncauses: [{', '.join(2 * ['{code: a, en: A, es: B}'])}]", "repeated_value"),
        ("name: spacing@1", "name: spacing", "rule_name"),
        ("limit: zone.spacing", "limit: [1]", "input_shape"),
        ("limit: zone.spacing", "limit: {value: 7, unit: in}", "input_shape"),
    ],
)
def test_an_ill_formed_field_is_named_for_what_is_wrong_with_it(old, new, code):
    assert code in codes(spoil(old, new))


def test_a_misspelt_field_is_answered_with_the_right_name():
    found = spoil("severity: major", "severty: major")
    assert ("misspelt_field", "severity") in [(one.code, one.facts.get("near")) for one in found]
