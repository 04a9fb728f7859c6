"""The approved assembly, line by line, against what was looked at."""

from typing import Any

from inspect_app.report.item import find_item
from inspect_app.report.order import RESULTS

# As a reader of the approval goes down the sheet.
FIELDS = (
    "panel", "seam", "seam_height", "coverage", "metal", "gauge", "coating", "expansion", "attachment",
    "slot_length", "slot_width", "slot_pitch", "clip", "clip_seams", "clip_travel_outward", "clip_travel_inward",
    "fixed_clip_run", "fastener", "fastener_diameter", "fastener_head_diameter", "fastener_length",
    "fasteners_per_clip", "penetration", "fold_return", "fold_engagement", "tested_gauge", "deck", "underlayment",
    "minimum_slope", "longest_run",
)  # fmt: skip


def assemblies(record: dict[str, Any], definitions: dict[str, Any], answers: list[dict[str, Any]],
               ) -> list[dict[str, Any]]:  # fmt: skip
    """Each assembly: its approved lines with a tally of the answers that tested that very line, its zones,
    its approval, and a tally for each other item that rests on the approval."""
    return [_assembly(key, record, definitions, answers) for key in _in_use(record)]


def _in_use(record: dict[str, Any]) -> list[str]:
    return sorted(record["assemblies"], key=lambda key: (str(record["assemblies"][key].get("name")), key))


def _assembly(key: str, record: dict[str, Any], definitions: dict[str, Any], answers: list[Any]) -> dict[str, Any]:
    body = record["assemblies"][key]
    areas = [name for name, area in record["areas"].items() if area.get("assembly") == key]
    own = [answer for answer in answers if answer["area"] in areas]
    tested: dict[str, list[Any]] = {}
    others: dict[tuple[Any, Any], list[Any]] = {}
    for answer in own:
        fields = _fields(find_item(definitions, answer["definition"]["digest"], answer["item"]))
        for field in fields:
            tested.setdefault(field, []).append(answer)
        if not fields and answer["basis_kind"] == "assembly":
            others.setdefault((answer["definition"]["digest"], answer["item"]), []).append(answer)
    approval = body.get("approval") or {}
    return {
        "id": key,
        "digest": body.get("digest"),
        "name": body.get("name"),
        "areas": [record["areas"][name].get("name") for name in sorted(areas)],
        "lines": [
            {
                "field": field,
                "value": body[field],
                "note": _note(body, field),
                "found": tally(tested.get(field, [])),
            }
            for field in FIELDS
            if body.get(field) is not None
        ],
        "zones": [
            dict(zone) | {"found": tally([one for one in tested.get("zones", []) if one["zone"] == zone.get("name")])}
            for zone in body.get("zones") or []
        ],
        "others": [
            {"question": group[0]["question"], "item": item, "found": tally(group)}
            for (_, item), group in others.items()
        ],
        "approval": {name: approval.get(name) for name in ("reference", "issued", "expires")},
        "heads": len(body.get("heads") or []),
    }


def _note(body: dict[str, Any], field: str) -> str | None:
    notes = {"gauge": "gauge_system", "tested_gauge": "tested_gauge_system", "expansion": "expansion_source"}
    return body.get(notes.get(field, ""))


def _fields(item: dict[str, Any] | None) -> list[str]:
    paths = [path for path in (((item or {}).get("rule") or {}).get("inputs") or {}).values() if isinstance(path, str)]
    found = {path.split(".")[1] for path in paths if path.startswith("assembly.")}
    if any(path.startswith("zone.") for path in paths):
        found.add("zones")
    # The expansion enters every window, yet no look at a slot tests the metal's own coefficient.
    return sorted(found - {"expansion"})


def tally(answers: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """``[{"result", "count"}]``, the worst first, what was only written down last; empty when nobody looked."""
    judged = [answer["result"] for answer in answers if not answer["recorded"]]
    results = [result if result in RESULTS else "not_determinable" for result in judged]
    told = [{"result": one, "count": results.count(one)} for one in RESULTS if one in results]
    written = len(answers) - len(judged)
    return [*told, {"result": "recorded", "count": written}] if written else told
