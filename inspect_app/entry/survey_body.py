"""The body of a warranty survey: the place, and what a reviewer asks first of everybody who claims or denies.

What is recorded at the place is no part of it: that follows from the other entries (``record/survey.py``). Hearsay and
papers are kept as they were told; nothing here is judged.
"""

from inspect_app.entry.quantity import quantity
from inspect_app.entry.shape import choice, day, integer, list_of, name, nullable, record, sha256, text
from inspect_app.entry.uuid7 import any_uuid
from inspect_app.entry.verdict import VERDICT

LENGTH = quantity("length")
# Years later a day is often not known; an empty text is no day, and neither is a guess.
_DAY = nullable(day)

_WARRANTY = record(
    {
        "shown": choice("shown", "not_shown", "contradicted"),  # by a document that the reviewer saw
        "number": text,
        "by": text,
        "terms": text,
        "from": _DAY,
        "until": _DAY,
    }
)
_CHANGE = record(
    {
        "what": choice("equipment", "traffic", "repair", "coating", "other"),
        "day": _DAY,
        "by": text,
        "said": text,
    }
)
# ISO/IEC 17020:2012, 7.2: items are identified uniquely and followed; each hand that held a sample is a row.
_SAMPLE = record(
    {
        "bag": name,
        "what": text,
        "day": _DAY,
        "taken_by": text,
        "photos": list_of(sha256),
        "custody": list_of(record({"day": _DAY, "from": text, "to": text, "kept": text})),
    }
)
_WEAR = record({"length": LENGTH, "uncertainty": LENGTH, "by": text, "photos": list_of(sha256), "verdict": VERDICT})

SURVEY = record(
    {
        "area": any_uuid,
        "panel": integer,
        "from_low_end": LENGTH,
        "radius": LENGTH,
        "warranty": _WARRANTY,
        "substitutions": list_of(record({"what": text, "agreed_by": text, "document": nullable(sha256)})),
        "event": record({"what": text, "day": _DAY, "figures": text, "source": text}),
        "noticed": record({"day": _DAY, "by": text, "said": text}),
        # An empty list says nothing by itself: nobody asked, nobody knew, or nothing was changed.
        "changed": choice("yes", "no", "not_known", "not_asked"),
        "changes": list_of(_CHANGE),
        "samples": list_of(_SAMPLE),
        "wear": nullable(_WEAR),
        "photos": list_of(sha256),
        "note": text,
        "statement": text,
        "name": text,
        "role": text,
    }
)
