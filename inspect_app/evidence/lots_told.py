"""Verify what a report says of its lots: their decisions, holds and drawn places, coverage, series and bounds.

Fact ``lots_follow``: all of it is what the enclosed entries give when they are folded again. A report of a release
before lots says nothing of them, and encloses none.
"""

from collections.abc import Mapping
from typing import Any

from inspect_app.evidence.fact import Fact
from inspect_app.evidence.follows import follows

NAME = "lots_follow"
OF_A_LOT = (
    "purpose", "crew", "day", "size", "inspection", "places", "night_places", "extends", "reworks", "closed", "set",
    "placed_to", "open_panel", "extra", "holds", "rolling", "night", "changes", "failed", "decision", "says",
)  # fmt: skip
CHOSEN = ("choice", "reason", "document", "reference", "name", "role", "stands", "at", "digest")
MARKED = ("to", "change", "night", "against", "metal_temperature", "metal_temperature_by", "metal_uncertainty", "at")
OF_THE_JOB = ("coverage", "series", "to_date", "audits", "sampling")
CLOSE = 1e-9  # two machines may differ in a float's last digit, and a figure is printed with four at most


def lots_fact(contents: Mapping[str, Any] | None, record: Mapping[str, Any]) -> Fact:
    """The fact above. ``contents``: the enclosed ones, None when they do not read; ``record``: the entries, folded."""
    return follows(NAME, contents, record, _other)


def _other(told: Mapping[str, Any], record: Mapping[str, Any]) -> str | None:
    """The first thing that is said otherwise. A lot left out, doubled or made up is found by ``draws``."""
    if not record["lots"] and "coverage" not in told:
        return None
    for one in told["lots"]:
        lot = record["lots"].get(one["lot"])
        if lot is not None and (part := _of_lot(one, lot, record)):
            return f"lot {one['lot']} {part}"
    return next((name for name in OF_THE_JOB if not same(told[name], record[name])), None)


def _of_lot(said: Mapping[str, Any], lot: Mapping[str, Any], record: Mapping[str, Any]) -> str | None:
    for name in OF_A_LOT:
        if not same(said[name], lot.get(name)):
            return name
    rows = [{key: row.get(key) for key in ("area", "from", "to")} for row in lot["population"]]
    chosen = lot["disposition"]
    marks = {one["digest"]: one for one in record["marks"].values()}
    own = [{key: marks[digest].get(key) for key in MARKED} for digest in lot["marks"] if digest in marks]
    pairs = {
        "rows": (said["rows"], rows),
        "stops": (said["stops"], lot["drawn"]),
        "marks": ([{key: one[key] for key in MARKED} for one in said["marks"]], own),
        "disposition": (said["disposition"], {key: chosen.get(key) for key in CHOSEN} if chosen else None),
    }
    return next((name for name, (one, other) in pairs.items() if not same(one, other)), None)


def same(one: Any, other: Any) -> bool:
    """Whether two values of JSON say the same."""
    if isinstance(one, Mapping) and isinstance(other, Mapping):
        return one.keys() == other.keys() and all(same(one[name], other[name]) for name in one)
    if isinstance(one, (list, tuple)) and isinstance(other, (list, tuple)):
        return len(one) == len(other) and all(same(a, b) for a, b in zip(one, other, strict=True))
    if isinstance(one, float) or isinstance(other, float):
        numbers = isinstance(one, (int, float)) and isinstance(other, (int, float))
        return numbers and abs(one - other) <= CLOSE * max(1.0, abs(one), abs(other))
    return type(one) is type(other) and bool(one == other)
