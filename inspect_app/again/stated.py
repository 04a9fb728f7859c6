"""What a report's contents state that its entries cannot tell: what the picture files said, and what was kept apart."""

from collections.abc import Collection, Iterator, Mapping
from typing import Any

from inspect_app.report.basis import SEEN

LOST = ("lost", "damaged")
FACTS = ("held", "lost", "copy", "undecodable", *SEEN)


def pictures_stated(told: Mapping[str, Any]) -> dict[str, dict[str, Any]]:
    """``{SHA-256: facts}`` as ``report_contents`` takes photos, those facts alone that are told: only the photo log
    tells a file's own time. Of one that is told of several times its word stands, which says most."""
    found: dict[str, dict[str, Any]] = {}
    for one in _pictures(told):
        found.setdefault(one["sha256"], {name: one[name] for name in FACTS if name in one})
    return found


def held_by_receipts(sha256: str, stated: Mapping[str, Any], received: Collection[str]) -> dict[str, Any]:
    """The facts of one photo with ``held`` as the receipts say: nobody holds what was never received, and what was
    received is held unless it is said to have been lost since."""
    if sha256 not in received:
        return {"held": False}
    if not stated.get("held") and stated.get("lost") in LOST:
        return {"held": False, "lost": stated["lost"]}
    return {**stated, "held": True, "lost": None}


def apart_stated(told: Mapping[str, Any]) -> int:
    """How many entries are said to be kept apart: they are not in the record."""
    counts = [one["facts"]["count"] for one in told["cautions"] if one["code"] == "kept_apart"]
    return int(counts[0]) if counts else 0


def _pictures(told: Mapping[str, Any]) -> Iterator[Mapping[str, Any]]:
    yield from told["photos"]
    for finding in told["findings"]:
        yield from finding["pictures"]
    for day in told["daily"]:
        yield from day["photos"]
    yield from (told["survey"] or {}).get("pictures") or []
