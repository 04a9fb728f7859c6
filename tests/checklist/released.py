"""The released definitions, and an invented place to judge them at: the demonstration's job, the metal at 70 °F."""

from pathlib import Path
from typing import Any

from inspect_app.checklist.load import load_all
from inspect_app.intake.job_file import read_yaml
from inspect_app.record.area import from_high_end, panel_length
from inspect_app.record.instruments import instruments
from inspect_app.settings import shipped

LOADED = load_all(shipped("checklists"))
SCENARIO = read_yaml((Path(shipped("demo")) / "scenario.yaml").read_text("utf-8"))
DEFINITIONS = {(one.definition["id"], one.definition["version"]): one.definition for one in LOADED.by_digest.values()}
NEWEST = {name: DEFINITIONS[name, max(n for one, n in DEFINITIONS if one == name)] for name, _ in DEFINITIONS}
ITEMS = [(f"{name}-{n}", item) for (name, n), one in sorted(DEFINITIONS.items()) for item in one["items"]]
COMPUTED = [(name, item) for name, item in ITEMS if item["rule"]]


def named(pair: tuple[str, Any]) -> str:
    return f"{pair[0]}/{pair[1]['id']}"


def find(definition: str, item: str) -> dict[str, Any]:
    """``find("clip-fastening-2", "hook")``: that item of that version."""
    name, _, version = definition.rpartition("-")
    (found,) = [one for one in DEFINITIONS[name, int(version)]["items"] if one["id"] == item]
    return found


def q(value: str, unit: str = "in") -> dict[str, str]:
    return {"value": value, "unit": unit}


def context(area: str, reading: dict[str, Any]) -> dict[str, Any]:
    """As far from the fixed line as the roof allows; ``reading`` with the metal of two minutes ago."""
    body = dict(SCENARIO["areas"][area])
    assembly = SCENARIO["assemblies"][body["assembly"]]
    body["panel_length"] = panel_length(body)
    body["fixed_line"] = {**body["fixed_line"], "from_high_end": from_high_end(body)}
    metal = {"metal_temperature": q("70", "F"), "metal_uncertainty": q("2", "dF")}
    return {
        "job": {**SCENARIO["job"], "instruments": instruments(SCENARIO["job"])}, "assembly": assembly, "area": body,
        "walk": metal,
        "station": {"from_low_end": q("0" if area == "quay" else "100", "ft"), "zone": "field", "panel": 3},
        "reading": {**metal, "metal_age": 120, **reading},
    }  # fmt: skip
