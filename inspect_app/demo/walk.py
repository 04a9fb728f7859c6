"""A walk of the demonstration: what somebody of the invented job sees and says at each place.

Every item of every definition that applies is answered: people's items by a word, computed ones by a reading that
the rulebook judges here as it would on the phone.
"""

import re
from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any, NamedTuple

from inspect_app.demo import picture
from inspect_app.demo.phone import Phone
from inspect_app.demo.reading import METAL, UNCERTAIN, read
from inspect_app.record.judge import judge_item

STATEMENT = (
    "I looked at the places recorded in this walk and recorded what I saw there. This speaks of those places only."
)


class Place(NamedTuple):
    """One station: where, and how far from a good screw or tab its picture is drawn (inches toward the ridge)."""

    area: str
    panel: int
    from_low_end: str
    zone: str
    offset: float
    fails: dict[str, str]
    gaps: list[str]
    absent: tuple[str, ...] = ()  # items that speak of nothing that is there


class Walk:
    """``job``: {"id", "body", "assemblies", "areas"} with ids by key; ``definitions``: compiled, by id, each with
    its ``digest``; ``rulebook``: digest of the rules as shown by the server; ``notes``: what is written beside an
    item of the whole walk, by item."""

    def __init__(self, phone: Phone, job: dict[str, Any], definitions: dict[str, Any], rulebook: str,
                 clock: "Ticking", notes: dict[str, str] | None = None) -> None:  # fmt: skip
        self.phone, self.job, self.definitions, self.rulebook, self.clock = phone, job, definitions, rulebook, clock
        self.notes = notes or {}
        self.failed: tuple[str, ...] = ()  # items of the whole walk that were not as approved; why is in the notes
        self.counts: dict[str, int] = {}  # what was counted over the whole walk, by item
        self.id = phone.new_id()
        self.said: list[str] = []
        self.small = False  # pictures of a long week are drawn small

    def open(self, definition: str, areas: list[str], placed: list[dict[str, Any]], crew: str, heads: int = 4,
             independent: bool = False) -> None:  # fmt: skip
        """Past the safety gate."""
        self.own = self.definitions[definition]
        self.body: dict[str, Any] = {
            "definition": self.own["digest"], "areas": [self.job["areas"][key]["id"] for key in areas], "crew": crew,
            "head_count": heads, "weather": {"sky": "clear", "wind": "breeze", "air": {"value": "66", "unit": "F"}},
            "metal_temperature": METAL, "metal_uncertainty": UNCERTAIN, "metal_temperature_by": "contact",
            "placed": placed, "fall_protection": "confirmed", "independent": independent,
        }  # fmt: skip
        self._say("walk", self.id, self.body)

    def answer_all(self, area: str, noted: bool = False) -> None:
        """What is asked once of the whole walk; ``noted``: no more of it than there are notes of."""
        for item in self.own["items"]:
            if self._fits(item, area) and (not noted or item["id"] in self.notes):
                self._answer(self.own, item, None, self.job["areas"][area], None)

    def visit(self, place: Place, chosen: str = "hand", lot: str | None = None,
              asked: list[dict[str, Any]] | None = None) -> None:  # fmt: skip
        """Every item of every definition for places that fits what is fastened there, or of those ``asked``."""
        self.clock.advance(minutes=1)
        area = self.job["areas"][place.area]
        station = self.phone.new_id()
        body = self._station(place.area, place.panel, place.from_low_end, place.zone, chosen, "yes", lot)
        self._say("station", station, body)
        kind = self.job["assemblies"][place.area]["attachment"]
        fastened = self.definitions["nail-flange-fastening" if kind == "nail_flange" else "clip-fastening"]
        for definition in asked or [fastened]:
            for item in definition["items"]:
                if self._fits(item, place.area):
                    self._answer(definition, item, {**body, "id": station}, area, place)

    def leave(self, area: str, panel: int, from_low_end: str, zone: str, reached: str, chosen: str = "hand",
              lot: str | None = None) -> None:  # fmt: skip
        """A place that was not looked at, and why: ``unsafe`` or ``covered``."""
        body = self._station(area, panel, from_low_end, zone, chosen, reached, lot)
        self._say("station", self.phone.new_id(), body)

    def leg_photo(self, area: str, panel: int, lot: str) -> None:
        """One lengthwise photograph of an open leg."""
        tag = f"{self.job['areas'][area]['body']['name']}, panel {panel}, open leg"
        self._photo("leg", self._drawn(picture.panel(tag, self.clock())), None, None,
                    {"area": self.job["areas"][area]["id"], "panel": panel, "lot": lot})  # fmt: skip

    def _station(self, area: str, panel: int, from_low_end: str, zone: str, chosen: str, reached: str,
                 lot: str | None) -> dict[str, Any]:  # fmt: skip
        body = {
            "walk": self.id, "area": self.job["areas"][area]["id"], "panel": panel,
            "from_low_end": {"value": from_low_end, "unit": "ft"}, "zone": zone, "chosen": chosen, "reached": reached,
        }  # fmt: skip
        return {**body, "lot": lot} if lot else body

    def _fits(self, item: dict[str, Any], area: str) -> bool:
        kind = self.job["assemblies"][area]["attachment"]
        return kind in (item.get("applies") or {}).get("attachment", [kind])

    def _answer(self, definition: dict[str, Any], item: dict[str, Any], station: dict[str, Any] | None,
                area: dict[str, Any], place: Place | None) -> None:  # fmt: skip
        subject = f"{station['id'] if station else self.id}/{definition['id']}/{item['id']}"
        note = place.fails.get(item["id"], "") if place else self.notes.get(item["id"], "")
        counted = None if place else self.counts.get(item["id"])
        reading = read(item, place) if counted is None else {"count": counted}
        choice = None
        if item.get("rule") and reading is not None:
            verdict = self._judge(item, area, station, reading)
        elif item["kind"] != "judge":  # written down, as a phone does with what no rule judges
            verdict = {"result": "not_applicable", "rule": None, "rulebook": "",
                       "reason": {"code": "recorded", "facts": {}}, "inputs": {}, "values": {}}  # fmt: skip
        else:
            choice = "fail" if note and (place or item["id"] in self.failed) else "pass"
            if place and item["id"] in place.absent:
                choice = "not_applicable"
            verdict = {"result": choice, "rule": None, "rulebook": self.rulebook, "reason": None, "inputs": {},
                       "values": {}}  # fmt: skip
        photos = self._photos(definition, item, station, subject, area, place, verdict["result"])
        self._say("answer", subject, {
            "walk": self.id, "station": station["id"] if station else None, "area": area["id"],
            "definition": definition["digest"], "item": item["id"], "choice": choice, "reading": reading,
            "note": note, "photos": photos, "verdict": verdict, "severity": item["severity"],
        })  # fmt: skip

    def _judge(self, item: dict[str, Any], area: dict[str, Any], station: dict[str, Any] | None,
               reading: dict[str, Any]) -> dict[str, Any]:  # fmt: skip
        context = {
            "job": self.job["body"], "assembly": self.job["assemblies"][area["key"]], "area": area["body"],
            "walk": self.body, "station": station, "reading": reading,
        }  # fmt: skip
        found = judge_item(item, context)
        return {
            "result": found["verdict"] or "not_applicable", "rule": found["rule"], "rulebook": self.rulebook,
            "reason": in_strings(found["reason"]), "inputs": found["inputs"], "values": in_strings(found["values"]),
        }  # fmt: skip

    def _photos(self, definition: dict[str, Any], item: dict[str, Any], station: dict[str, Any] | None, subject: str,
                area: dict[str, Any], place: Place | None, result: str | None) -> list[str]:  # fmt: skip
        if not (item["photo"] == "required" or (item["photo"] == "on_fail" and result == "fail")):
            return []
        taken = self.clock()
        tag = f"{area['body']['name']}, panel {place.panel}" if place else f"{area['body']['name']}, open leg"
        named = f"{tag} ({item['id']})"
        shown: list[tuple[str, Callable[[], bytes]]] = [("where", lambda: picture.panel(named, taken))]
        if place and item["id"] == "tab_place":
            shown.append(("what", lambda: picture.clip(place.offset, tag, taken)))
        elif place and definition["id"] == "nail-flange-fastening":  # a covered panel shows no flange
            shown.append(("what", lambda: picture.flange(place.offset, 0.34, named, taken)))
        shown = shown[-1:] if self.small else shown  # a week is long: one picture of each, the closest
        return [self._photo(role, self._drawn(draw()), station, subject) for role, draw in shown]

    def _drawn(self, data: bytes) -> bytes:
        return picture.smaller(data) if self.small else data

    def _photo(self, role: str, data: bytes, station: dict[str, Any] | None, subject: str | None,
               of: dict[str, Any] | None = None) -> str:  # fmt: skip
        name = self.phone.keep_photo(self.job["id"], data)
        wide, high = picture.SIZE if not self.small else picture.SMALL
        self._say("photo", name, {
            "walk": self.id, "station": station["id"] if station else None, "answer": subject, "role": role,
            "sha256": name, "size": len(data), "type": "image/jpeg", "source": "camera", "width": wide,
            "height": high, **(of or {}),
        })  # fmt: skip
        return name

    def sign(self) -> None:
        """Close the walk."""
        self.clock.advance(minutes=2)
        self._say("signoff", self.id, {
            "walk": self.id, "name": self.phone.person["name"], "role": self.phone.person["role"],
            "statement": STATEMENT,
            "strokes": [[20, 90, 60, 30, 90, 95, 120, 35, 150, 90, 190, 60, 230, 80], [240, 40, 300, 38, 330, 70]],
            "canvas": {"width": 360, "height": 120}, "covers": list(self.said),
        })  # fmt: skip

    def _say(self, kind: str, subject: str, body: dict[str, Any]) -> None:
        self.clock.advance(seconds=9)
        self.said.append(self.phone.say(self.job["id"], kind, subject, body))


class Ticking:
    """A clock that the walk moves on by itself: the invented dusk takes no real time."""

    def __init__(self, start: datetime) -> None:
        self._now = start

    def __call__(self) -> datetime:
        return self._now

    def to(self, moment: datetime) -> None:
        """A later moment."""
        self._now = moment

    def advance(self, **by: float) -> None:
        self._now += timedelta(**by)


def in_strings(value: Any) -> Any:
    """Numbers of an answer as decimal strings, as entries want them; integers and text stay."""
    if isinstance(value, float):
        text = repr(value)
        return text.removesuffix(".0") if re.fullmatch(r"-?\d+\.0", text) else text
    if isinstance(value, dict):
        return {key: in_strings(part) for key, part in value.items()}
    return [in_strings(part) for part in value] if isinstance(value, list) else value


