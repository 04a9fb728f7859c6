"""Findings as flat rows: what each one is counted under."""

from inspect_app.record.trend_filter import Filter, crew_key

LOOKED_BY = ("item", "area", "zone", "crew", "assembly")


def finding_rows(record: dict, wanted: "Filter | None" = None) -> list:
    """``[{"id", "digest", "at", "day", "area", "zone", "crew", "firm", "assembly", "item", "severity", "state",
    "closed", "by_day"}]`` in order of id, ``""`` where nobody told.

    ``crew`` (as ``crew_key`` reads it) is who it was assigned to, else who set the panel, else the walk's; ``item`` is
    ``definition id/item id``, so that a checklist's versions count together; ``day`` the device's day it was opened;
    ``closed`` what ended it, ``{"digest", "by", "at"}``, or None."""
    setters = crews_at(record)
    found = []
    for name in sorted(record["findings"]):
        row = _row(record, record["findings"][name], setters)
        if wanted is None or _taken(row, wanted):
            found.append(row)
    return found


def _row(record: dict, finding: dict, setters: dict) -> dict:
    assignment = finding.get("assignment") or {}
    ordered = assignment if not assignment.get("problems") else {}
    crew = ordered.get("crew") or who_set(setters, finding["area"], finding["panel"]) or finding.get("crew")
    by_hand = finding["source"] == "hand"
    return {
        "id": finding["id"], "digest": finding["opened"]["digest"], "at": finding["opened"]["at"],
        "day": finding["opened"]["at"][:10], "area": finding["area"] or "", "zone": finding["zone"] or "",
        "crew": crew_key(crew), "firm": finding.get("firm") or "",
        "assembly": (record["areas"].get(finding["area"]) or {}).get("assembly") or "",
        "item": "" if by_hand else "/".join(finding["id"].split("/")[1:]), "severity": finding["severity"] or "",
        "state": finding["state"], "closed": finding["closed_by"], "by_day": ordered.get("by_day"),
    }  # fmt: skip


def look_counts(record: dict, wanted: Filter) -> "dict | None":
    """``{name: {key: n}}``: how many answers told good from bad under each key, of what is wanted; what is often looked
    at is often found. None where firms are wanted: a look belongs to none."""
    if "firm" in wanted.wanted:
        return None
    setters = crews_at(record)
    counts: dict = {name: {} for name in LOOKED_BY}
    for subject in sorted(record["answers"]):
        answer = record["answers"][subject]
        if answer["result"] not in ("pass", "fail") or answer.get("severity") == "record":
            continue
        station = record["stations"].get(answer.get("station")) or {}
        area = answer.get("area") or station.get("area")
        crew = who_set(setters, area, station.get("panel")) or (record["walks"].get(answer["walk"]) or {}).get("crew")
        row = {
            "item": "/".join(subject.split("/")[1:]), "area": area or "", "zone": station.get("zone") or "",
            "crew": crew_key(crew), "assembly": (record["areas"].get(area) or {}).get("assembly") or "",
            "severity": answer.get("severity") or "", "day": answer["at"][:10],
        }  # fmt: skip
        if _taken(row, wanted):
            for name in LOOKED_BY:
                counts[name][row[name]] = counts[name].get(row[name], 0) + 1
    return counts


def _taken(row: dict, wanted: Filter) -> bool:
    return wanted.in_days(row["day"]) and not [1 for name in wanted.wanted if not wanted.takes(name, row[name])]


def crews_at(record: dict) -> dict:
    """``{area: [(from, to, placed to, crew)]}`` of the lots of daily work, in order of their ids."""
    there: dict = {}
    for lot_id in sorted(record["lots"]):
        lot = record["lots"][lot_id]
        for row in lot["population"] if lot["purpose"] == "work" else []:
            there.setdefault(row["area"], []).append((row["from"], row["to"], lot.get("placed_to") or 0, lot["crew"]))
    return there


def who_set(setters: dict, area: "str | None", panel: "int | None") -> "str | None":
    """The crew whose lot set the panel, else the one whose lot planned it; None where neither is told."""
    if panel is None:
        return None
    planned = [one for one in setters.get(area, []) if one[0] <= panel <= one[1]]
    done = [one for one in planned if panel <= one[2]]
    crew: str | None = (done or planned)[0][3] if planned else None
    return crew


def crew_names(record: dict) -> dict:
    """``{crew key: its name}``: of several ways to write it the first in order."""
    said = [lot.get("crew") for lot in record["lots"].values()]
    said += [walk.get("crew") for walk in record["walks"].values()]
    said += [(finding.get("assignment") or {}).get("crew") for finding in record["findings"].values()]
    names: dict = {}
    for name in sorted([one for one in said if one]):
        names.setdefault(crew_key(name), " ".join(name.split()))
    return names
