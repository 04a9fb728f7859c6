"""The demonstration's fit checks: what the foreman found on the invented roof before work, against the approval."""

from typing import Any

from inspect_app.demo.phone import Phone
from inspect_app.demo.walk import in_strings
from inspect_app.record.fit import fit

FOUND: dict[str, dict[str, Any]] = {
    "quay": {
        "slope": {"value": "4", "unit": "/12"}, "slope_by": "level", "deck": "as_approved",
        "underlayment": "as_approved", "gauge": "24", "gauge_system": "MSG",
        "fold_gap": {"value": "0.4375", "unit": "in"}, "clearance": {"value": "0.5", "unit": "in"},
        "metal_now": {"value": "66", "unit": "F"}, "metal_now_by": "contact", "fixed_lines": 1,
        "build_up": {"value": "0.06", "unit": "in"},
    },
    "yard": {
        "slope": {"value": "1", "unit": "/12"}, "slope_by": "level", "deck": "as_approved",
        "underlayment": "as_approved", "gauge": "24", "gauge_system": "MSG", "fixed_lines": 1,
        "fold_gap": {"value": "0.8125", "unit": "in"}, "metal_now": {"value": "66", "unit": "F"},
        "metal_now_by": "contact",
    },
}  # fmt: skip
FOUND |= dict.fromkeys(("ferry", "wing_east", "wing_west"), FOUND["quay"])


def check(phone: Phone, job: dict[str, Any], rulebook: str, day: str) -> None:
    """Say one fit check for each area. ``job``: as ``Walk`` takes it; what nobody measured stays an open line."""
    for key, area in job["areas"].items():
        told = fit(job["body"], job["assemblies"][key], area["body"], FOUND[key], day)
        lines = [{"line": one["line"], "verdict": _verdict(one, rulebook)} for one in told]
        phone.say(job["id"], "fit", area["id"], {
            "area": area["id"], "day": day, "found": FOUND[key], "lines": lines, "name": phone.person["name"],
            "role": phone.person["role"], "note": "",
        })  # fmt: skip


def _verdict(line: dict[str, Any], rulebook: str) -> dict[str, Any]:
    return {
        "result": line["verdict"], "rule": line["rule"], "rulebook": rulebook if line["rule"] else "",
        "reason": in_strings(line["reason"]), "inputs": line["inputs"], "values": in_strings(line["values"]),
    }  # fmt: skip
