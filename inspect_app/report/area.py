"""Roof areas: their measures, their plan as data, and the places on it."""

from typing import Any

from inspect_app.report.area_zones import zone_bands

FIELDS = ("slope", "panel_length", "panel_count", "coverage", "start")


def areas(record: dict[str, Any], numbers: dict[str, Any], placed: list[dict[str, Any]],
          stations: list[dict[str, Any]]) -> list[dict[str, Any]]:  # fmt: skip
    """Each area with its assembly's name, its outline as entered, its fixed line, panels placed on the walks
    and the numbers of its stations."""
    told = []
    for key in numbers["areas"]:
        area = record["areas"][key]
        assembly = record["assemblies"].get(area.get("assembly")) or {}
        told.append({
            "id": key, "digest": area.get("digest"), "name": area.get("name"),
            "assembly": {"id": area.get("assembly"), "name": assembly.get("name")},
            "coverage": area.get("coverage") or assembly.get("coverage"),
            "outline": area.get("outline"), "edges": area.get("edges") or [], "start": area.get("start"),
            "slope": area.get("slope"), "panel_length": area.get("panel_length"),
            "panel_count": area.get("panel_count"), "fixed_line": area.get("fixed_line"),
            "zones": area.get("zones") or [],
            "placed": [one for one in placed if one["area"] == key],
            "stations": [one["n"] for one in stations if one["area"] == key],
            "heads": len(area.get("heads") or []),
            "place": area.get("place"), "openings": area.get("openings") or [],
            "zone_map": {name: (area.get("zone_map") or {}).get(name) for name in ("state", "by", "standard")},
            "bands": zone_bands(area, assembly or None),
        })  # fmt: skip
    return told


def placed(record: dict[str, Any], numbers: dict[str, Any]) -> list[dict[str, Any]]:
    """Panels recorded as placed: ``{"walk", "area", "from", "to"}`` in the order of walks."""
    return [
        {"walk": n, "area": one.get("area"), "from": one.get("from"), "to": one.get("to")}
        for key, n in numbers["walks"].items()
        for one in record["walks"][key].get("placed") or []
    ]
