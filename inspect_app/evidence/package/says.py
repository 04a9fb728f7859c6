"""What a package says of itself: fact ``package_says``.

``package.json``, ``keys.json`` and ``bag-info.txt`` are for people and are signed by nobody. What they say of the job,
the log's head, the server's key, what is in the package and what is missing is held to the record and to the files, and
they say nothing else; when and by which build it was made, which certificate seals reports and how many entries are
kept apart is their word alone.
"""

import json
import re
from collections.abc import Callable, Mapping
from typing import Any

from inspect_app.entry.refusal import Refused
from inspect_app.entry.strict_json import parse
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.package.known import ENCLOSED, Known
from inspect_app.evidence.package.names import DEFINITION, INFO, KEYS, PACKAGE, PHOTO, REPORT

NAME = "package_says"
LACKING = ("missing_photos", "damaged_photos", "missing_definitions", "missing_reports")
COUNTED = ("entries", "receipts", "keys", "photos", "photo_bytes", "definitions", "reports", "kept_apart", *LACKING)
TOLD = ("v", "kind", "job", "name", "invented", "made", "build", "head", "counts", "server_kid", "seal_fingerprint",
        *LACKING)  # fmt: skip
INVENTED = "INVENTED: everything in it was made up for a demonstration. "
DESCRIPTION = "Evidence of the installation of a standing seam metal roof: signed entries, photos, reports. Job: "

# Controls, whatever turns the direction or has no width, halves of letters: named here, since which letters there are
# is another thing in each release of Python.
STEERS = re.compile("[\0-\x1f\x7f-\x9f\xad\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ud800-\udfff]")


def description(job: str, name: str, invented: bool) -> dict[str, str]:
    """The lines of ``bag-info.txt`` beside its date and size, ``{label: value}``."""
    return {"External-Description": f"{INVENTED if invented else ''}{DESCRIPTION}{name}", "External-Identifier": job}


def on_a_line(text: str) -> str:
    """What a person typed, on one line: a line break would begin another label."""
    return STEERS.sub(" ", text).strip()


def package_fact(texts: Mapping[str, bytes], files: Mapping[str, int], known: Known) -> Fact:
    """The fact above. ``texts``: the bytes of the three files; ``files``: the sizes of all that is in the package."""
    if known.facts[ENCLOSED].status != HOLDS:
        return Fact(NAME, UNKNOWN, "unreadable_record")
    for name, other in ((PACKAGE, _package), (KEYS, _keys), (INFO, _info)):
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
        "photos": _many(files, PHOTO.fullmatch), "definitions": _many(files, DEFINITION.fullmatch),
        "reports": _many(files, REPORT.fullmatch), **{name: len(told[name]) for name in LACKING},
        "photo_bytes": sum(size for name, size in files.items() if PHOTO.fullmatch(name)),
    }.items():  # fmt: skip
        if counts[name] != count:
            return f"counts.{name}"
    if told.keys() != set(TOLD) or counts.keys() != set(COUNTED):
        return "members"
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


def _info(data: bytes, files: Mapping[str, int], known: Known) -> str | None:
    """Date and size are the bag's own; the rest is what we write, or is left out."""
    own = {name: on_a_line(value)
           for name, value in description(known.job or "", known.name or "", known.invented).items()}  # fmt: skip
    seen: set[str] = set()
    for line in data.decode().removesuffix("\n").split("\n"):
        label, _, value = line.partition(": ")
        if label in seen or label not in (*own, "Bagging-Date", "Payload-Oxum") or own.get(label, value) != value:
            return on_a_line(label)
        seen.add(label)
    return None


def _missing(files: Mapping[str, int], known: Known) -> list[str]:
    return sorted((known.named | known.photos.keys()) - _named(files, PHOTO.fullmatch))


def _many(files: Mapping[str, int], match: Callable[[str], Any]) -> int:
    return sum(match(name) is not None for name in files)


def _named(files: Mapping[str, int], match: Callable[[str], Any]) -> set[str]:
    return {found[1] for name in files if (found := match(name))}


def _spelled(told: object) -> bytes:
    """The one way in which they are written."""
    return (json.dumps(told, ensure_ascii=False, sort_keys=True, indent=1) + "\n").encode("utf-8", "surrogatepass")
