"""Zones of an area as bands to draw: each run of like panels once."""

from typing import Any

from inspect_app.rules.likeness import likeness
from inspect_app.rules.panel import panel_count
from inspect_app.rules.refused import Refused
from inspect_app.rules.roof import read_roof
from inspect_app.rules.zones import panel_runs

FINE = 3  # decimals of the outline's unit: a plan is drawn from them, nothing is measured


def zone_bands(area: dict[str, Any], assembly: dict[str, Any] | None) -> list[dict[str, Any]]:
    """``[{"from", "to", "runs": [[low, high, zone]]}]`` of panels, the starting edge first, y in the outline's unit;
    empty where nothing can be laid out, or nobody told the zones."""
    try:
        roof = read_roof(area, assembly)
        alike = likeness(roof)
        bands: list[dict[str, Any]] = []
        known: dict[int, Any] = {}
        for number in range(1, panel_count(roof) + 1):
            first = alike[number - 1]
            if first not in known:
                runs = panel_runs(roof, first)
                known[first] = [[round(low, FINE), round(high, FINE), zone] for low, high, zone in runs]
            if bands and bands[-1]["runs"] == known[first]:
                bands[-1]["to"] = number
            else:
                bands.append({"from": number, "to": number, "runs": known[first]})
    except Refused:
        return []
    return bands if any(run[2] is not None for band in bands for run in band["runs"]) else []
