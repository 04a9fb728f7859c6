"""Verify that a report tells of all that its scope holds, and of nothing else.

Fact ``scope_follows``: the report names what it speaks of (``record/scope.py``; a report of a release before scopes
speaks of the whole job); the walks, places, photos, areas, assemblies and sign-offs that it tells of are those that the
enclosed entries have there when they are folded again, each once; and what it says of the rest of the job is what there
is. A report that claims a wider scope than it tells, or leaves out something within its own, fails. (Answers, lots,
days and findings have facts of their own, held to the same scope.)
"""

from collections.abc import Mapping
from typing import Any

from inspect_app.evidence.fact import Fact
from inspect_app.evidence.follows import follows
from inspect_app.evidence.lots_told import same
from inspect_app.record.scope import WHOLE, narrowed, outside

NAME = "scope_follows"
LISTED = (("days", "id", "walks"), ("stations", "id", "stations"), ("photos", "sha256", "photos"),
          ("areas", "id", "areas"), ("assemblies", "id", "assemblies"))  # fmt: skip


def scope_of(contents: Mapping[str, Any] | None) -> Any:
    """The scope that contents name: the whole job where none is named, as before there were any."""
    return WHOLE if contents is None or "scope" not in contents else contents["scope"]


def scoped(contents: Mapping[str, Any] | None, record: Mapping[str, Any]) -> Mapping[str, Any]:
    """The folded entries as far as the report speaks of them: what it says is held to these. Empty where its scope
    cannot be read or names what is not there, so that nothing it says is confirmed."""
    try:
        found: Mapping[str, Any] = narrowed(dict(record), scope_of(contents))
    except Exception:  # a scope of any other shape, or entries that cannot be folded
        return {}
    return found


def scope_fact(contents: Mapping[str, Any] | None, record: Mapping[str, Any]) -> Fact:
    """The fact above. ``contents``: the enclosed ones, None when they do not read; ``record``: the entries, folded,
    whole."""
    return follows(NAME, contents, record, _other)


def _other(told: Mapping[str, Any], record: Mapping[str, Any]) -> str | None:
    scope, named = scope_of(told), "scope" in told
    part = narrowed(dict(record), scope)
    if named and told.get("kind") != scope["kind"]:
        return "kind"
    for name, key, things in LISTED:
        if (named or name in told) and sorted(one[key] for one in told[name]) != sorted(part[things]):
            return things
    place, own = part.get("survey") or {}, told.get("survey") or {}
    if not same({name: own.get(name) for name in place}, place):
        return "survey"
    if (named or "signoffs" in told) and _signed(told["signoffs"]) != _signed_in(part["walks"]):
        return "signoffs"
    return "outside" if named and not same(told["outside"], outside(dict(record), part)) else None


def _signed(told: list[dict[str, Any]]) -> list[str]:
    return sorted(one["digest"] for one in told if one["signed"])


def _signed_in(walks: dict[str, Any]) -> list[str]:
    return sorted(walk["signoff"]["digest"] for walk in walks.values() if walk["signoff"])
