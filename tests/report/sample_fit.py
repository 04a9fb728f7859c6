"""An invented fit check of the quay slope: a run too long for its slot, much that passes, much that nobody measured."""

import json
from typing import Any

from inspect_app.record.fit import fit
from tests.report.sample_ground import FOREMAN, base, digest, q

FOUND = {
    "slope": q("4", "/12"), "slope_by": "level", "deck": "as_approved", "underlayment": "other", "gauge": "24",
    "gauge_system": "MSG", "clearance": q("0.75", "in"), "metal_now": q("66", "F"), "fixed_lines": 1,
}  # fmt: skip
DAY = "2026-11-25"


def textual(value: Any) -> Any:
    """As an entry carries it: no floats, every number decimal text."""
    return json.loads(json.dumps(value), parse_float=str)


def lines_of(rec: dict[str, Any], area: str, found: dict[str, Any] = FOUND) -> list[dict[str, Any]]:
    """What a phone records of a check of this area."""
    own = rec["areas"][area]
    told = fit(rec["job"], rec["assemblies"][own["assembly"]], own, found, DAY)
    return [
        {"line": one["line"], "verdict": {
            "result": one["verdict"] or "not_applicable", "rule": one["rule"],
            "rulebook": "R" * 43 if one["rule"] else "",
            "reason": textual(one["reason"]), "inputs": textual(one["inputs"]), "values": textual(one["values"]),
        }} for one in told
    ]  # fmt: skip


def checked(rec: dict[str, Any], area: str, minute: int = 1, **more: Any) -> dict[str, Any]:
    """The folded fit check of an area."""
    made = base(f"fit {area}", minute)
    version = {"digest": made["digest"], "by": FOREMAN, "at": made["at"], "result": "fail"}
    return made | {
        "id": area, "area": area, "day": DAY, "found": FOUND, "lines": lines_of(rec, area), "result": "fail",
        "name": "Tomas Ridgeway (invented)", "role": "foreman", "note": "Asked the engineer about the joint.",
        "heads": [digest(f"fit {area}")], "versions": [version],
    } | more  # fmt: skip
