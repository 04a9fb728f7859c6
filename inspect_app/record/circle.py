"""A place on a roof and a radius around it: how far from it anything that names a place on the roof lies.

On its own area distances are true lengths in the plane of the roof. On another they are those of the plan, as seen from
above, and only where the drawing places both: what lies higher or lower is no nearer than that, so that nothing within
the radius is missed for it. A place is measured on every drawing that its area ever had, and the nearest counts.
"""

import math

from inspect_app.rules.chord import pieces
from inspect_app.rules.inputs import plain
from inspect_app.rules.panel import panel, strip
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused
from inspect_app.rules.roof import read_roof
from inspect_app.rules.unit import change_unit

NEAR = 1e-9  # of the radius: at it is within it
KEYS = ("area", "panel", "from_low_end", "radius")


class Circle:
    """``radius`` and all distances in ``unit``, that of the area's outline as it stands.

    ``place``: ``{"area", "panel", "from_low_end", "radius"}``. ``drawn``: whether the area's drawing tells places at
    all; where it does not, everything of the area counts. Raises ``Refused``: ``scope_unknown`` (``area``),
    ``no_such_panel``, ``beyond_panel``, ``not_above_zero`` and what ``convert`` raises.
    """

    def __init__(self, record: dict, place: dict) -> None:
        if not isinstance(place, dict) or place.get("area") not in record["areas"]:
            raise Refused("scope_unknown", "area", place.get("area") if isinstance(place, dict) else None)
        if type(place.get("panel")) is not int or place["panel"] < 1:
            raise Refused("no_such_panel", "panel", plain(place.get("panel")))
        self.record = record
        self.area: str = place["area"]
        self.panel: int = place["panel"]
        self._roofs: dict = {}
        self._strips: dict = {}
        drawings = self._drawings(self.area)
        self.drawn = bool(drawings)
        self.unit: str = drawings[0]["unit"] if drawings else "m"
        self.radius = convert(place.get("radius"), self.unit, "radius")
        if not self.radius > 0.0:
            raise Refused("not_above_zero", "radius", place["radius"].get("value"))
        along = convert(place.get("from_low_end"), self.unit, "from_low_end")
        self.centres: list = []  # [(drawing, x, y)]
        for at, drawing in enumerate(drawings):
            try:
                spot = self._spot(drawing, self.panel, change_unit(along, self.unit, drawing["unit"]), True)
            except Refused:
                if at == 0:  # the drawing as it stands is the one that was looked at
                    raise
                continue
            self.centres.append((drawing, spot[0], spot[1]))

    def holds(self, distance: "float | None") -> bool:
        """Whether a distance lies within the radius; one that nobody can tell does."""
        return distance is None or distance <= self.radius * (1.0 + NEAR)

    def speaks_of(self, thing: dict) -> "tuple | None":
        """``(how, distance)`` of what names an ``area`` and perhaps a ``panel`` and ``from_low_end``: how ``place``,
        ``panel``, ``area`` (of the whole of it) or ``unplaced`` (nobody can tell where on it). None outside."""
        area = thing.get("area")
        if not isinstance(area, str) or area not in self.record["areas"]:
            return None
        if type(thing.get("panel")) is not int:
            return ("area", None) if area == self.area or self.panels(area) else None
        distance, how = self._nearest(area, thing["panel"], thing.get("from_low_end"))
        if how is None:
            return ("unplaced", None) if area == self.area else None
        return (how, distance) if self.holds(distance) else None

    def distance(self, thing: dict) -> "float | None":
        """How far what names a place on the survey's own area lies, within the radius or not."""
        far: float | None = self._nearest(self.area, thing["panel"], thing.get("from_low_end"))[0]
        return far

    def panels(self, area: str) -> list:
        """Numbers of the panels of an area, as it is drawn now, of which any part lies within the radius."""
        drawings = self._drawings(area)
        if not drawings:
            return []
        count, found = drawings[0]["roof"].count, []
        for number in range(1, count + 1):
            distance, how = self._nearest(area, number, None)
            if how is not None and distance is not None and self.holds(distance):
                found.append(number)
        return found

    def spot(self, area: str, number: int, y: float) -> "float | None":
        """The distance of a point ``y`` up the seam of a panel, of the area as it is drawn now."""
        drawing = self._drawings(area)[0]
        x = self._strip(drawing, number)[2]
        found = [self._apart(drawing, x, y, y, x, centre) for centre in self.centres]
        told = [one for one in found if one is not None]
        return min(told) if told else None

    def height(self, area: str, thing: dict) -> "float | None":
        """How far up the area's outline a place on a panel stands; None where the drawing does not hold it."""
        drawing = self._drawings(area)[0]
        try:
            along = convert(thing.get("from_low_end"), drawing["unit"], "from_low_end")
            y: float = self._spot(drawing, thing.get("panel"), along, False)[1]
        except Refused:
            return None
        return y

    def roof(self, area: str):  # type: ignore[no-untyped-def]  # a Roof, or None where the drawing tells none
        drawings = self._drawings(area)
        return drawings[0]["roof"] if drawings else None

    def _drawings(self, area: str) -> list:
        """The drawings of an area that can be laid out, the newest first: all of the survey's own area, of another the
        newest alone."""
        if area in self._roofs:
            kept: list = self._roofs[area]
            return kept
        found = []
        newest = self.record["areas"][area]
        bodies = [newest]
        bodies += (self.record.get("redrawn") or {}).get(area) or [] if area == self.area else []
        for body in bodies:
            try:
                roof = read_roof(body, self.record["assemblies"].get(body.get("assembly")))
            except Refused:
                if body is newest:  # without the newest there is nothing to count panels by
                    break
                continue
            found.append({"area": area, "roof": roof, "unit": roof.unit, "ground": _ground(body, roof)})
        self._roofs[area] = found
        return found

    def _nearest(self, area: str, number: int, from_low_end: "dict | None") -> tuple:
        """``(distance, how)``, how None where no drawing holds the panel."""
        best: list = []
        for drawing in self._drawings(area):
            how, high = "panel", None
            try:
                left, right, x, own = self._strip(drawing, number)
                if from_low_end is not None:
                    try:
                        along = convert(from_low_end, drawing["unit"], "from_low_end")
                        x, high = self._spot(drawing, number, along, False)
                        left, right, own, how = x, x, [(high, high)], "place"
                    except Refused:
                        pass  # beyond the panel's end, or no length: the panel it is
            except Refused:
                continue
            for centre in self.centres:
                for low, top in own:
                    distance = self._apart(drawing, left, low, top, right, centre)
                    if distance is not None:
                        best.append((distance, how))
        return min(best) if best else (None, None)

    def _apart(self, drawing: dict, left: float, low: float, top: float, right: float, centre: tuple) -> "float | None":
        """From the centre to a rectangle of a drawing, in ``unit``. None between areas that the plan does not place."""
        own, x, y = centre
        if own["area"] == drawing["area"]:
            if own is not drawing:  # each drawing is measured from the place as that drawing has it
                return None
            return change_unit(_to_box(x, y, left, low, right, top), drawing["unit"], self.unit)
        if own["ground"] is None or drawing["ground"] is None:
            return None
        there = drawing["ground"]
        east, north = _to_plan(own["ground"], x, y)
        x, y = _from_plan(there, east, north)
        scale = there[3] * there[4]
        apart = _to_box(x, y, left * there[4], low * scale, right * there[4], top * scale)
        return change_unit(apart, "m", self.unit)

    def _strip(self, drawing: dict, number: int) -> tuple:
        """``(left, right, seam, [(low, high)])`` of a panel, x and y of the outline."""
        name = (id(drawing), number)
        if name not in self._strips:
            roof = drawing["roof"]
            start, end = strip(roof, number)
            ends = [roof.right - end, roof.right - start] if roof.turned else [roof.left + start, roof.left + end]
            own = pieces(roof.sides, roof.corners, start, end)
            self._strips[name] = (ends[0], ends[1], ends[0] if roof.turned else ends[1], own)
        kept: tuple = self._strips[name]
        return kept

    def _spot(self, drawing: dict, number: object, along: float, strict: bool) -> tuple:
        """``(x, y)`` of a place on a panel's seam. Raises Refused beyond the panel; where ``strict`` is not asked, a
        hair beyond its end is at it."""
        own = panel(drawing["roof"], number)  # type: ignore[arg-type]  # refused where it is no number
        low, high = (own["pieces"][0][0], own["pieces"][-1][1]) if own["pieces"] else (own["low"], own["high"])
        if along < 0.0 or along > (high - low) * (1.0 + (NEAR if strict else 1e-6)):
            raise Refused("beyond_panel", "from_low_end", None)
        return own["at"], low + along


def _to_box(x: float, y: float, left: float, low: float, right: float, high: float) -> float:
    across, along = max(left - x, 0.0, x - right), max(low - y, 0.0, y - high)
    return math.sqrt(across * across + along * along)


def _ground(body: dict, roof) -> "tuple | None":  # type: ignore[no-untyped-def]
    """``(east, north, bearing, cosine, metres to one of the outline's unit)`` of an area on the plan: m, radians."""
    place = body.get("place") or {}
    try:
        unit = place.get("unit") or roof.unit
        east, north = [convert({"value": place.get(name), "unit": unit}, "m", name) for name in ("east", "north")]
        up = float(place["up"]) * math.pi / 180.0
    except (Refused, KeyError, TypeError, ValueError):
        return None
    return east, north, up, roof.cosine, change_unit(1.0, roof.unit, "m")


def _to_plan(ground: tuple, x: float, y: float) -> tuple:
    east, north, up, cosine, metre = ground
    across, along = x * metre, y * cosine * metre
    return (east + across * math.cos(up) + along * math.sin(up),
            north - across * math.sin(up) + along * math.cos(up))  # fmt: skip


def _from_plan(ground: tuple, east: float, north: float) -> tuple:
    """In metres from the area's origin: along its eave, and up its slope as seen from above."""
    de, dn, up = east - ground[0], north - ground[1], ground[2]
    return de * math.cos(up) - dn * math.sin(up), de * math.sin(up) + dn * math.cos(up)
