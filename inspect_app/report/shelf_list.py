"""The list of a job's reports: each as a person chooses among them, and which of them holds."""

import json
from collections.abc import Iterable
from typing import Any

from inspect_app.report.shelf import Shelved

SAID = ("issued", "issuer", "language", "paper", "units", "final", "supersedes", "about")


def told_of(contents: dict[str, Any]) -> dict[str, Any]:
    """What a list says of a report with these contents: ``SAID``, and how many things are ``missing``."""
    return {name: contents.get(name) for name in SAID} | {"missing": len(contents.get("missing") or [])}


def listed(shelved: Iterable[Shelved]) -> list[dict[str, Any]]:
    """The newest first: ``{"number", "kind", "scope", "size", "contents", "superseded_by", …told_of}``;
    ``superseded_by``: the number after it that speaks of the same, or None where it holds; ``size`` in bytes, None
    where the file is gone."""
    newer: dict[str, int] = {}
    told = []
    for one in sorted(shelved, key=lambda one: -one.number):
        scope = json.dumps(one.scope, sort_keys=True)
        told.append({
            "number": one.number, "kind": one.scope["kind"], "scope": one.scope, "size": _size(one),
            "contents": one.contents, "superseded_by": newer.get(scope), **(one.told or _read(one)),
        })  # fmt: skip
        newer[scope] = one.number
    return told


def _size(one: Shelved) -> int | None:
    try:
        return one.pdf.stat().st_size if one.pdf else None
    except OSError:
        return None


def _read(one: Shelved) -> dict[str, Any]:
    """Of a report of a release before lists: what its contents say."""
    try:
        return told_of(json.loads(one.contents_file.read_bytes())) if one.contents_file else told_of({})
    except (OSError, ValueError):
        return told_of({})
