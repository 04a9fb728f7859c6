"""The same roof by another library: Shapely's polygons, distances and buffers. For tests alone."""

import math
from typing import Any

from shapely import LineString, Point, Polygon, box, prepare
from shapely.affinity import scale

FOOT = {"ft": 1.0, "m": 0.3048}


class ShapelyRoof:
    """An area's outline less the openings within it, and its edges in plan with their widths."""

    def __init__(self, body: dict[str, Any]) -> None:
        self.body, self.foot = body, FOOT[body["outline"]["unit"]]
        self.outline = _polygon(body["outline"])
        holes = [_polygon(one["outline"]) for one in body.get("openings", [])]
        self.holes = [hole for hole in holes if hole.is_valid and self.outline.is_valid and self.outline.contains(hole)]
        self.shape = self.outline
        for hole in self.holes:
            self.shape = self.shape.difference(hole)
        self.left, self.low, self.right, self.high = self.outline.bounds
        self.cosine = math.cos(math.atan(float(body["slope"]["value"]) / 12))
        self.rings = [self._edges(self.outline, body["edges"])]
        self.rings += [self._edges(hole, ["penetration"] * (len(hole.exterior.coords) - 1)) for hole in self.holes]
        prepare(self.shape)

    def _edges(self, polygon: Polygon, kinds: list[str]) -> list[tuple[LineString, float]]:
        corners = list(scale(polygon, 1, self.cosine, origin=(0, 0)).exterior.coords)
        widths = self.body["zone_map"]["widths"]
        return [(LineString(corners[at : at + 2]), float(widths[kind]["value"]) * self.foot)
                for at, kind in enumerate(kinds)]  # fmt: skip

    def ordered(self, start: float, end: float) -> float:
        """The longest piece of the strip between two x, from its lowest to its highest point."""
        cut = self.shape.intersection(box(start, self.low - 1, end, self.high + 1))
        parts = [part for part in getattr(cut, "geoms", [cut]) if part.area > 1e-9]
        return max((part.bounds[3] - part.bounds[1] for part in parts), default=0.0)

    def seam(self, x: float) -> list[tuple[float, float]]:
        """The pieces of roof along the line at x."""
        cut = self.shape.intersection(LineString([(x, self.low - 1), (x, self.high + 1)]))
        parts = [part.bounds for part in getattr(cut, "geoms", [cut]) if part.length > 0]
        return sorted((bounds[1], bounds[3]) for bounds in parts)

    def zone(self, x: float, y: float) -> str:
        """By the distance to each edge in plan; the random outlines have no two edges in one line."""
        spot = Point(x, y * self.cosine)
        near = [[width > 0 and edge.distance(spot) <= width for edge, width in ring] for ring in self.rings]
        if any(ring[at] and ring[at - 1] for ring in near for at in range(len(ring))):
            return "corner"
        return "edge" if any(any(ring) for ring in near) else "field"

    def buffers(self) -> tuple[Any, Any]:
        """``(edge, corner)`` zones in plan, as polygons with round ends."""
        strips = [[edge.buffer(width, quad_segs=64) if width else Polygon() for edge, width in ring]
                  for ring in self.rings]  # fmt: skip
        edge, corner = Polygon(), Polygon()
        for ring in strips:
            for at, strip in enumerate(ring):
                edge, corner = edge.union(strip), corner.union(strip.intersection(ring[at - 1]))
        return edge, corner

    def walk(self, x: float, spacings: dict[str, float]) -> list[tuple[float, str]]:
        """Every station's y and zone, one step after the other."""
        found = []
        for low, high in self.seam(x):
            y = low + spacings[self.zone(x, low)] / 2
            while y < high:
                found.append((y, self.zone(x, y)))
                y += spacings[found[-1][1]]
        return found


def _polygon(outline: dict[str, Any]) -> Polygon:
    return Polygon([(float(x), float(y)) for x, y in outline["points"]])
