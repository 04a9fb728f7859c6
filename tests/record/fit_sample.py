"""A roof on which every line of a fit check passes, with a slot and with clips; all of it invented."""

import copy
import json
from typing import Any

from tests.rules.hostile import SPOILED


def q(value: str, unit: str) -> dict[str, str]:
    return {"value": value, "unit": unit}


JOB = {"units": "US", "metal_low": q("-20", "F"), "metal_high": q("180", "F"), "placing_error": q("0.125", "in")}
FLANGE = {
    "seam": "snap_lock", "attachment": "nail_flange", "expansion": q("0.0000065", "/F"), "gauge": "24",
    "gauge_system": "MSG", "slot_length": q("1", "in"), "slot_pitch": q("6", "in"),
    "fastener_diameter": q("0.190", "in"), "fastener_length": q("1", "in"), "penetration": q("0.5", "in"),
    "fold_return": q("1", "in"), "fold_engagement": q("0.375", "in"), "minimum_slope": q("3", "/12"),
    "longest_run": q("40", "ft"), "deck": "5/8 in plywood", "underlayment": "membrane",
    "zones": [{"name": "field", "spacing": q("12", "in")}, {"name": "edge", "spacing": q("6", "in")}],
    "approval": {"reference": "INV-1 (invented)", "issued": "2025-03-01", "expires": "2028-03-01"},
}  # fmt: skip
CLIPS = {
    **{name: value for name, value in FLANGE.items() if name not in ("slot_length", "slot_pitch")},
    "attachment": "expansion_clip", "seam": "double_lock", "clip_seams": ["double_lock"],
    "clip_travel_outward": q("1", "in"), "clip_travel_inward": q("1", "in"),
}  # fmt: skip
FIXED = {**CLIPS, "attachment": "fixed_clip", "fixed_clip_run": q("30", "ft")}
AREA = {
    "slope": q("4", "/12"), "zones": ["field", "edge"], "panel_length": q("30", "ft"), "run": q("30", "ft"),
    "fixed_line": {"from_low_end": q("30", "ft"), "by": "ridge zee", "fasteners": 3},
}  # fmt: skip
FOUND = {
    "slope": q("4", "/12"), "slope_by": "level", "deck": "as_approved", "underlayment": "as_approved", "gauge": "24",
    "gauge_system": "MSG", "fold_gap": q("0.3", "in"), "clearance": q("0.5", "in"), "metal_now": q("70", "F"),
    "metal_now_by": "infrared",
    "fixed_lines": 1, "fastener_length": q("1", "in"), "build_up": q("0.25", "in"),
}  # fmt: skip
DAY = "2026-11-25"


def world(assembly: dict[str, Any] = FLANGE) -> dict[str, Any]:
    """``{"job", "assembly", "area", "found"}``, to be changed at will."""
    return copy.deepcopy({"job": JOB, "assembly": assembly, "area": AREA, "found": FOUND})


def put_into(roof: dict[str, Any], path: str, value: Any) -> dict[str, Any]:
    """The roof with ``value`` at ``path`` as ``found.slope``; None is put in like any other."""
    *steps, last = path.split(".")
    at = roof
    for step in steps:
        at = at[step]
    at[last] = value
    return roof


def put(roof: dict[str, Any], path: str, value: Any) -> None:
    """As ``put_into``; None takes the thing away."""
    put_into(roof, path, value)
    if value is None:
        *steps, last = path.split(".")
        for step in steps:
            roof = roof[step]
        del roof[last]


def requests() -> list[str]:
    """Fit checks as the phone asks for them: as they should be, with one thing wrong, and hostile ones."""
    roofs = [world(), world(CLIPS), world(FIXED), put_into(world(), "found", {}), put_into(world(), "area", "roof")]
    paths = [f"{part}.{name}" for part, things in world().items() for name in things]
    roofs += [put_into(world(), path, SPOILED[number % len(SPOILED)]) for number, path in enumerate(paths * 3)]
    return [json.dumps({"call": "fit", **roof, "day": DAY}) for roof in roofs]
