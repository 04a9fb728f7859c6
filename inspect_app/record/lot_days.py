"""How far each lot's day has come: what is planned, set and covered, area by area."""

from inspect_app.record.crew import crew_of
from inspect_app.record.marks import Marks, covered
from inspect_app.record.places import Roofs, row_of
from inspect_app.record.ranges import common, count, merged, without

NOWHERE: dict = {"area": None, "first": 1, "planned": [], "own": [], "placed": [], "reached": 0, "count": None}


class Days:
    """``of[lot]`` of every lot of work: ``{"area", "first", "planned", "own", "placed", "reached", "count"}``.

    ``planned`` and ``own``: ranges planned and set under the lot with its extensions; ``placed``: set under any lot or
    told by any walk of the area; ``reached``: the last panel set in one go from the first, the one before it where none
    is; ``count``: panels of the area as drawn on. ``placed[area]``: the ranges set there.
    """

    def __init__(self, record: dict, rows: dict, marks: Marks, roofs: Roofs) -> None:
        self.lots, self.rows, self.marks = record["lots"], rows, marks
        self._areas, self._roofs = record["areas"], roofs
        self.of: dict = {}
        self.placed: dict = {}
        self.lots_at: dict = {}  # area: lots of work
        for subject in sorted(self.lots):
            if marks.roots.get(subject) == subject:
                area, first, _ = rows[subject][0]
                there = self.panels(self.lots[subject], area)
                own = common(marks.placed(subject), 1, there) if there is not None else marks.placed(subject)
                self.placed.setdefault(area, []).extend(own)
                self.of[subject] = {"area": area, "first": first, "own": own, "count": there}
        for walk in record["walks"].values():
            for row in walk.get("placed") or []:
                self.placed.setdefault(row["area"], []).append([max(row["from"], 1), row["to"]])
        for area in self.placed:
            self.placed[area] = merged(self.placed[area])
        for subject in sorted(marks.families):
            day = self.of[subject]
            family = marks.families[subject]
            day["planned"] = merged([[rows[one][0][1], rows[one][0][2]] for one in family])
            day["placed"] = self.placed[day["area"]]
            day["reached"] = _reached(day["own"], day["first"])
            for one in family:
                self.lots_at.setdefault(day["area"], []).append(one)
                if one != subject:
                    self._extend(one, day)

    def _extend(self, subject: str, day: dict) -> None:
        own = dict(day)
        if self.marks.begins(subject) != day["first"]:
            own["reached"] = _reached(day["own"], self.rows[subject][0][1])
        self.of[subject] = own

    def day(self, subject: str) -> dict:
        found: dict = self.of.get(subject) or NOWHERE
        return found

    def panels(self, lot: dict, area: str) -> "int | None":
        """Panels of an area as a lot was drawn on it, None where nothing can be laid out of that; as it is now where
        that version has not come."""
        roof = self._roofs.of(lot, area)
        if roof is not None:
            across: int = roof.count
            return across
        if row_of(lot, area).get("area_entry") in self._roofs.bodies:
            return None
        newest: dict = self._areas.get(area) or {}
        there: int | None = newest.get("panel_count")
        return there

    def tell(self, lot: dict) -> None:
        """``placed``, ``set``, ``placed_to``, ``open_panel`` and ``extra`` of one lot."""
        day, rows = self.day(lot["id"]), self.rows[lot["id"]]
        lot["placed_to"] = lot["open_panel"] = None
        lot["extra"] = []
        lot["set"] = lot["placed"] = sum([row[2] - row[1] + 1 for row in rows])
        if lot["id"] not in self.of:
            return
        lot["set"] = lot["placed"] = count(common(day["own"], rows[0][1], rows[0][2]))
        if day["reached"] >= rows[0][1]:
            lot["placed_to"] = day["reached"]
        if self.marks.roots[lot["id"]] != lot["id"]:
            return
        lot["placed"] = sum([count(common(day["own"], low, high)) for low, high in day["planned"]])
        lot["extra"] = self._extra(day)
        last = lot["placed_to"]
        if last is not None and not covered(day["placed"], last) and last != day["count"]:
            lot["open_panel"] = last

    def _extra(self, day: dict) -> list:
        """What was set under this lot and planned under none."""
        planned = [[self.rows[one][0][1], self.rows[one][0][2]] for one in self.lots_at[day["area"]]]
        seamless = [[day["count"], day["count"]]] if day["count"] is not None else []
        return without(day["own"], merged(planned) + seamless)

    def over(self, lot: dict) -> bool:
        """Whether a lot of work is closed: its last leg was released for the night, every panel it planned is covered,
        or the crew has a lot of a later day on the area."""
        day = self.day(lot["id"])
        for one in lot["holds"]:
            if one["why"] == "night" and one["state"] == "released" and one["panel"] == day["reached"]:
                return True
        hidden = merged([[low, high - 1] for low, high in day["placed"]])
        if not without(day["planned"], hidden) and not without(day["planned"], day["own"]):
            return True
        return any(self.lots[one]["day"] > lot["day"] and crew_of(self.lots[one]) == crew_of(lot)
            for one in self.lots_at[day["area"]])


def _reached(own: list, first: int) -> int:
    for low, high in own:
        if low <= first <= high:
            last: int = high
            return last
    return first - 1

