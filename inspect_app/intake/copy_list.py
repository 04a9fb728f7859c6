"""The list in a saved copy: what its phone said is in it. What came is held to it; nothing is taken on its word."""

from typing import NamedTuple

from inspect_app.entry.refusal import Refused, shown
from inspect_app.entry.strict_json import parse
from inspect_app.intake.copy_tar import KINDS

SHAPES = {what: shape for what, shape, _ in KINDS}
PATHS = {"entry": "entries/{name}", "photo": "photos/{job}/{name}"}
WORDS = ("person", "kind", "at", "damage")
DAMAGES = ("photo_damaged", "photo_missing", "entry_damaged", "entry_missing")


class Listed(NamedTuple):
    """One thing of the list. ``what``: ``entry`` or ``photo``; ``person`` its author's id, ``kind`` the kind of entry
    (that names it), ``at`` the phone's time; ``damage``: one of ``DAMAGES`` where the phone itself no longer had it
    whole, else empty."""

    what: str
    name: str
    job: str
    person: str
    kind: str
    at: str
    damage: str


class CopyList(NamedTuple):
    """``copy``: its id; ``at``: when the phone made it, by its own clock; ``items``: everything unsent."""

    copy: str
    at: str
    items: list[Listed]


def read_list(data: bytes) -> CopyList:
    """Raises Refused: those of ``strict_json.parse``, ``unknown_version``, ``bad_field``."""
    said = parse(data, "manifest")
    if said.get("v") != 1 or said.get("kind") != "copy":
        raise Refused("unknown_version", "manifest.v", said.get("v"))
    items = said.get("items")
    if not isinstance(items, list):
        raise Refused("bad_field", "manifest.items", items)
    return CopyList(_text(said, "copy", "manifest"), _text(said, "at", "manifest"),
                    [_listed(one, f"manifest.items[{at}]") for at, one in enumerate(items)])  # fmt: skip


def _listed(item: object, field: str) -> Listed:
    if not isinstance(item, dict) or item.get("what") not in list(PATHS):
        raise Refused("bad_field", field, item)
    what, name, job = (_text(item, member, field) for member in ("what", "name", "job"))
    if not SHAPES[what].fullmatch(PATHS[what].format(name=name, job=job)):
        raise Refused("bad_field", f"{field}.name", name)
    person, kind, at, damage = (_text(item, member, field) for member in WORDS)
    return Listed(what, name, job, person, kind, at, damage if damage in DAMAGES else "")


def _text(said: dict[str, object], member: str, field: str) -> str:
    value = said.get(member)
    if value is None and member in WORDS:
        return ""
    if not isinstance(value, str):
        raise Refused("bad_field", f"{field}.{member}", value)
    return shown(value)
