"""Lots that ask less at their places than the job's checklists do: what is not asked cannot fail."""

from typing import Any

from inspect_app.record.lot_draw import asks_of
from inspect_app.report.lot import numbered


def asked_less(record: dict[str, Any], definitions: dict[str, Any]) -> list[int]:
    """Numbers of the lots of work, and of rework, that leave out an item of the checklists the job names now and the
    report has, or take one for less severe. An audit asks what still shows, which is less by its nature."""
    named = (record["job"] or {}).get("definitions") or {}
    known = [definitions[digest] for digest in sorted(named.values()) if digest in definitions]
    numbers = numbered(record["lots"])
    return sorted(
        numbers[name] for name, lot in record["lots"].items() if lot["purpose"] != "audit" and _less(record, lot, known)
    )


def _less(record: dict[str, Any], lot: dict[str, Any], known: list[dict[str, Any]]) -> bool:
    rows = [row for row in lot["population"] if _assembly(record, row.get("area"))]
    wanted = asks_of(record, known, rows) if rows else {}
    own = lot.get("asks") or {}
    return any(set(items) - set(own.get(severity) or []) for severity, items in wanted.items())


def _assembly(record: dict[str, Any], area: Any) -> Any:
    return record["assemblies"].get((record["areas"].get(area) or {}).get("assembly"))
