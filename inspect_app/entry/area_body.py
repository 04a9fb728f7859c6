"""The body of a roof area: its outline, openings, place on the plan, zone map and fixed line.

Form only: an outline that crosses itself was signed as it was drawn, and is better kept and named than lost.
"""

from inspect_app.entry.quantity import UNITS, quantity
from inspect_app.entry.shape import Check, choice, count, decimal, list_of, map_of, name, nullable, record, text
from inspect_app.entry.uuid7 import any_uuid

LENGTH = quantity("length")
_UNIT = choice(*UNITS["length"])
_OUTLINE: Check = record({"unit": _UNIT, "points": list_of(list_of(decimal))}, {"lengths": list_of(nullable(decimal))})
_EDGE = choice("eave", "ridge", "rake", "hip", "valley", "wall", "penetration")

_ZONE_MAP = record(
    {"state": choice("proposed", "confirmed", "redrawn"), "by": text, "standard": text},
    {
        "basis": choice("ASD", "strength"),
        "widths": map_of(LENGTH),
        "names": record({}, {"field": name, "edge": name, "corner": name}),
        "drawn": list_of(record({"zone": name, "outline": _OUTLINE})),
    },
)

AREA = record(
    {
        "name": name,
        "assembly": any_uuid,
        "slope": quantity("slope"),
        "outline": _OUTLINE,
        "edges": list_of(_EDGE),
        "start": choice("left", "right"),
        "coverage": LENGTH,
        "fixed_line": nullable(
            record({"from_low_end": LENGTH, "by": text}, {"fasteners": count, "end": choice("low", "high")})
        ),
        "zones": list_of(name),
    },
    {
        "openings": list_of(record({"name": text, "outline": _OUTLINE})),
        "place": record({"unit": _UNIT, "east": decimal, "north": decimal, "up": decimal}),
        "zone_map": _ZONE_MAP,
    },
)
