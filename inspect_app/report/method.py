"""The rules and instruments that the results rest on."""

from typing import Any


def rules_used(answers: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """``[{"rule", "count", "rulebooks"}]``: each rule version by which an answer was judged."""
    names = sorted({answer["working"]["rule"] for answer in answers if answer["working"]})
    told = []
    for name in names:
        own = [answer["working"] for answer in answers if answer["working"] and answer["working"]["rule"] == name]
        books = sorted({str(working["rulebook"]) for working in own if working["rulebook"]})
        told.append({"rule": name, "count": len(own), "rulebooks": books})
    return told


def instruments(answers: list[dict[str, Any]], days: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """``[{"instrument", "count"}]`` for readings, and for each walk how the metal's temperature was taken."""
    names = sorted({answer["instrument"] for answer in answers if answer["instrument"] and answer["reading"]})
    told: list[dict[str, Any]] = [
        {
            "instrument": name,
            "count": sum(answer["instrument"] == name and bool(answer["reading"]) for answer in answers),
        }
        for name in names
    ]
    for day in days:
        if day["metal_temperature"]:
            told.append(
                {
                    "instrument": "metal_temperature",
                    "walk": day["n"],
                    "by": day["metal_temperature_by"],
                    "uncertainty": day["metal_uncertainty"],
                }
            )
    return told
