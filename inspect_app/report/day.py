"""Walk by walk: weather, metal, crew and what was placed, as it was told when the walk began."""

from typing import Any

from inspect_app.report.person import person


def days(record: dict[str, Any], people: dict[str, Any], definitions: dict[str, Any], numbers: dict[str, Any],
         answers: list[dict[str, Any]], placed: list[dict[str, Any]]) -> list[dict[str, Any]]:  # fmt: skip
    """One record for each walk, in order of time."""
    told = []
    for key, n in numbers["walks"].items():
        walk = record["walks"][key]
        definition = definitions.get(walk.get("definition")) or {}
        told.append(
            {
                "n": n,
                "id": key,
                "digest": walk.get("digest"),
                "at": walk.get("at"),
                "clock": walk.get("clock"),
                "by": person(people, walk.get("by")),
                "independent": walk.get("independent"),
                "definition": {
                    "digest": walk.get("definition"),
                    "title": definition.get("title"),
                    "id": definition.get("id"),
                    "version": definition.get("version"),
                    "hold": bool(definition.get("hold")),
                    "known": bool(definition),
                },
                "areas": [_area_name(record, area) for area in walk.get("areas") or []],
                "crew": walk.get("crew"),
                "head_count": walk.get("head_count"),
                "weather": walk.get("weather") or {},
                "metal_temperature": walk.get("metal_temperature"),
                "metal_uncertainty": walk.get("metal_uncertainty"),
                "metal_temperature_by": walk.get("metal_temperature_by"),
                "fall_protection": walk.get("fall_protection"),
                "placed": [one | {"name": _area_name(record, one["area"])} for one in placed if one["walk"] == n],
                "answers": [answer["id"] for answer in answers if answer["walk"] == n and answer["station"] is None],
                "counts": {
                    "stations": len(walk.get("stations") or []),
                    "answers": len(walk.get("answers") or []),
                    "photos": len(walk.get("photos") or []),
                },
            }
        )
    return told


def _area_name(record: dict[str, Any], area: Any) -> Any:
    return (record["areas"].get(area) or {}).get("name") or area
