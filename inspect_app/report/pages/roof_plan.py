"""The whole roof from above, north up: every area in its place, foreshortened by its slope."""

import math
from typing import Any, NamedTuple

from reportlab.lib.colors import white

from inspect_app.report.pages.ground import draw_edges, draw_fixed, draw_ground
from inspect_app.report.pages.look import ACCENT, BOLD, GREY, INK, PLAIN
from inspect_app.report.pages.lot_words import ranges
from inspect_app.report.pages.mark import draw_mark
from inspect_app.report.pages.outline import Outline, Undrawable
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.plan import scale_bar
from inspect_app.report.pages.plan_places import found_by_hand, place_spots
from inspect_app.report.pages.text import plain
from inspect_app.rules.unit import change_unit

FARTHEST, FLATTEST = 1e6, 1e-3  # metres from the plan's origin, and what is left to see of a roof as steep as a wall
APART = 9.0  # points between two tags that can both be read
RIM, FOOT, NORTH = 8.0, 16.0, 26.0  # the arrow has the right margin for itself


class Placed(NamedTuple):
    """An area in its place: metres east and north of its origin, bearing of up-slope, its foreshortening."""

    area: dict[str, Any]
    shape: Outline
    east: float
    north: float
    up: float
    cosine: float
    metre: float

    def plan(self, x: float, y: float) -> tuple[float, float]:
        """A point of the area's plane as metres east and north."""
        across, along = x * self.metre, y * self.cosine * self.metre
        return (self.east + across * math.cos(self.up) + along * math.sin(self.up),
                self.north - across * math.sin(self.up) + along * math.cos(self.up))  # fmt: skip


def placed_areas(areas: list[dict[str, Any]]) -> list[Placed]:
    """Those that somebody placed and that can be drawn."""
    found = []
    for area in areas:
        place = area.get("place") or {}
        try:
            shape = Outline(area)
            per = change_unit(1.0, str(place.get("unit") or shape.unit), "m")
            east, north, up = (float(place[name]) for name in ("east", "north", "up"))
            numbers = (east * per, north * per, math.radians(up), _cosine(area.get("slope")), shape.metre)
        except (Undrawable, KeyError, TypeError, ValueError):
            continue
        if all(abs(number) < FARTHEST for number in numbers) and abs(numbers[3]) > FLATTEST:
            found.append(Placed(area, shape, *numbers))
    return found


def _cosine(slope: Any) -> float:
    try:
        value = float(slope["value"])
    except (TypeError, KeyError, ValueError):
        return 1.0
    if slope.get("unit") == "deg":
        return math.cos(math.radians(value))
    return 1 / math.hypot(1, value / 100 if slope.get("unit") == "%" else value / 12)


def roof_height(placed: list[Placed], width: float, tallest: float) -> float:
    """The height of the plan at that width, ``tallest`` at most."""
    west, south, east, north = _extent(placed)
    return min((width - 2 * RIM - NORTH) / (east - west) * (north - south) + 2 * RIM + FOOT, tallest)


def _extent(placed: list[Placed]) -> tuple[float, float, float, float]:
    points = [one.plan(*point) for one in placed for point in one.shape.points]
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def draw_roof(canvas: Any, width: float, height: float, placed: list[Placed], page: Page, labelled: bool = True,
              ) -> None:  # fmt: skip
    """The plan in a box of that size: coverage, zones, fixed lines, places, the failed ones numbered as findings.
    Without ``labelled``: no names and no numbers, for the cover."""
    west, south, east, north = _extent(placed)
    scale = min((width - 2 * RIM - NORTH) / (east - west), (height - 2 * RIM - FOOT) / (north - south))
    left = (width - NORTH - (east - west) * scale) / 2

    def to_page(one: Placed) -> Any:
        def to(x: float, y: float) -> tuple[float, float]:
            e, n = one.plan(x, y)
            return left + (e - west) * scale, RIM + FOOT + (n - south) * scale

        return to

    canvas.saveState()
    taken: list[tuple[float, float, float, float]] = []
    for one in placed:
        runs = (page.contents["coverage"].get(one.area["id"]) or {}).get("runs") or []
        draw_ground(canvas, one.shape, to_page(one), one.area, runs)
    for one in placed:
        draw_edges(canvas, one.shape, to_page(one))
        draw_fixed(canvas, one.shape, to_page(one), one.area["fixed_line"])
    for one in placed:
        _places(canvas, one, to_page(one), page, taken, labelled)
    for one in placed if labelled else ():
        _name(canvas, one, to_page(one), taken)
    _north(canvas, left + (east - west) * scale + NORTH - 6, height - 34, page.say("roof_north"))
    scale_bar(canvas, scale * change_unit(1.0, "m" if page.voice.units == "SI" else "ft", "m"), left, page.voice)
    canvas.restoreState()


def _places(canvas: Any, one: Placed, to: Any, page: Page, taken: list[Any], labelled: bool) -> None:
    live = [each for each in page.contents["findings"] if each["state"] != "withdrawn"]
    findings: dict[Any, list[int]] = {}
    for each in live:
        findings.setdefault(each["station"], []).append(each["n"])
    tags: list[tuple[float, float, list[int]]] = []
    for station in page.contents["stations"]:
        x, along = one.shape.middle(station.get("panel")), one.shape.along(station, "from_low_end")
        if station["area"] != one.area["id"] or x is None or along is None:
            continue
        at: tuple[float, float] = to(x, one.shape.ends(x)[0] + along)
        failed = bool(station["n"] and station["n"] in findings)
        draw_mark(canvas, at[0], at[1], station["result"], station["reached"] or "yes", 2.9 if failed else 1.7)
        taken.append((at[0] - 2, at[1] - 2, at[0] + 2, at[1] + 2))
        if failed:
            tags.append((at[0] + 5, at[1] - 2.4, findings[station["n"]]))
    by_hand = found_by_hand(page.contents["findings"], one.area["id"])
    for u, v, each in place_spots(one.shape, by_hand, lambda x: x, lambda y: y):
        at = to(u, v)
        draw_mark(canvas, at[0], at[1], "fail", size=2.9)
        taken.append((at[0] - 2, at[1] - 2, at[0] + 2, at[1] + 2))
        tags.append((at[0] + 5, at[1] - 2.4, [int(each["n"][1:])]))
    for x, y, numbers in _beside(tags) if labelled else ():  # over every mark, so that none is read as another's
        _tag(canvas, x, y, ", ".join(f"F{text}" for text in ranges(page, numbers).split(", ")), ACCENT, 6.4, taken)


def _beside(tags: list[tuple[float, float, list[int]]]) -> list[tuple[float, float, list[int]]]:
    """The tags with those that would cover each other as one."""
    told: list[tuple[float, float, list[int]]] = []
    for x, y, numbers in tags:
        near = next((one for one in told if abs(one[0] - x) < APART and abs(one[1] - y) < APART), None)
        if near is None:
            told.append((x, y, list(numbers)))
        else:
            near[2].extend(numbers)
    return told


def _name(canvas: Any, one: Placed, to: Any, taken: list[Any]) -> None:
    xs, ys = zip(*(to(*point) for point in one.shape.points), strict=True)
    text = plain(one.area["name"], 40)
    wide = canvas.stringWidth(text, BOLD, 7.4)
    middle = (min(xs) + max(xs)) / 2 - wide / 2
    spots = [(min(ys) + max(ys)) / 2 + step for step in (0, 12, -12, 24, -24, 36, -36, 48, -48)]
    boxes = [(middle - 2, y - 2, middle + wide + 2, y + 7) for y in spots]
    free = [at for at, box in enumerate(boxes) if not any(_meet(box, other) for other in taken)]
    _tag(canvas, middle, spots[free[0] if free else 0], text, INK, 7.4, taken)


def _meet(one: Any, other: Any) -> bool:
    return bool(one[0] < other[2] and one[2] > other[0] and one[1] < other[3] and one[3] > other[1])


def _tag(canvas: Any, x: float, y: float, text: str, ink: Any, size: float, taken: list[Any]) -> None:
    wide = canvas.stringWidth(text, BOLD, size)
    canvas.setFillColor(white)
    canvas.rect(x - 1.2, y - 1.4, wide + 2.4, size + 1, stroke=0, fill=1)
    canvas.setFillColor(ink)
    canvas.setFont(BOLD, size)
    canvas.drawString(x, y, text)
    taken.append((x - 1.2, y - 1.4, x + wide + 1.2, y + size))


def _north(canvas: Any, x: float, y: float, word: str) -> None:
    """An arrow split down its middle, one half filled: it reads upright on any print."""
    for side, fill in ((-1, 0), (1, 1)):
        half = canvas.beginPath()
        half.moveTo(x, y + 18)
        half.lineTo(x + side * 5, y)
        half.lineTo(x, y + 4)
        half.close()
        canvas.setStrokeColor(INK)
        canvas.setFillColor(INK)
        canvas.setLineWidth(0.6)
        canvas.drawPath(half, stroke=1, fill=fill)
    canvas.setFont(BOLD, 7)
    canvas.drawCentredString(x, y + 20.5, word)
    canvas.setFillColor(GREY)
    canvas.setFont(PLAIN, 6.2)
