"""What a job's entries name: photos, definitions, the job itself."""

from collections.abc import Iterable
from typing import Any, NamedTuple

from inspect_app.entry.base64url import names_sha256
from inspect_app.entry.format import Entry
from inspect_app.entry.pictures import pictures


class Named(NamedTuple):
    """By every version that was ever said, superseded ones too: ``photos`` (SHA-256, hexadecimal) and ``definitions``
    (digests), each in order; ``kids`` of the keys that signed."""

    photos: list[str]
    definitions: list[str]
    kids: frozenset[str]


def named(entries: Iterable[Entry]) -> Named:
    photos, definitions, kids = set[str](), set[object](), set[str]()
    for entry in entries:
        body: Any = entry.payload["body"]
        photos |= set(pictures(entry.payload))
        definitions.add(body.get("definition"))
        pinned = body.get("definitions")
        definitions |= set(pinned.values()) if entry.kind == "job" and isinstance(pinned, dict) else set()
        kids.add(entry.kid)
    return Named(sorted(photos), sorted(str(one) for one in definitions if names_sha256(one)), frozenset(kids))
