"""What a package says of itself: fact ``package_says``.

``package.json`` and ``keys.json`` are for people and are signed by nobody. What they say of the job, the log's head,
the server's key, what is in the package and what is missing is held to the record and to the files; when and by which
build it was made, which certificate seals reports and how many entries are kept apart is their word alone.
"""

import json
from collections.abc import Callable, Mapping
from typing import Any

from inspect_app.entry.refusal import Refused
from inspect_app.entry.strict_json import parse
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.package.known import ENCLOSED, Known
from inspect_app.evidence.package.names import DEFINITION, KEYS, PACKAGE, PHOTO, REPORT

NAME = "package_says"
LACKING = ("missing_photos", "damaged_photos", "missing_definitions", "missing_reports")


def package_fact(texts: Mapping[str, bytes], files: Mapping[str, int], known: Known) -> Fact:
    """The fact above. ``texts``: the bytes of the two files; ``files``: the sizes of all that is in the package."""
    if known.facts[ENCLOSED].status != HOLDS:
        return Fact(NAME, UNKNOWN, "unreadable_record")
    for name, other in ((PACKAGE, _package), (KEYS, _keys)):
        try:
            what = other(texts.get(name, b""), files, known)
        except Exception as reason:  # a text of any other shape
            what = type(reason).__name__
        if what:
            return Fact(NAME, FAILS, "says_other", {"file": name, "what": what})
    return Fact(NAME, HOLDS)


def package_page(texts: Mapping[str, bytes]) -> dict[str, Any] | None:
    """What ``package.json`` says; None where it is not one of a version that this release reads."""
    try:
        told = parse(texts.get(PACKAGE, b""), PACKAGE)
    except Refused:
        return None
    return told if (told.get("v"), told.get("kind")) == (1, "package") else None


def _package(data: bytes, files: Mapping[str, int], known: Known) -> str | None:
    told: Any = parse(data, PACKAGE)
    if data != _spelled(told):
        return "form"
    missing = _missing(files, known)
    unknown = sorted(known.definitions - _named(files, DEFINITION.fullmatch))
    for name, true in {
        "job": known.job, "name": known.name or "", "invented": known.invented, "server_kid": known.kid,
        "head": {"seq": known.head[0], "receipt": known.head[1]} if known.receipts else None,
        "missing_photos": missing, "missing_definitions": unknown,
    }.items():  # fmt: skip
        if told[name] != true:
            return name
    counts: Any = told["counts"]
    rows = [one for one in known.statements if one["kind"] == "enrolment"]
    for name, count in {
        "entries": known.entries, "receipts": len(known.receipts), "keys": len(rows),
        "photos": len(_named(files, PHOTO.fullmatch)), "definitions": len(_named(files, DEFINITION.fullmatch)),
        "reports": len(_named(files, REPORT.fullmatch)), **{name: len(told[name]) for name in LACKING},
        "photo_bytes": sum(size for name, size in files.items() if PHOTO.fullmatch(name)),
    }.items():  # fmt: skip
        if counts[name] != count:
            return f"counts.{name}"
    return None if set(told["damaged_photos"]) <= set(missing) else "damaged_photos"


def _keys(data: bytes, files: Mapping[str, int], known: Known) -> str | None:
    rows: list[dict[str, Any]] = []
    for one in sorted(known.statements, key=lambda one: int(one["seq"])):
        if one["kind"] == "enrolment":
            row = {name: one[name] for name in ("kid", "person", "device")}
            rows.append(row | {"from": one["at"], "until": None})
        elif one["kind"] == "revocation":
            for row in rows:
                if row["kid"] == one["kid"] and row["until"] is None:
                    row["until"] = one["at"]
    return None if data == _spelled(rows) else "keys"


def _missing(files: Mapping[str, int], known: Known) -> list[str]:
    return sorted((known.named | known.photos.keys()) - _named(files, PHOTO.fullmatch))


def _named(files: Mapping[str, int], match: Callable[[str], Any]) -> set[str]:
    return {found[1] for name in files if (found := match(name))}


def _spelled(told: object) -> bytes:
    """The one way in which they are written."""
    return (json.dumps(told, ensure_ascii=False, sort_keys=True, indent=1) + "\n").encode("utf-8", "surrogatepass")
