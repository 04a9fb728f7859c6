"""The places looked at, and what was answered there."""

from typing import Any

from inspect_app.report.order import worst
from inspect_app.report.person import person


def stations(record: dict[str, Any], people: dict[str, Any], numbers: dict[str, Any],
             answers: list[dict[str, Any]]) -> list[dict[str, Any]]:  # fmt: skip
    """Every station in order: where it is, how it was chosen, whether it was reached, its worst result and
    its
    answers. ``result`` is None where nothing was answered."""
    told = []
    for key, n in numbers["stations"].items():
        station = record["stations"][key]
        own = [answer for answer in answers if answer["station"] == n]
        told.append(
            {
                "id": key,
                "n": n,
                "digest": station.get("digest"),
                "walk": numbers["walks"].get(station.get("walk")),
                "area": station.get("area"),
                "panel": station.get("panel"),
                "zone": station.get("zone"),
                "from_low_end": station.get("from_low_end"),
                "chosen": station.get("chosen"),
                "lot": station.get("lot"),
                "reached": station.get("reached"),
                "by": person(people, station.get("by")),
                "at": station.get("at"),
                "result": worst([answer["result"] for answer in own]),
                "answers": [answer["id"] for answer in own],
            }
        )
    return told
