"""Lots: what was drawn from each, so that anybody can draw it again, and what came of it."""

from typing import Any

from inspect_app.evidence.lots_told import CHOSEN, MARKED, OF_A_LOT
from inspect_app.report.person import person


def lots(record: dict[str, Any], people: dict[str, Any] | None = None) -> list[dict[str, Any]]:
    """Each lot in order of the lots' names: ``lot`` its name, ``drawn`` ``[{"area", "panel"}]`` in the order drawn (a
    panel that the record keeps sealed has neither), ``n`` its number in the report by day, ``rows`` of its population,
    ``stops`` the drawn panels with their places and results, ``marks`` what was set and when, ``disposition``, and
    of the record all that ``OF_A_LOT`` names, as whoever folds the entries again gets it."""
    numbers = numbered(record["lots"])
    return [_lot(name, numbers[name], record, people or {}) for name in sorted(record["lots"])]


def numbered(every: dict[str, Any]) -> dict[str, int]:
    """``{name: number}`` from 1, by day, then by name."""
    ordered = sorted(every, key=lambda name: (str(every[name].get("day")), name))
    return {name: at + 1 for at, name in enumerate(ordered)}


def _lot(name: str, n: int, record: dict[str, Any], people: dict[str, Any]) -> dict[str, Any]:
    lot = record["lots"][name]
    chosen = lot.get("disposition")
    marks = record.get("marks") or {}
    own = {one["digest"]: one for one in marks.values()}
    return {
        "lot": name,
        "drawn": [{key: stop[key] for key in ("area", "panel") if key in stop} for stop in lot["drawn"]],
        "n": n,
        "by": person(people, lot.get("by")),
        "at": lot.get("at"),
        "digest": lot.get("digest"),
        "rows": [{key: row.get(key) for key in ("area", "from", "to")} for row in lot["population"]],
        "stops": lot["drawn"],
        "marks": [
            {key: own[digest].get(key) for key in MARKED} | {"by": person(people, own[digest].get("by"))}
            for digest in lot.get("marks") or [] if digest in own
        ],
        "disposition": {key: chosen.get(key) for key in CHOSEN} if chosen else None,
    } | {key: lot.get(key) for key in OF_A_LOT}  # fmt: skip
