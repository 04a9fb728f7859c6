"""Roofs in growing sizes as a job file's areas: planes of 60 seams, the zones of each proposed by strips."""

from math import ceil

SEAMS, EACH = 60, 25  # of one plane, and places along each seam: 4 ft at either end at 6 in, 10 ft between at 12 in
LONG = 18.0  # ft


def q(value: float, unit: str) -> dict:
    return {"value": f"{value:g}", "unit": unit}


def planes(places: int) -> dict[str, dict]:
    """Planes with so many places in all, in rows of eight, ridge to the north."""
    count = max(1, ceil(places / (SEAMS * EACH)))
    return {f"a{n}": plane(n, min(SEAMS, places // EACH) + 1) for n in range(count)}


def plane(number: int, panels: int) -> dict:
    wide, long = f"{panels * 16 / 12:.6f}", f"{LONG:g}"
    return {
        "name": f"Plane {number + 1}", "assembly": "flange", "slope": q(4, "/12"), "start": "left",
        "coverage": q(16, "in"), "edges": ["eave", "rake", "ridge", "rake"], "zones": ["field", "edge", "corner"],
        "outline": {"unit": "ft", "points": [["0", "0"], [wide, "0"], [wide, long], ["0", long]]},
        "fixed_line": {"from_low_end": q(LONG, "ft"), "by": "ridge zee", "end": "high"},
        "place": {"unit": "ft", "east": f"{number % 8 * (panels + 3) * 16 / 12:.3f}", "north": f"{number // 8 * -24}",
                  "up": "0"},
        "zone_map": {"state": "proposed", "by": "", "standard": "", "drawn": [],
                     "widths": {kind: q(4, "ft") for kind in ("eave", "ridge")}},
    }  # fmt: skip
