"""The bodies of what becomes of a finding: opened by hand, assigned, corrected, rechecked, reopened, conceded.

A finding that a failed answer opened is named by that answer's subject, one opened by hand by its own id.
"""

from inspect_app.entry.quantity import quantity
from inspect_app.entry.shape import choice, day, digest, integer, list_of, mapping, name, nullable, record, sha256, text
from inspect_app.entry.uuid7 import any_uuid
from inspect_app.entry.verdict import VERDICT

_SIGNED = {"name": text, "role": text}
_READING = {"reading": nullable(mapping), "verdict": nullable(VERDICT)}

FINDING = record(
    {
        "walk": nullable(any_uuid),
        "area": nullable(any_uuid),
        "severity": choice("critical", "major", "minor"),
        "required": text,
        "found": text,
        "photos": list_of(sha256),
        **_SIGNED,
    },
    {"panel": integer, "from_low_end": quantity("length"), "station": any_uuid},
)
ASSIGNMENT = record(
    {
        "finding": name,
        "firm": text,
        "crew": text,
        "by_day": nullable(day),
        # A code of the definition's short list, or none of them; own words are always possible.
        "cause": record({"code": nullable(name), "words": text}),
        "note": text,
        **_SIGNED,
    }
)
CORRECTION = record(
    {"finding": name, "walk": nullable(any_uuid), "done": text, "photos": list_of(sha256), **_READING, **_SIGNED}
)
RECHECK = record(
    {
        "finding": name,
        "correction": digest,
        "result": choice("good", "not_good"),
        "walk": nullable(any_uuid),
        "photos": list_of(sha256),
        "note": text,
        **_READING,
        **_SIGNED,
    }
)
# ``of``: the rechecks and concessions that no longer hold; named, so that the state needs no order of arrival.
REOPENING = record(
    {"finding": name, "of": list_of(digest), "reason": text, "photos": list_of(sha256), **_SIGNED}
)
# ISO 9000:2015, 3.12.5: permission to use or release what does not conform (from memory).
CONCESSION = record(
    {"finding": name, "reason": text, "document": nullable(sha256), "reference": text, **_SIGNED}
)
