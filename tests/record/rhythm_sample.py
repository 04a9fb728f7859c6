"""A roof at work, in memory: phones that sign, tickets, lots, marks, looks. Invented."""

import base64
import copy
import hashlib
import json
from functools import cache
from typing import Any

from inspect_app.record.fold import fold
from inspect_app.record.lot_draw import draw_lot
from tests.bodies import body_of

FOREMAN, SECOND, INSPECTOR, LEAD, REVIEWER, ENGINEER, OWNER = (letter * 43 for letter in "FSILREO")
PEOPLE = {
    "fay": {"name": "Fay (invented)", "role": "foreman", "kids": [FOREMAN]},
    "sol": {"name": "Sol (invented)", "role": "foreman", "kids": [SECOND]},
    "ira": {"name": "Ira (invented)", "role": "inspector", "kids": [INSPECTOR]},
    "lee": {"name": "Lee (invented)", "role": "administrator", "kids": [LEAD]},
    "rey": {"name": "Rey (invented)", "role": "reviewer", "kids": [REVIEWER]},
    "eno": {"name": "Eno (invented)", "role": "engineer", "kids": [ENGINEER]},
    "oda": {"name": "Oda (invented)", "role": "owner", "kids": [OWNER]},
}
JOB, AREA, ASSEMBLY, WALK = "job", "area", "assembly", "walk"
ASKED = [
    {"id": "flange", "per": "station", "applies": {"attachment": ["nail_flange"]}, "items": [
        {"id": "screw", "severity": "critical", "applies": {}}, {"id": "dimple", "severity": "major", "applies": {}},
        {"id": "wave", "severity": "minor", "applies": {}}, {"id": "note", "severity": "record", "applies": {}},
        {"id": "tab", "severity": "major", "applies": {"attachment": ["expansion_clip"]}},
    ]},
    {"id": "clips", "per": "station", "applies": {"attachment": ["fixed_clip"]}, "items": [
        {"id": "hook", "severity": "critical", "applies": {}}]},
    {"id": "evening", "per": "walk", "applies": {}, "items": [{"id": "loose", "severity": "major", "applies": {}}]},
]  # fmt: skip
ITEMS = ("screw", "dimple", "wave")


def coded(data: bytes) -> str:
    return base64.urlsafe_b64encode(data).rstrip(b"=").decode()


def ticket(kid: str, n: int, series: str = "work", changed: dict[str, Any] | None = None) -> dict[str, Any]:
    """What the server gives: the same again for the same key, series and number."""
    random = coded(hashlib.sha256(f"{kid} {series} {n}".encode()).digest())
    told = {"job": JOB, "kid": kid, "series": series, "n": n, "random": random, **(changed or {})}
    statement = ".".join([coded(b"{}"), coded(json.dumps(told).encode()), coded(b"signature")])
    return {"series": series, "n": n, "random": random, "statement": statement}


class Site:
    """A job with one rectangular area of ``across`` panels; every ``say`` is one more entry of some key's chain."""

    def __init__(self, across: int = 61, sampling: dict[str, Any] | None = None) -> None:
        self.entries: list[dict[str, Any]] = []
        self.chains: dict[str, list[str]] = {}
        self.count = 0
        self._known: tuple[int, dict[str, Any]] = (0, {})
        job = body_of("job")
        if sampling:
            job["sampling"] = sampling
        self.say(LEAD, "job", JOB, job)
        self.assembly = self.say(LEAD, "assembly", ASSEMBLY, body_of("assembly"))
        self.area = self.add_area(AREA, across)
        self.walk(FOREMAN, WALK)

    def add_area(self, name: str, across: int, replaces: tuple[str, ...] = ()) -> str:
        body = body_of("area")
        width = f"{across * 16 / 12:.6f}"
        points = [["0", "0"], [width, "0"], [width, "40"], ["0", "40"]]
        body.update(assembly=ASSEMBLY, outline={"unit": "ft", "points": points})
        return self.say(LEAD, "area", name, body, replaces)

    def walk(self, kid: str, name: str, **changed: Any) -> str:
        return self.say(kid, "walk", name, {**body_of("walk"), "areas": [AREA], "placed": [], **changed})

    def say(
        self, kid: str, kind: str, subject: str, body: dict[str, Any], replaces: tuple[str, ...] = (), **changed: Any
    ) -> str:
        by = next(name for name, person in PEOPLE.items() if kid in person["kids"])
        chain = self.chains.setdefault(kid, [])
        payload = {
            "v": 1, "kind": kind, "job": JOB, "subject": subject, "replaces": list(replaces), "by": by,
            "at": f"2026-11-25T{8 + len(self.entries) % 10:02}:00:00.000-05:00", "clock": {}, "seq": len(chain),
            "prev": chain[-1] if chain else None, "body": copy.deepcopy(body), **changed,
        }  # fmt: skip
        digest = coded(hashlib.sha256(json.dumps([kid, payload], sort_keys=True).encode()).digest())
        chain.append(digest)
        self.entries.append({"digest": digest, "kid": kid, "payload": payload})
        return digest

    def new_id(self) -> str:
        self.count += 1
        return f"id-{self.count:04}"

    def record(self) -> dict[str, Any]:
        return fold(self.entries, PEOPLE)

    def known(self) -> dict[str, Any]:
        """The record as of the last entry: what a phone draws and looks by."""
        if self._known[0] != len(self.entries):
            self._known = (len(self.entries), self.record())
        return self._known[1]

    def body(self, low: int, high: int, *, kid: str = FOREMAN, n: int = 0, purpose: str = "work", crew: str = "2",
             day: str = "2026-11-25", area: str = AREA, series: str = "work", **more: Any) -> dict[str, Any]:
        """``{"subject", "body"}`` as the phone is given it."""
        asked = {"purpose": purpose, "crew": crew, "day": day, "ticket": ticket(kid, n, series), "definitions": ASKED,
                 "population": [{"area": area, "from": low, "to": high}], **more}
        return draw_lot(self.known(), asked)  # fmt: skip

    def plan(self, low: int, high: int, *, kid: str = FOREMAN, **more: Any) -> str:
        """A lot drawn and signed; its id."""
        drawn = self.body(low, high, kid=kid, **more)
        self.say(kid, "lot", drawn["subject"], drawn["body"])
        return str(drawn["subject"])

    def mark(self, lot: str, to: int, *, kid: str = FOREMAN, subject: str | None = None, replaces: tuple[str, ...] = (),
             area: str = AREA, **more: Any) -> str:
        body = {"lot": lot, "area": area, "to": to, "change": [], "night": False, "against": [], **more}
        return self.say(kid, "mark", subject or self.new_id(), body, replaces)  # fmt: skip

    def release(self, lot: str, panel: int, why: str = "first", *, kid: str = FOREMAN, **more: Any) -> str:
        body = {"lot": lot, "area": AREA, "panel": panel, "why": why, "way": None, "walk": None, "statement": "",
                "name": "", "role": "", **more}
        return self.say(kid, "release", f"{lot}/{panel}/{why}", body)  # fmt: skip

    def stop(self, lot: str, panel: int, outcome: str, *, kid: str = FOREMAN) -> str:
        body = {"lot": lot, "area": AREA, "panel": panel, "outcome": outcome, "note": ""}
        return self.say(kid, "stop", f"{lot}/{panel}", body)

    def station(self, panel: int, from_low_end: Any, *, kid: str = FOREMAN, lot: str | None = None, area: str = AREA,
                chosen: str = "drawn", reached: str = "yes", subject: str | None = None,
                replaces: tuple[str, ...] = ()) -> str:
        subject = subject or self.new_id()
        body = {"walk": WALK, "area": area, "panel": panel, "from_low_end": from_low_end, "zone": "field",
                "chosen": chosen, "reached": reached}
        self.say(kid, "station", subject, {**body, **({"lot": lot} if lot else {})}, replaces)
        return subject  # fmt: skip

    def answer(self, station: str, item: str, result: str, *, kid: str = FOREMAN, definition: str = "flange") -> str:
        body = {**body_of("answer"), "walk": WALK, "station": station, "area": AREA, "item": item, "choice": result,
                "reading": None, "photos": []}
        body["verdict"] = {**body["verdict"], "result": result}
        return self.say(kid, "answer", f"{station}/{definition}/{item}", body)  # fmt: skip

    def places(self, lot: str, panel: int) -> list[dict[str, Any]]:
        stop = next(one for one in self.known()["lots"][lot]["drawn"] if one.get("panel") == panel)
        found: list[dict[str, Any]] = stop["places"]
        return found

    def look(self, lot: str, panel: int, *, kid: str = FOREMAN, fails: str = "", items: tuple[str, ...] = ITEMS,
             area: str = AREA) -> list[str]:
        """Every drawn place of a panel looked at, one item failing everywhere if wanted; the stations."""
        stations = []
        for place in self.places(lot, panel):
            stations.append(self.station(panel, place["from_low_end"], kid=kid, lot=lot, area=area))
            for item in items:
                self.answer(stations[-1], item, "fail" if item == fails else "pass", kid=kid)
        return stations  # fmt: skip

    def photo(self, panel: int, *, kid: str = FOREMAN, area: str = AREA) -> str:
        name = hashlib.sha256(self.new_id().encode()).hexdigest()
        body = {**body_of("photo"), "walk": WALK, "station": None, "role": "leg", "sha256": name, "area": area,
                "panel": panel}
        return self.say(kid, "photo", name, body)  # fmt: skip


@cache
def drawn_first() -> tuple[int, ...]:
    """The panels that the foreman's first lot of panels 1 to 40 draws, up the roof: read from a copy whose day is
    over."""
    site = Site()
    lot = site.plan(1, 40)
    site.plan(41, 60, n=1, day="2026-11-26")
    return tuple(sorted(drawn_panels(site.record(), lot)))


def drawn_panels(record: dict[str, Any], lot: str) -> list[int]:
    """Of a lot whose places are all revealed."""
    return [stop["panel"] for stop in record["lots"][lot]["drawn"]]


def codes(record: dict[str, Any]) -> set[str]:
    return {flag["code"] for flag in record["flags"]}
