"""The bodies of what a crew's day is made of: its lot and draw, panels set, stops offered, holds released."""

import re

from inspect_app.entry.quantity import quantity
from inspect_app.entry.refusal import Refused
from inspect_app.entry.shape import (
    boolean,
    choice,
    count,
    day,
    decimal,
    digest,
    integer,
    list_of,
    map_of,
    name,
    nullable,
    positive,
    record,
    sha256,
    text,
)
from inspect_app.entry.uuid7 import any_uuid

_LOT_NAME = re.compile(r"[A-Za-z0-9_-]{43}/(work|audit)/(0|[1-9][0-9]{0,8})\Z", re.ASCII)
SERIES = choice("work", "audit")
INSPECTION = choice("normal", "tightened", "reduced")
_LEVEL = choice("I", "II", "III", "S-1", "S-2", "S-3", "S-4")


def lot_name(value: object, field: str) -> None:
    """``<key>/<series>/<number>``: the ticket's own name. Nobody chooses it, so nobody steers the draw by it."""
    if not isinstance(value, str) or _LOT_NAME.match(value) is None:
        raise Refused("bad_field", field, value)


_BY_TABLE = record({"level": _LEVEL, "aql": decimal})
SAMPLING = record(
    {},
    {
        "critical": record({"defective": decimal, "confidence": decimal}),
        "major": _BY_TABLE,
        "minor": _BY_TABLE,
        "audit": _BY_TABLE,
        "nonresponse": decimal,
        "reduced": boolean,
        "places": positive,
        "night_places": positive,
    },
)

_PLAN = record(
    {"n": count, "accept": count},
    {"reject": count, "level": _LEVEL, "aql": decimal, "letter": name, "defective": decimal, "confidence": decimal},
)
LOT = record(
    {
        "purpose": choice("work", "audit", "rework"),
        "crew": text,
        "day": day,
        "population": list_of(
            record({"area": any_uuid, "from": integer, "to": integer, "area_entry": digest, "assembly_entry": digest})
        ),
        "size": count,
        "population_digest": digest,
        "ticket": record({"series": SERIES, "n": count, "random": digest, "statement": text}),
        "inspection": INSPECTION,
        "plans": record({}, {"critical": _PLAN, "major": _PLAN, "minor": _PLAN}),
        "n": count,
        "places": count,
        "night_places": count,
        "asks": map_of(list_of(name)),
        "placements": list_of(digest),
    },
    {"extends": lot_name, "reworks": lot_name, "note": text},
)

MARK = record(
    {
        "lot": lot_name,
        "area": any_uuid,
        "to": integer,
        "change": list_of(
            choice(
                "driver_hand",
                "coil",
                "fastener_box",
                "clip_type",
                "zone_spacing",
                "driver_setting",
                "long_stop",
                "finding",
            )
        ),
        "night": boolean,
        # Panels whose hold was on the screen when somebody went over it: said here, it stays said.
        "against": list_of(integer),
    },
    {
        "metal_temperature": quantity("temperature"),
        "metal_temperature_by": text,
        "metal_uncertainty": quantity("difference"),
    },
)

_PANEL = {"lot": lot_name, "area": any_uuid, "panel": integer}
STOP = record({**_PANEL, "outcome": choice("attended", "not_attended"), "note": text})
RELEASE = record(
    {
        **_PANEL,
        "why": choice("first", "change", "night", "failed"),
        "way": nullable(choice("fixed", "both_ways", "finding_open")),
        "walk": nullable(any_uuid),
        "statement": text,
        "name": text,
        "role": text,
    }
)
DISPOSITION = record(
    {
        "lot": lot_name,
        "choice": choice("open", "replace", "accept"),
        "reason": text,
        "document": nullable(sha256),
        "reference": text,
        "name": text,
        "role": text,
    }
)
