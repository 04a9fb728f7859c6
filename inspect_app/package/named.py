"""What a job's entries name: photos, definitions, keys.

The log holds nothing that was not read strictly when it was taken, so this reads no more than it needs. An entry that
does not read any more stays in the package as it is, names nothing, and hides no other: whoever verifies finds it.
"""

import json
import re
from base64 import urlsafe_b64decode
from collections.abc import Iterable, Mapping
from typing import Any, NamedTuple

from inspect_app.entry.base64url import names_sha256
from inspect_app.entry.pictures import pictures

PHOTO = re.compile(rb'"[0-9a-f]{64}"')


class Named(NamedTuple):
    """By every version that was ever said, superseded ones too: ``photos`` (SHA-256, hexadecimal) and ``definitions``
    (digests), each in order; ``kids`` of the keys that signed."""

    photos: list[str]
    definitions: list[str]
    kids: frozenset[str]


def named(tokens: Iterable[str]) -> Named:
    photos, definitions, kids = set[str](), set[object](), dict[str, str]()
    for token in tokens:
        header, _, rest = token.partition(".")
        try:
            if header not in kids:  # one for each key and spelling, not one for each entry
                kids[header] = str(json.loads(_bytes(header))["kid"])
            text = _bytes(rest.partition(".")[0])
            definitions |= _definitions(payload := json.loads(text))
        except (ValueError, LookupError, TypeError, AttributeError, RecursionError):
            continue
        photos |= pictures(payload) if PHOTO.search(text) else set()
    return Named(sorted(photos), sorted(str(one) for one in definitions if names_sha256(one)), frozenset(kids.values()))


def _definitions(payload: Mapping[str, Any]) -> set[object]:
    body = payload["body"]
    pinned = body.get("definitions") if payload.get("kind") == "job" else None
    told = [body.get("definition"), *(pinned.values() if isinstance(pinned, Mapping) else ())]
    return {one for one in told if isinstance(one, str)}


def _bytes(part: str) -> bytes:
    return urlsafe_b64decode(part + "=" * (-len(part) % 4))
