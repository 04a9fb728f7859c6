"""One day of a crew of the invented job: planned and drawn in the morning, walked at its stops, released at night."""

from collections.abc import Callable
from typing import Any, NamedTuple

from inspect_app.demo.walk import Place, Walk
from inspect_app.record.lot_draw import draw_lot, places
from inspect_app.record.population import rows_of
from inspect_app.record.stops import drawn_panels

TIGHT = "Heads dished the flange, the panel does not slide under them."
PHOTO_EVERY = 5


class Plan(NamedTuple):
    """What happens that day. Stops are counted from 1 in walking order. ``went_over``: the panel whose hold after a
    change of coil nobody waited for; ``reworks``: the lot whose panels are looked at again."""

    area: str
    crew: str
    first: int
    last: int
    tight_at: int = 0
    nobody_at: int = 0
    went_over: int = 0
    reworks: str | None = None
    inspection: str | None = None


class CrewDay:
    """``fold()`` gives the job's record of what was said so far; ``walk`` is a fresh one of this person's."""

    def __init__(self, walk: Walk, fold: Callable[[], dict[str, Any]], plan: Plan) -> None:
        self.walk, self.fold, self.plan = walk, fold, plan
        self.phone, self.job = walk.phone, walk.job["id"]
        self.area = walk.job["areas"][plan.area]["id"]

    def make(self) -> str:
        """The lot's id."""
        record = self.fold()
        self.lot = self._draw(record)
        record = self.fold()
        stops = self._stops(record)
        walk, plan = self.walk, self.plan
        walk.small = True
        walk.open("day-watch", [plan.area], [], plan.crew)
        if plan.reworks:
            for panel in stops:
                self._look(record, panel, False)
            walk.sign()
            return self.lot
        for panel in range(plan.first, plan.last + 1):
            self._set(record, panel, stops)
        for place in places(record, self.lot, plan.last, record["sampling"]["night_places"]):
            self._visit(plan.last, place, False)
        self._release(plan.last, "night", None)
        walk.answer_all(plan.area)
        walk.sign()
        return self.lot

    def _set(self, record: dict[str, Any], panel: int, stops: list[int]) -> None:
        """One more panel is set: said where something hangs on it."""
        plan, over = self.plan, self.plan.went_over
        if panel == plan.first or panel in stops or panel == plan.last or (over and abs(panel - over) <= 1):
            self._mark(panel, ["coil"] if over and panel == over - 1 else [],
                       [over] if over and panel == over + 1 else [], panel == plan.last)  # fmt: skip
        elif (panel - plan.first) % PHOTO_EVERY == 0:
            self._mark(panel, [], [], False)
        if (panel - plan.first) % PHOTO_EVERY == 0:
            self.walk.leg_photo(plan.area, panel, self.lot)
        if panel == plan.first:
            self._visit(panel, places(record, self.lot, panel, 1)[0], False, "hand")
            self._release(panel, "first", None)
        if panel not in stops:
            return
        at = stops.index(panel) + 1
        if at == plan.nobody_at:
            self._say("stop", f"{self.lot}/{panel}", {"panel": panel, "outcome": "not_attended",
                      "note": "The foreman was at the other end of the roof."})  # fmt: skip
            return
        self._look(record, panel, at == plan.tight_at)
        if at == plan.tight_at:
            self._release(panel, "failed", "finding_open")

    def _draw(self, record: dict[str, Any]) -> str:
        plan = self.plan
        kind = self.walk.job["assemblies"][plan.area]["attachment"]
        asked = self.walk.definitions["nail-flange-fastening" if kind == "nail_flange" else "clip-fastening"]
        drawn = draw_lot(record, {
            "purpose": "rework" if plan.reworks else "work", "crew": plan.crew,
            "ticket": self.phone.tickets(self.job)[0],
            "day": self.walk.clock().date().isoformat(), "definitions": [asked],
            "population": [{"area": self.area, "from": plan.first, "to": plan.last}],
            **({"reworks": plan.reworks} if plan.reworks else {}),
            **({"inspection": plan.inspection} if plan.inspection else {}),
        })  # fmt: skip
        self.phone.say(self.job, "lot", drawn["subject"], drawn["body"])
        return str(drawn["subject"])

    def _stops(self, record: dict[str, Any]) -> list[int]:
        """The panels drawn, in the order in which they are set."""
        lot = record["lots"][self.lot]
        return sorted(panel for _, panel in drawn_panels(self.lot, lot, rows_of(lot["population"])))

    def _look(self, record: dict[str, Any], panel: int, tight: bool) -> None:
        for place in places(record, self.lot, panel, record["sampling"]["places"]):
            self._visit(panel, place, tight)

    def _visit(self, panel: int, place: dict[str, Any], tight: bool, chosen: str = "drawn") -> None:
        spacing = {zone["name"]: zone["spacing"]["value"] for zone in
                   self.walk.job["assemblies"][self.plan.area]["zones"]}[place["zone"]]  # fmt: skip
        fails = {"over_driven": TIGHT} if tight else {}
        self.walk.visit(Place(self.plan.area, panel, place["from_low_end"]["value"], place["zone"], 0.02, fails,
                              [spacing] * 3), chosen, self.lot)  # fmt: skip

    def _mark(self, to: int, change: list[str], against: list[int], night: bool) -> None:
        self.walk.clock.advance(minutes=6)
        self._say("mark", self.phone.new_id(), {
            "to": to, "change": change, "night": night, "against": against,
            "metal_temperature": {"value": "74", "unit": "F"}, "metal_temperature_by": "contact",
        })  # fmt: skip

    def _release(self, panel: int, why: str, way: str | None) -> None:
        self._say("release", f"{self.lot}/{panel}/{why}", {
            "panel": panel, "why": why, "way": way, "walk": self.walk.id, "name": self.phone.person["name"],
            "statement": "I looked at this panel's open leg and release it.", "role": self.phone.person["role"],
        })  # fmt: skip

    def _say(self, kind: str, subject: str, body: dict[str, Any]) -> None:
        self.walk.clock.advance(seconds=20)
        self.phone.say(self.job, kind, subject, {"lot": self.lot, "area": self.area, **body})
