"""The rules and instruments that the results rest on."""

from typing import Any

from inspect_app.record.instruments import OURS


def rules_used(answers: list[dict[str, Any]], fits: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """``[{"rule", "count", "lines", "rulebooks"}]``: each rule version by which answers, and lines of fit checks, were
    judged."""
    by_answer = [answer["working"] for answer in answers if answer["working"]]
    by_line = [line["working"] for one in fits for line in one["lines"] if line["working"]["rule"]]
    told = []
    for name in sorted({working["rule"] for working in by_answer + by_line}):
        own, lines = ([one for one in some if one["rule"] == name] for some in (by_answer, by_line))
        books = sorted({str(working["rulebook"]) for working in own + lines if working["rulebook"]})
        told.append({"rule": name, "count": len(own), "lines": len(lines), "rulebooks": books})
    return told


def uncertainties(job: dict[str, Any]) -> list[dict[str, Any]]:
    """``[{"instrument", "uncertainty", "source", "own"}]``: how far each instrument may be off, and whether the job
    states that or it is our default."""
    told = job.get("instruments") or {}
    return [{"instrument": name} | told[name] for name in OURS["US"] if name in told]


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
