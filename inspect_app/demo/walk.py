"""The demonstration's end-of-day walk: what the foreman of the invented job sees and says at each place.

Every item of every definition that applies is answered: people's items by a word, computed ones by a reading that
the rulebook judges here as it would on the phone.
"""

import re
from datetime import datetime, timedelta
from typing import Any, NamedTuple

from inspect_app.demo import picture
from inspect_app.demo.phone import Phone
from inspect_app.demo.reading import METAL, UNCERTAIN, read
from inspect_app.record.judge import judge_item


class Place(NamedTuple):
    """One station: where, and how far from a good screw or tab its picture is drawn (inches toward the ridge)."""

    area: str
    panel: int
    from_low_end: str
    zone: str
    offset: float
    fails: dict[str, str]
    gaps: list[str]


PLACES = (
    Place("quay", 12, "7.5", "field", 0.02, {}, ["11.5", "12", "11.75"]),
    Place("quay", 31, "1", "edge", -0.36, {"over_driven": "Flange dished under the head, will not slide."},
          ["6", "7.25", "6"]),
    Place("yard", 3, "62", "field", -0.05, {}, ["24", "23.5", "24"]),
    Place("yard", 40, "4", "edge", 0.0, {}, ["12", "12", "11.75"]),
)  # fmt: skip
NOTES = {
    "labels": "One bundle of the snap-lock panel and one box of #10 screws opened.",
    "placed_today": "Quay slope 1 to 32, Yard slope 1 to 41, crew 2; metal 74 F at dusk.",
    "stops_today": "Four places looked at, all chosen by hand; one left, not safe to reach.",
    "tomorrow": "Quay slope goes on from panel 33. The edge of panel 31 stays open until the engineer has seen it.",
}


class Walk:
    """``job``: {"id", "body", "assemblies", "areas"} with ids by key; ``definitions``: compiled, by id, each with
    its ``digest``; ``rulebook``: digest of the rules as shown by the server."""

    def __init__(self, phone: Phone, job: dict[str, Any], definitions: dict[str, Any], rulebook: str,
                 clock: "Ticking") -> None:  # fmt: skip
        self.phone, self.job, self.definitions, self.rulebook, self.clock = phone, job, definitions, rulebook, clock
        self.id = phone.new_id()
        self.said: list[str] = []

    def make(self) -> None:
        """Open the walk, visit every place, answer the walk's own items, sign."""
        night = self.definitions["end-of-day-walk"]
        areas = self.job["areas"]
        self.body: dict[str, Any] = {
            "definition": night["digest"], "areas": [area["id"] for area in areas.values()],
            "crew": "Crew 2 (invented)", "head_count": 4,
            "weather": {"sky": "clear", "wind": "breeze", "air": {"value": "66", "unit": "F"}},
            "metal_temperature": METAL, "metal_uncertainty": UNCERTAIN, "metal_temperature_by": "contact",
            "placed": [{"area": areas["quay"]["id"], "from": 1, "to": 32},
                       {"area": areas["yard"]["id"], "from": 1, "to": 41}],
            "fall_protection": "confirmed", "independent": False,
        }  # fmt: skip
        self._say("walk", self.id, self.body)
        for place in PLACES:
            self._visit(place)
        area = areas["quay"]
        for item in night["items"]:
            self._answer(night, item, None, area, None)
        self._unsafe("quay", 45)
        self._sign()

    def _visit(self, place: Place) -> None:
        self.clock.advance(minutes=1)
        area = self.job["areas"][place.area]
        station = self.phone.new_id()
        body = {
            "walk": self.id, "area": area["id"], "panel": place.panel,
            "from_low_end": {"value": place.from_low_end, "unit": "ft"}, "zone": place.zone, "chosen": "hand",
            "reached": "yes",
        }  # fmt: skip
        self._say("station", station, body)
        kind = self.job["assemblies"][place.area]["attachment"]
        definition = self.definitions["nail-flange-fastening" if kind == "nail_flange" else "clip-fastening"]
        for item in definition["items"]:
            only = item.get("applies") or {}
            if not only or kind in only.get("attachment", [kind]):
                self._answer(definition, item, {**body, "id": station}, area, place)

    def _unsafe(self, area: str, panel: int) -> None:
        body = {
            "walk": self.id, "area": self.job["areas"][area]["id"], "panel": panel,
            "from_low_end": {"value": "38", "unit": "ft"}, "zone": "edge", "chosen": "hand", "reached": "unsafe",
        }  # fmt: skip
        self._say("station", self.phone.new_id(), body)

    def _answer(self, definition: dict[str, Any], item: dict[str, Any], station: dict[str, Any] | None,
                area: dict[str, Any], place: Place | None) -> None:  # fmt: skip
        subject = f"{station['id'] if station else self.id}/{definition['id']}/{item['id']}"
        note = place.fails.get(item["id"], "") if place else NOTES.get(item["id"], "")
        reading = read(item, place)
        choice = None
        if item.get("rule") and reading is not None:
            verdict = self._judge(item, area, station, reading)
        elif item["kind"] != "judge":  # written down, as a phone does with what no rule judges
            verdict = {"result": "not_applicable", "rule": None, "rulebook": "",
                       "reason": {"code": "recorded", "facts": {}}, "inputs": {}, "values": {}}  # fmt: skip
        else:
            choice = "fail" if place and note else "pass"
            verdict = {"result": choice, "rule": None, "rulebook": self.rulebook, "reason": None, "inputs": {},
                       "values": {}}  # fmt: skip
        photos = self._photos(item, station, subject, area, place, verdict["result"])
        self._say("answer", subject, {
            "walk": self.id, "station": station["id"] if station else None, "area": area["id"],
            "definition": definition["digest"], "item": item["id"], "choice": choice, "reading": reading,
            "note": note, "photos": photos, "verdict": verdict,
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

    def _photos(self, item: dict[str, Any], station: dict[str, Any] | None, subject: str, area: dict[str, Any],
                place: Place | None, result: str | None) -> list[str]:  # fmt: skip
        if not (item["photo"] == "required" or (item["photo"] == "on_fail" and result == "fail")):
            return []
        taken = self.clock()
        tag = f"{area['body']['name']}, panel {place.panel}" if place else f"{area['body']['name']}, night seam"
        drawn = [("where", picture.panel(f"{tag} ({item['id']})", taken))]
        if place and item["id"] == "tab_place":
            drawn.append(("what", picture.clip(place.offset, tag, taken)))
        elif place and area["key"] == "quay":
            drawn.append(("what", picture.flange(place.offset, 0.34, f"{tag} ({item['id']})", taken)))
        return [self._photo(role, data, station, subject) for role, data in drawn]

    def _photo(self, role: str, data: bytes, station: dict[str, Any] | None, subject: str) -> str:
        name = self.phone.keep_photo(self.job["id"], data)
        self._say("photo", name, {
            "walk": self.id, "station": station["id"] if station else None, "answer": subject, "role": role,
            "sha256": name, "size": len(data), "type": "image/jpeg", "source": "camera",
            "width": picture.SIZE[0], "height": picture.SIZE[1],
        })  # fmt: skip
        return name

    def _sign(self) -> None:
        self.clock.advance(minutes=2)
        self._say("signoff", self.id, {
            "walk": self.id, "name": self.phone.person["name"], "role": self.phone.person["role"],
            "statement": "I looked at the places recorded in this walk and recorded what I saw there. "
            "This speaks of those places only.",
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


