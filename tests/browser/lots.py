"""A crew's day said by a phone in Python, so that a browser finds lots to show. Invented."""

from datetime import UTC, datetime, timedelta
from typing import Any

from inspect_app.demo.http import Http
from inspect_app.demo.phone import Phone
from inspect_app.record.lot_draw import draw_lot, places
from inspect_app.record.stops import drawn_panels
from tests.browser.roof import PASSWORD, Roof

CREW = "Crew 2 (invented)"
ITEMS = {"critical": "fastener_identity", "major": "head_free", "minor": "module"}


class Crew:
    """One person's phone over ``roof``: what it says is on the server after ``deliver``."""

    def __init__(self, roof: Roof, login: str, byte: int) -> None:
        self.roof, self.ticks = roof, 0
        self.phone = Phone(Http(roof.url), self._now, lambda n: (byte << 32 | self.ticks).to_bytes(n, "big"))
        self.phone.sign_in(login, PASSWORD, "invented")
        self.areas = {one["name"]: one for one in roof.record()["areas"].values()}
        definition = self._flange()
        self.definition = definition["digest"]
        self.asked = [{**definition, "items": [one for one in definition["items"] if one["id"] in ITEMS.values()]}]
        self.walk, self.unseen = "", 0

    def _now(self) -> datetime:
        self.ticks += 1
        return datetime(2026, 9, 14, 12, 0, tzinfo=UTC) + timedelta(seconds=self.ticks)

    def _flange(self) -> dict[str, Any]:
        known = self.roof.parts.definitions
        digest = known.newest()["nail-flange-fastening"]
        return {**known.by_digest[digest].definition, "digest": digest}

    def say(self, kind: str, subject: str, body: dict[str, Any]) -> None:
        self.phone.say(self.roof.job, kind, subject, body)

    def deliver(self) -> dict[str, Any]:
        """The server's record after it."""
        self.phone.deliver()
        return self.roof.record()

    def begin(self, definition: str, *areas: str) -> None:
        self.walk = self.phone.new_id()
        self.say("walk", self.walk, {
            "definition": definition, "areas": [self.areas[one]["id"] for one in areas], "crew": CREW,
            "weather": {"sky": "clear", "wind": "calm"}, "placed": [], "fall_protection": "confirmed",
        })  # fmt: skip

    def draw(self, first: int, last: int, **more: Any) -> str:
        """A lot of Quay slope's panels; its id."""
        asked = {"purpose": "work", "crew": CREW, "day": "2026-09-14", "definitions": self.asked, **more,
                 "ticket": self.phone.tickets(self.roof.job)[0],
                 "population": [{"area": self.areas["Quay slope"]["id"], "from": first, "to": last}]}  # fmt: skip
        drawn = draw_lot(self.roof.record(), asked)
        self.say("lot", drawn["subject"], drawn["body"])
        return str(drawn["subject"])

    def on_panel(self, kind: str, subject: str, lot: str, **body: Any) -> None:
        self.say(kind, subject, {"lot": lot, "area": self.areas["Quay slope"]["id"], **body})

    def mark(self, lot: str, to: int, **more: Any) -> None:
        mark = {"to": to, "change": [], "night": False, "against": [], **more}
        self.on_panel("mark", self.phone.new_id(), lot, **mark)

    def release(self, lot: str, panel: int, why: str) -> None:
        said = {"statement": "I looked at the whole open leg.", "name": "Tomas (invented)", "role": "foreman"}
        self.on_panel("release", f"{lot}/{panel}/{why}", lot, panel=panel, why=why, way=None, walk=self.walk, **said)

    def look(self, lot: dict[str, Any], bad: int = 0) -> None:
        """Every drawn place not looked at, all good; on panel ``bad`` something major is not."""
        for one in lot["drawn"]:
            for place in [place for place in one["places"] if place["station"] is None]:
                self._look_at(lot, one, place, "fail" if one["panel"] == bad else "pass")

    def _look_at(self, lot: dict[str, Any], panel: dict[str, Any], place: dict[str, Any], major: str) -> None:
        station = self.phone.new_id()
        self.say("station", station, {
            "walk": self.walk, "area": panel["area"], "panel": panel["panel"], "from_low_end": place["from_low_end"],
            "zone": place["zone"] or "", "chosen": "drawn", "reached": "yes", "lot": lot["id"],
        })  # fmt: skip
        newest = self.roof.parts.definitions.newest()
        for severity, names in lot["asks"].items():
            for name in names:
                definition, item = name.split("/")
                result = major if severity == "major" else "pass"
                self.say("answer", f"{station}/{name}", {
                    "walk": self.walk, "station": station, "area": panel["area"], "definition": newest[definition],
                    "item": item, "choice": result, "reading": None, "note": "", "photos": [],
                    "severity": severity, "verdict": {"result": result, "rule": None, "rulebook": "", "reason": None,
                                                      "inputs": {}, "values": {}},
                })  # fmt: skip

    def bad_day(self, last: int = 12) -> str:
        """A lot of ``last`` panels: its last stop shows something major, and a panel that no ticket drew (``unseen``)
        was covered against its hold."""
        self.begin(self.definition, "Quay slope")
        lot = self.draw(1, last)
        record = self.deliver()
        rows = [(one["area"], one["from"], one["to"]) for one in record["lots"][lot]["population"]]
        stops = sorted(panel for _, panel in drawn_panels(lot, record["lots"][lot], rows))
        self.unseen = next(panel for panel in range(3, last - 1) if panel not in stops)
        for panel in range(1, last + 1):
            self.mark(lot, panel, change=["coil"] if panel == self.unseen - 1 else [],
                      against=[self.unseen] if panel == self.unseen + 1 else [], night=panel == last)  # fmt: skip
            if panel == 1:
                self.release(lot, 1, "first")
            if panel in stops:
                there = {"area": rows[0][0], "panel": panel, "places": places(record, lot, panel, 3)}
                self.look(record["lots"][lot] | {"drawn": [there]}, bad=stops[-1])
        self.release(lot, last, "night")
        self.deliver()
        return lot
