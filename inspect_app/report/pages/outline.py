"""A roof area's outline for the eye: its own plane, x along the eave, y up the slope. Nothing here is
judged."""

from typing import Any

from inspect_app.rules.unit import change_unit, dimension_of

MOST_STRIPS = 2000


class Undrawable(ValueError):
    """The outline cannot be drawn: too few points, or numbers that are none."""


class Outline:
    """Points, extents and panel strips of one area (as in the report's contents), in the outline's own
    unit."""

    def __init__(self, area: dict[str, Any]) -> None:
        outline = area.get("outline") or {}
        self.unit = str(outline.get("unit"))
        try:
            self.points = [(float(x), float(y)) for x, y in outline.get("points") or []]
        except (TypeError, ValueError) as reason:
            raise Undrawable(str(reason)) from reason
        if (
            len(self.points) < 3
            or dimension_of(self.unit) != "length"
            or not all(_sane(*point) for point in self.points)
        ):
            raise Undrawable("too few points, or numbers beyond a roof")
        xs, ys = zip(*self.points, strict=True)
        self.left: float = min(xs)
        self.low: float = min(ys)
        self.width: float
        self.height: float
        self.width, self.height = max(xs) - self.left, max(ys) - self.low
        if not (self.width > 0 and self.height > 0):
            raise Undrawable("an outline without an inside")
        self.metre = change_unit(1.0, self.unit, "m")
        self.kinds = [str(kind) for kind in area.get("edges") or []]
        self.from_right = area.get("start") == "right"
        self.module = self.along(area, "coverage") or 0.0

    def along(self, thing: dict[str, Any], name: str) -> float | None:
        """A length of ``thing`` in the outline's unit, None where there is none."""
        quantity = thing.get(name)
        try:
            value = change_unit(float(quantity["value"]), quantity["unit"], self.unit)  # type: ignore[index]
        except (TypeError, KeyError, ValueError):
            return None
        return value if abs(value) < 1e6 else None

    def in_unit(self, unit: str) -> float:
        """How many of the outline's units one ``unit`` is."""
        return change_unit(1.0, unit, self.unit)

    def strips(self) -> list[tuple[float, float]]:
        """Where each panel lies, panel 1 first: ``(from, to)`` in x."""
        if not self.module > 0 or self.width / self.module > MOST_STRIPS:
            return [(self.left, self.left + self.width)]
        made = []
        near = 0.0
        while near < self.width * (1 - 1e-9):
            far = min(near + self.module, self.width)
            made.append(
                (self.left + self.width - far, self.left + self.width - near) if self.from_right
                else (self.left + near, self.left + far)
            )  # fmt: skip
            near = far
        return made

    def seams(self) -> list[float]:
        """The x of each seam between two panels."""
        inner = [strip[0] if self.from_right else strip[1] for strip in self.strips()]
        return inner[:-1]

    def runs(self, first: Any, last: Any) -> list[tuple[float, float]]:
        """The strips of panels ``first`` to ``last``."""
        if not isinstance(first, int) or not isinstance(last, int):
            return []
        return self.strips()[max(first - 1, 0) : last] if last >= 1 else []

    def middle(self, panel: Any) -> float | None:
        """The x of a panel's middle, None for a panel that is not on this area."""
        strips = self.strips()
        if not isinstance(panel, int) or not 1 <= panel <= len(strips):
            return None
        return sum(strips[panel - 1]) / 2

    def edges(self) -> list[tuple[tuple[float, float], tuple[float, float], str]]:
        """``(from, to, kind)`` of each edge."""
        return [
            (point, self.points[(at + 1) % len(self.points)], self.kinds[at] if at < len(self.kinds) else "")
            for at, point in enumerate(self.points)
        ]

    def ends(self, x: float) -> tuple[float, float]:
        """Low and high end of the roof at ``x``."""
        cuts = [
            ay + (x - ax) / (bx - ax) * (by - ay)
            for (ax, ay), (bx, by), _ in self.edges() if (ax <= x < bx) or (bx <= x < ax)
        ]  # fmt: skip
        return (min(cuts), max(cuts)) if cuts else (self.low, self.low + self.height)


def _sane(x: float, y: float) -> bool:
    return abs(x) < 1e6 and abs(y) < 1e6
