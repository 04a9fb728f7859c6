"""The JSON Schema of a definition, made from the marshmallow schema: the two cannot say different things."""

import json
from typing import Any

from apispec import APISpec
from apispec.ext.marshmallow import MarshmallowPlugin

from inspect_app.checklist.schema import Definition

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def json_schema() -> dict[str, Any]:
    """A document of the 2020-12 dialect. It holds the shape; ``seamwalk checklist check`` knows the rest."""
    plugin = MarshmallowPlugin(schema_name_resolver=_name)
    spec = APISpec(title="", version="", openapi_version="3.1.0", plugins=[plugin])
    spec.components.schema("Definition", schema=Definition)
    parts = json.loads(json.dumps(spec.components.schemas).replace("#/components/schemas/", "#/$defs/"))
    return {
        "$schema": DIALECT,
        "title": "Seamwalk checklist definition",
        "$ref": "#/$defs/Definition",
        "$defs": parts,
    }


def schema_text() -> str:
    """The document as it lies in ``checklists/schema.json``."""
    return json.dumps(json_schema(), indent=2, sort_keys=True, ensure_ascii=False) + "\n"


def _name(schema: Any) -> str:
    return schema.__name__ if isinstance(schema, type) else type(schema).__name__
