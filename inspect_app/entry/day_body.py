"""The body of a day's record: what one crew's day was like, beside what its walks and marks already say."""

import re

from inspect_app.entry.quantity import quantity
from inspect_app.entry.refusal import Refused
from inspect_app.entry.shape import count, day, label, list_of, nullable, record, sha256, text

_HOUR = re.compile(r"([01][0-9]|2[0-3]):[0-5][0-9]\Z", re.ASCII)


def hour(value: object, field: str) -> None:
    """A time of day by the site's clock: ``07:30``."""
    if not isinstance(value, str) or _HOUR.match(value) is None:
        raise Refused("bad_field", field, value)


_WEATHER = record(
    {"at": hour, "sky": text, "wind": text},
    {"air": quantity("temperature"), "metal": quantity("temperature"), "metal_by": text},
)
_MATERIAL = record(
    {"what": text, "quantity": text, "accepted": text, "stored": text, "photos": list_of(sha256)},
    {"gauge": label, "gauge_system": text, "coating": text, "coil": text, "lot": text, "maker": text},
)
DAY = record(
    {
        "day": day,
        "crew": text,
        "head_count": nullable(count),
        "no_work": nullable(text),  # why, on a day without work; null on a day with it
        "weather": list_of(_WEATHER),
        "work": text,
        "materials": list_of(_MATERIAL),
        "equipment": list_of(record({"what": text, "operator": text, "setting": text, "hours": text})),
        "submittals": text,
        "offsite": text,
        "instructions": list_of(record({"by": text, "said": text})),
        "delays": list_of(record({"why": text, "hours": text})),
        "safety": text,
        "tied_down": text,
        "photos": list_of(sha256),
        "statement": text,
        "name": text,
        "role": text,
    }
)
