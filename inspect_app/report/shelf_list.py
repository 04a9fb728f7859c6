"""The list of a job's reports: each as a person chooses among them, and which of them holds."""

import hashlib
import json
from collections.abc import Iterable
from typing import Any

from inspect_app.report.contents import contents_bytes
from inspect_app.report.shelf import Shelved

SAID = ("issued", "issuer", "language", "paper", "units", "final", "supersedes", "about")
# What differs between two reports that say the same, in whatever form.
FORM = ("number", "issued", "supersedes", "made_with", "language", "paper", "units")


def says(contents: dict[str, Any]) -> str:
    """One text for all reports that say the same, in whatever language, units and paper."""
    return hashlib.sha256(contents_bytes(contents | dict.fromkeys(FORM))).hexdigest()


def told_of(contents: dict[str, Any]) -> dict[str, Any]:
    """What a list says of a report with these contents: ``SAID``, how many things are ``missing``, and ``says``."""
    told = {name: contents.get(name) for name in SAID} | {"missing": len(contents.get("missing") or [])}
    return told | {"says": says(contents)}


def listed(shelved: Iterable[Shelved]) -> list[dict[str, Any]]:
    """The newest first: ``{"number", "kind", "scope", "size", "contents", "superseded_by", …told_of}``;
    ``superseded_by``: the number after it that speaks of the same and says otherwise, or None where it holds: the same
    in another language takes nobody's place; ``size`` in bytes, None where the file is gone."""
    newer: dict[str, list[tuple[int, str]]] = {}
    told = []
    for one in sorted(shelved, key=lambda one: -one.number):
        after = newer.setdefault(json.dumps(one.scope, sort_keys=True), [])
        said = one.told or _read(one)
        mine = said.get("says") or str(one.number)  # of a release before it was kept: only itself says the same
        told.append({
            "number": one.number, "kind": one.scope["kind"], "scope": one.scope, "size": _size(one),
            "contents": one.contents, **said,
            "superseded_by": next((number for number, other in reversed(after) if other != mine), None),
        })  # fmt: skip
        after.append((one.number, mine))
    return told


def _size(one: Shelved) -> int | None:
    try:
        return one.pdf.stat().st_size if one.pdf else None
    except OSError:
        return None


def _read(one: Shelved) -> dict[str, Any]:
    """Of a report of a release before lists: what its contents say."""
    try:
        if one.contents_file:
            return told_of(json.loads(one.contents_file.read_bytes()))
    except (OSError, ValueError):
        pass
    return told_of({}) | {"says": None}
