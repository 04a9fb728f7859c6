"""Roof areas as an entry holds them: shapes that an estimator works by hand, and shapes that chance draws."""

import math
import random
from typing import Any

KINDS = ("eave", "ridge", "rake", "hip", "valley", "wall")
Body = dict[str, Any]


def q(value: float | str, unit: str) -> dict[str, str]:
    return {"value": str(value), "unit": unit}


def assembly(**spacings: str) -> Body:
    """Zones by name with their spacing in inches; 12, 6 and 6 in where none are given."""
    told = spacings or {"field": "12", "edge": "6", "corner": "6"}
    return {"coverage": q("16", "in"), "zones": [{"name": name, "spacing": q(told[name], "in")} for name in told]}


def area(points: list[tuple[Any, Any]], edges: str, **changed: Any) -> Body:
    """A body of an area in feet, 4:12, panels of 2 ft from the left, one zone."""
    return {
        "name": "invented", "slope": q("4", "/12"), "start": "left", "coverage": q("2", "ft"), "fixed_line": None,
        "outline": {"unit": "ft", "points": [[str(x), str(y)] for x, y in points]}, "edges": edges.split(),
        "zones": ["field"],
    } | changed  # fmt: skip


def zone_map(drawn: list[Body] | None = None, **feet: float) -> Body:
    return {"state": "proposed", "by": "", "standard": "invented", "basis": None, "drawn": drawn or [],
            "widths": {kind: q(feet[kind], "ft") for kind in feet}}  # fmt: skip


def hole(*points: tuple[Any, Any], unit: str = "ft") -> Body:
    return {"name": "curb", "outline": {"unit": unit, "points": [[str(x), str(y)] for x, y in points]}}


RECTANGLE = area([(0, 0), (64, 0), (64, 40), (0, 40)], "eave rake ridge rake")
TRIANGLE = area([(0, 0), (20, 0), (10, 10)], "eave hip hip")
TRAPEZOID = area([(0, 0), (20, 0), (14, 12), (6, 12)], "eave hip ridge hip")
ELL = area([(0, 0), (10, 0), (10, 8), (6, 8), (6, 20), (0, 20)], "eave rake ridge wall ridge rake")
# A gable plane whose right side ends at a hip, as the main roof does at an outer corner.
HIP = area([(0, 0), (30, 0), (20, 10), (0, 10)], "eave hip ridge rake")
# Between a valley at its left and a hip at its right: cut askew at both ends.
VALLEY_AND_HIP = area([(0, 0), (10, 10), (20, 20), (20, 30), (0, 10)], "valley valley rake hip rake")
SHAPES = {"rectangle": RECTANGLE, "triangle": TRIANGLE, "trapezoid": TRAPEZOID, "ell": ELL, "hip": HIP,
          "valley and hip": VALLEY_AND_HIP}  # fmt: skip


def by_chance(seed: int) -> Body:
    """A star of 3 to 12 corners with strips, sometimes a curb in it, sometimes in metres; it may still cross itself
    where its middle lies outside."""
    chance = random.Random(seed)
    unit = chance.choice(("ft", "m"))
    size = 1.0 if unit == "ft" else 0.3048
    body = area(_star(chance, chance.randint(3, 12), 0.0, 0.0, 5 * size, 60 * size), "")
    body["edges"] = [chance.choice(KINDS) for _ in body["outline"]["points"]]
    body["outline"]["unit"] = unit
    body["slope"] = q(chance.choice((0, 1, 4, 12)), "/12")
    body["start"] = chance.choice(("left", "right"))
    body["coverage"] = q(16, "in") if unit == "ft" else q(450, "mm")
    body["zones"] = ["field", "edge", "corner"]
    middle = (chance.uniform(-9, 9) * size, chance.uniform(-9, 9) * size)
    body["openings"] = [hole(*_star(chance, 4, *middle, size, 4 * size), unit=unit)] if seed % 2 else []
    body["zone_map"] = zone_map(**{kind: chance.choice((0, 3, 6)) for kind in (*KINDS, "penetration")})
    return body


def _star(chance: random.Random, corners: int, x: float, y: float, least: float, most: float) -> list[tuple[str, str]]:
    """Corners around a middle, none of them so blunt that its two edges count as one."""
    while True:
        ring = []
        for turn in sorted(chance.uniform(0, 2 * math.pi) for _ in range(corners)):
            far = chance.uniform(least, most)
            ring.append((x + far * math.cos(turn), y + far * math.sin(turn)))
        ways = [math.atan2(b[1] - a[1], b[0] - a[0]) for a, b in zip(ring, ring[1:] + ring[:1], strict=True)]
        if all(abs(math.sin(way - ways[at - 1])) > 0.06 for at, way in enumerate(ways)):
            return [(f"{one[0]:.4f}", f"{one[1]:.4f}") for one in ring]
