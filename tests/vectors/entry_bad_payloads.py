"""Well-signed entries whose payload is not what its kind asks for."""

import copy
import json
from collections.abc import Iterator
from typing import Any

from entry_bodies import payloads, uuid
from entry_signed import dumped, token

GONE = object()
SPOILT: list[tuple[str, str, object, str, str]] = [
    # kind, path, value, code, field
    ("station", "v", 2, "unknown_version", "v"),
    ("station", "v", True, "unknown_version", "v"),
    ("station", "v", GONE, "unknown_version", "v"),
    ("station", "kind", "oracle", "unknown_kind", "kind"),
    ("station", "kind", ["station"], "unknown_kind", "kind"),
    ("station", "id", uuid(1).replace("-7", "-4", 1), "bad_field", "id"),
    ("station", "id", uuid(1).upper(), "bad_field", "id"),
    ("station", "id", uuid(1) + "\n", "bad_field", "id"),
    ("station", "job", "job-1", "bad_field", "job"),
    ("station", "subject", "", "bad_field", "subject"),
    ("station", "subject", "s" * 36, "bad_field", "subject"),
    ("station", "replaces", None, "bad_field", "replaces"),
    ("station", "replaces", ["x"], "bad_field", "replaces[0]"),
    ("station", "at", "2026-11-25T16:40:05Z", "bad_field", "at"),
    ("station", "at", "2026-02-30T16:40:05.120-05:00", "bad_field", "at"),
    ("station", "at", 1795642805120, "bad_field", "at"),
    ("station", "clock", GONE, "missing_field", "clock"),
    ("station", "clock.monotonic", "1", "bad_field", "clock.monotonic"),
    ("station", "clock.zone", GONE, "missing_field", "clock.zone"),
    ("station", "seq", -1, "bad_field", "seq"),
    ("station", "seq", False, "bad_field", "seq"),
    ("station", "seq", 0, "bad_field", "prev"),
    ("station", "prev", None, "bad_field", "prev"),
    ("station", "prev", "a" * 64, "bad_field", "prev"),
    ("station", "by", "", "bad_field", "by"),
    ("station", "build", GONE, "missing_field", "build"),
    ("station", "body", [], "bad_field", "body"),
    ("station", "body.panel", "7", "bad_field", "body.panel"),
    ("station", "body.reached", "no", "bad_field", "body.reached"),
    ("station", "body.from_low_end", "12.5 ft", "bad_field", "body.from_low_end"),
    ("station", "body.from_low_end.unit", GONE, "missing_field", "body.from_low_end.unit"),
    ("station", "body.from_low_end.unit", "yd", "unknown_unit", "body.from_low_end.unit"),
    ("station", "body.from_low_end.unit", "F", "unknown_unit", "body.from_low_end.unit"),
    ("station", "body.from_low_end.value", 12, "bad_field", "body.from_low_end.value"),
    ("station", "body.from_low_end.value", "12,5", "bad_field", "body.from_low_end.value"),
    ("station", "body.from_low_end.value", "１２", "bad_field", "body.from_low_end.value"),
    ("station", "body.from_low_end.value", "NaN", "bad_field", "body.from_low_end.value"),
    ("job", "subject", uuid(99), "bad_field", "subject"),
    ("job", "body.units", "us", "bad_field", "body.units"),
    ("job", "body.invented", 1, "bad_field", "body.invented"),
    ("job", "body.metal_low.unit", "dF", "unknown_unit", "body.metal_low.unit"),
    ("job", "body.parties", [{"role": "owner"}], "missing_field", "body.parties[0].name"),
    ("job", "body.definitions", {"nail": "1"}, "bad_field", "body.definitions.nail"),
    ("assembly", "body.seam", "lock", "bad_field", "body.seam"),
    ("assembly", "body.slot_length.unit", "deg", "unknown_unit", "body.slot_length.unit"),
    ("assembly", "body.zones", [{"name": "field"}], "missing_field", "body.zones[0].spacing"),
    ("assembly", "body.approval", {}, "missing_field", "body.approval.reference"),
    ("area", "body.outline.points", [["0", "0"], ["1", "0"]], "bad_field", "body.outline.points"),
    ("area", "body.outline.points", [["0"], ["1", "0"], ["1", "1"]], "bad_field", "body.outline.points[0]"),
    ("area", "body.edges", ["eave", "ridge"], "bad_field", "body.edges"),
    ("area", "body.edges", ["eave", "ridge", "rake", "gable"], "bad_field", "body.edges[3]"),
    ("area", "body.fixed_line", GONE, "missing_field", "body.fixed_line"),
    ("area", "body.openings", {"name": "curb"}, "bad_field", "body.openings"),
    ("area", "body.openings", [{"name": "curb"}], "missing_field", "body.openings[0].outline"),
    ("area", "body.openings", [{"name": "", "outline": {"unit": "ft", "points": [["0", "1", "2"]]}}], "bad_field",
     "body.openings[0].outline.points[0]"),
    ("area", "body.place", {"unit": "ft", "east": "0", "north": "0", "up": 90}, "bad_field", "body.place.up"),
    ("area", "body.zone_map", {"state": "guessed"}, "bad_field", "body.zone_map.state"),
    ("area", "body.zone_map", {"state": "proposed", "by": "", "standard": "", "widths": {"eave": "4"}}, "bad_field",
     "body.zone_map.widths.eave"),
    ("area", "body.fixed_line", {"from_low_end": {"value": "0", "unit": "ft"}, "by": "", "end": "middle"}, "bad_field",
     "body.fixed_line.end"),
    ("walk", "body.fall_protection", "yes", "bad_field", "body.fall_protection"),
    ("walk", "body.metal_uncertainty.unit", "F", "unknown_unit", "body.metal_uncertainty.unit"),
    ("walk", "body.placed", [{"area": uuid(5), "from": 0}], "missing_field", "body.placed[0].to"),
    ("answer", "subject", f"{uuid(3)}/nail_flange/other", "bad_field", "subject"),
    ("answer", "subject", f"{uuid(4)}/nail_flange/screw_centred", "bad_field", "subject"),
    ("answer", "body.choice", "maybe", "bad_field", "body.choice"),
    ("answer", "body.photos", ["A" * 64], "bad_field", "body.photos[0]"),
    ("answer", "body.verdict.result", "PASS", "bad_field", "body.verdict.result"),
    ("photo", "subject", "0" * 64, "bad_field", "subject"),
    ("photo", "body.size", -1, "bad_field", "body.size"),
    ("photo", "body.position.latitude", 44, "bad_field", "body.position.latitude"),
    ("signoff", "subject", uuid(3), "bad_field", "subject"),
    ("signoff", "body.strokes", [[1, 2, "3"]], "bad_field", "body.strokes[0][2]"),
    ("signoff", "body.covers", ["x"], "bad_field", "body.covers[0]"),
]  # fmt: skip


def spoilt(kind: str, path: str, value: object) -> dict[str, Any]:
    payload = copy.deepcopy(dict(payloads())[kind])
    place: Any = payload
    *parents, last = path.split(".")
    for name in parents:
        place = place[name]
    if value is GONE:
        del place[last]
    else:
        place[last] = value
    return payload


def bad_payloads() -> Iterator[tuple[str, str, str, str]]:
    for kind, path, value, code, field in SPOILT:
        shown = "gone" if value is GONE else json.dumps(value)[:40]
        yield f"{kind}: {path} {shown}", token(dumped(spoilt(kind, path, value))), code, field
