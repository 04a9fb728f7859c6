"""The shape of each kind's body: what must be there, of which form. Unknown members are kept."""

from inspect_app.entry.area_body import AREA
from inspect_app.entry.day_body import DAY
from inspect_app.entry.finding_bodies import ASSIGNMENT, CONCESSION, CORRECTION, FINDING, RECHECK, REOPENING
from inspect_app.entry.lot_bodies import DISPOSITION, LOT, MARK, RELEASE, SAMPLING, STOP, lot_name
from inspect_app.entry.outline import outline_matches_edges
from inspect_app.entry.quantity import quantity
from inspect_app.entry.shape import (
    Check,
    boolean,
    choice,
    count,
    day,
    decimal,
    digest,
    integer,
    label,
    list_of,
    map_of,
    mapping,
    name,
    nullable,
    record,
    sha256,
    text,
)
from inspect_app.entry.survey_body import SURVEY
from inspect_app.entry.uuid7 import any_uuid
from inspect_app.entry.verdict import VERDICT

# What a named person says of an entry that was kept apart: let it into the record, and why.
_ADMISSION = record({"entry": digest, "reason": text, "name": text, "role": text})
LENGTH, TEMPERATURE = quantity("length"), quantity("temperature")

_GAUGE_SYSTEM = choice("MSG", "GSG", "USS", "BS", "mil")
_SEAM = choice("snap_lock", "single_lock", "double_lock")
# What a firm knows of its own instruments; what it leaves out is ours (``record/instruments.py``).
INSTRUMENTS = record(
    {},
    {
        name: record({"uncertainty": quantity(dimension), "source": text})
        for name, dimension in (
            ("tape", "length"),
            ("rule", "length"),
            ("feeler", "length"),
            ("micrometer", "length"),
            ("depth_gauge", "length"),
            ("level", "slope"),
            ("inclinometer", "slope"),
            ("contact", "difference"),
            ("infrared", "difference"),
            ("estimate", "difference"),
        )
    },
)

_JOB = record(
    {
        "name": name,
        "place": text,
        "units": choice("US", "SI"),
        "language": choice("en", "es"),
        "paper": choice("letter", "a4"),
        "invented": boolean,
        "metal_low": TEMPERATURE,
        "metal_high": TEMPERATURE,
        "metal_range_source": text,
        "placing_error": LENGTH,
        "parties": list_of(record({"role": text, "name": text})),
        "definitions": map_of(digest),
    },
    {"instruments": INSTRUMENTS, "acceptance": choice("guarded", "simple"), "sampling": SAMPLING},
)

_ASSEMBLY = record(
    {
        "name": name,
        "panel": text,
        "seam": _SEAM,
        "seam_height": LENGTH,
        "coverage": LENGTH,
        "metal": text,
        "expansion": quantity("expansion"),
        "expansion_source": text,
        "gauge": label,
        "gauge_system": _GAUGE_SYSTEM,
        "coating": text,
        "attachment": choice("nail_flange", "fixed_clip", "expansion_clip"),
        "fastener": text,
        "fastener_diameter": LENGTH,
        "zones": list_of(record({"name": name, "spacing": LENGTH}, {"pressure": quantity("pressure")})),
        "deck": text,
        "underlayment": text,
        "minimum_slope": quantity("slope"),
        "longest_run": LENGTH,
        "approval": record({"reference": text, "issued": nullable(text), "expires": nullable(text)}),
    },
    {
        "slot_length": LENGTH,
        "slot_pitch": LENGTH,
        "clip": text,
        "clip_travel_outward": LENGTH,
        "clip_travel_inward": LENGTH,
        "fastener_head_diameter": LENGTH,
        "fastener_length": LENGTH,
        "fasteners_per_clip": count,
        "slot_width": LENGTH,
        "tested_gauge": label,
        "tested_gauge_system": _GAUGE_SYSTEM,
        "fold_return": LENGTH,
        "fold_engagement": LENGTH,
        "penetration": LENGTH,
        "clip_seams": list_of(_SEAM),
        "fixed_clip_run": LENGTH,
    },
)

_WALK = record(
    {
        "definition": digest,
        "areas": list_of(any_uuid),
        "crew": text,
        "weather": record({"sky": text, "wind": text}, {"air": TEMPERATURE}),
        "placed": list_of(record({"area": any_uuid, "from": integer, "to": integer})),
        "fall_protection": choice("confirmed", "not_on_roof"),
    },
    {
        "head_count": count,
        "independent": boolean,
        # Absent where nobody stood on the roof: papers and drawings have no metal temperature.
        "metal_temperature": TEMPERATURE,
        "metal_uncertainty": quantity("difference"),
        "metal_temperature_by": text,
    },
)

_STATION = record(
    {
        "walk": any_uuid,
        "area": any_uuid,
        "panel": integer,
        "from_low_end": LENGTH,
        "zone": text,
        "chosen": choice("hand", "drawn", "both_ways"),
        "reached": choice("yes", "unsafe", "covered"),
    },
    {"lot": lot_name},
)

_ANSWER = record(
    {
        "walk": any_uuid,
        "station": nullable(any_uuid),
        "area": nullable(any_uuid),
        "definition": digest,
        "item": name,
        "choice": nullable(choice("pass", "fail", "not_determinable", "not_applicable")),
        "reading": nullable(mapping),
        "note": text,
        "photos": list_of(sha256),
        "verdict": VERDICT,
    },
    {"severity": choice("critical", "major", "minor", "record")},
)

_PHOTO = record(
    {
        "walk": any_uuid,
        "station": nullable(any_uuid),
        "answer": nullable(name),
        "role": choice("where", "what", "after", "label", "leg", "other"),
        "sha256": sha256,
        "size": count,
        "type": name,
        "source": choice("camera", "picked"),
    },
    {
        "width": count,
        "height": count,
        "position": record({"latitude": decimal, "longitude": decimal, "accuracy": decimal}),
        # A rolling photo speaks of a panel's whole open leg, not of a place on it.
        "area": any_uuid,
        "panel": integer,
        "lot": lot_name,
    },
)

_SIGNOFF = record(
    {
        "walk": any_uuid,
        "statement": text,
        "name": text,
        "role": text,
        "strokes": list_of(list_of(integer)),
        "canvas": record({"width": count, "height": count}),
        "covers": list_of(digest),
    }
)

_AGREES = choice("as_approved", "other")
_FIT = record(
    {
        "area": any_uuid,
        "day": day,
        "found": record(
            {},
            {
                "slope": quantity("slope"),
                "slope_by": text,
                "deck": _AGREES,
                "underlayment": _AGREES,
                "gauge": label,
                "gauge_system": _GAUGE_SYSTEM,
                "fold_gap": LENGTH,
                "clearance": LENGTH,
                "metal_now": TEMPERATURE,
                "metal_now_by": choice("contact", "infrared", "estimate"),
                "fixed_lines": count,
                "fastener_length": LENGTH,
                "build_up": LENGTH,
            },
        ),
        "lines": list_of(record({"line": name, "verdict": VERDICT})),
        "name": text,
        "role": text,
        "note": text,
    }
)

BODIES: dict[str, Check] = {
    "job": _JOB,
    "assembly": _ASSEMBLY,
    "area": AREA,
    "walk": _WALK,
    "station": _STATION,
    "answer": _ANSWER,
    "photo": _PHOTO,
    "signoff": _SIGNOFF,
    "fit": _FIT,
    "lot": LOT,
    "mark": MARK,
    "stop": STOP,
    "release": RELEASE,
    "disposition": DISPOSITION,
    "finding": FINDING,
    "assignment": ASSIGNMENT,
    "correction": CORRECTION,
    "recheck": RECHECK,
    "reopening": REOPENING,
    "concession": CONCESSION,
    "day": DAY,
    "admission": _ADMISSION,
    "survey": SURVEY,
}


def check_body(kind: str, body: object) -> None:
    """Raises Refused ``bad_field``, ``missing_field`` or ``unknown_unit`` with the path of what is at
    fault."""
    BODIES[kind](body, "body")
    if kind == "area":
        outline_matches_edges(body)
