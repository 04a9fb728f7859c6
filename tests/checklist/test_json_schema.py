"""The published JSON Schema is the one that the marshmallow schema says."""

import json

from inspect_app.checklist.json_schema import json_schema, schema_text
from inspect_app.checklist.schema import Item
from inspect_app.settings import shipped


def test_the_published_file_is_up_to_date():
    assert (shipped("checklists") / "schema.json").read_text("utf-8") == schema_text()


def test_it_refuses_unknown_fields_and_names_the_required_ones():
    parts = json_schema()["$defs"]
    assert all(part["additionalProperties"] is False for part in parts.values())
    optional = {"quick", "applies", "instrument", "unit", "step", "rule"}
    assert set(parts["Item"]["required"]) == set(Item().fields) - optional
    assert parts["Item"]["properties"]["severity"]["enum"] == ["critical", "major", "minor", "record"]


def test_every_reference_leads_somewhere():
    text = json.dumps(json_schema())
    names = set(json_schema()["$defs"])
    assert {part.split('"')[0] for part in text.split("#/$defs/")[1:]} <= names
    assert "components" not in text
