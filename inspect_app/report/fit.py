"""The fit check of each area: what was approved against this roof, line by line, as it was recorded."""

from datetime import datetime
from typing import Any

from inspect_app.record.fit import fit
from inspect_app.record.rejudge import rejudge_line
from inspect_app.report.acceptance import accepted
from inspect_app.report.fit_pair import pair_of, to_get
from inspect_app.report.item import versions
from inspect_app.report.person import person

CHANGED = ("area", "assembly", "job")


def fits(record: dict[str, Any], people: dict[str, Any], numbers: dict[str, Any]) -> list[dict[str, Any]]:
    """One for each area that has a check, in the order of areas, those of areas unknown here last.

    Each: ``area``, ``name``, ``assembly``, ``digest``, ``by``, ``at``, ``day``, ``said_by``, ``note``, ``found``,
    ``result`` (its worst line), ``heads``, ``versions``, ``lines``; ``later``: ``[{"what", "at"}]`` of area, assembly
    and job changed since; ``left_out``: lines that the record now asks for and the check does not have.
    """
    unknown = sorted(set(record["fits"]) - set(numbers["areas"]))
    return [_fit(key, record, people) for key in [*numbers["areas"], *unknown] if key in record["fits"]]


def _fit(key: str, record: dict[str, Any], people: dict[str, Any]) -> dict[str, Any]:
    own = record["fits"][key]
    area = record["areas"].get(key) or {}
    bodies = {"area": area, "assembly": record["assemblies"].get(area.get("assembly")) or {},
              "job": record["job"] or {}, "found": own.get("found") or {}}  # fmt: skip
    today = {one["line"]: one["verdict"] for one in fit(bodies["job"], bodies["assembly"], area, bodies["found"],
                                                        own.get("day"))}  # fmt: skip
    lines = [_line(one, bodies, today) for one in own.get("lines") or []]
    names = [one["line"] for one in lines]
    return {
        "area": key,
        "name": area.get("name") or key,
        "assembly": bodies["assembly"].get("name"),
        "digest": own.get("digest"),
        "by": person(people, own.get("by")),
        "at": own.get("at"),
        "day": own.get("day"),
        "said_by": {"name": own.get("name"), "role": own.get("role")},
        "note": own.get("note") or "",
        "found": bodies["found"],
        "result": own.get("result"),
        "heads": len(own.get("heads") or []),
        "versions": versions(own, people),
        "later": [{"what": what, "at": bodies[what]["at"]} for what in CHANGED if _after(bodies[what], own)],
        "left_out": [name for name in today if name not in names],
        "lines": lines,
    }


def _line(one: dict[str, Any], bodies: dict[str, Any], today: dict[str, Any]) -> dict[str, Any]:
    """A line as it was recorded. ``now``: what it would be with area, assembly and job as they stand, where that is
    another result."""
    verdict = one["verdict"]
    now = today.get(one["line"])
    return {
        "line": one["line"],
        "result": verdict.get("result"),
        "working": {name: verdict.get(name) for name in ("rule", "rulebook", "reason")}
        | {name: verdict.get(name) or {} for name in ("inputs", "values")},
        "pair": pair_of(one["line"], verdict, bodies),
        "get": to_get(one["line"], verdict, bodies),
        "accepted": accepted(verdict),
        "recomputed": rejudge_line(one),
        "now": now if now != verdict.get("result") else None,
    }


def _after(thing: dict[str, Any], own: dict[str, Any]) -> bool:
    try:
        return datetime.fromisoformat(thing["at"]) > datetime.fromisoformat(own["at"])
    except (KeyError, TypeError, ValueError):  # not here, or a time without its zone beside one with it
        return False
