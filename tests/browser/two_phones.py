"""One roof, two people without signal, a copied phone, a clock twenty years off and a phone that was ended: what all of
them had to send arrives at once."""

from typing import Any

from inspect_app.entry.format import parse
from tests.bodies import body_of
from tests.browser.roof import Roof
from tests.phone import Phone, new_uuid

DEFINITION, ITEM = "nail-flange-fastening", "none_missing"
FAST = {"at": "2046-09-14T17:40:00.000-04:00",
        "clock": {"monotonic": 9, "server": "2026-09-14T21:30:00.000+00:00", "age": 600_000, "zone": ""}}  # fmt: skip


class TwoPhones:
    """``area``: id of the area that both changed; ``kept``: digest of what the ended phone brought."""

    def __init__(self, roof: Roof) -> None:
        self.roof, self.job = roof, roof.job
        with roof.app.app_context():
            logins = ("foreman", "inspector", "foreman")
            self.foreman, self.inspector, self.ended = (self._phone(login) for login in logins)
            self.original = next(parse(one.token) for one in roof.parts.reading.job_entries(roof.job, "area"))
        self.area = str(self.original.payload["subject"])

    def _phone(self, login: str) -> Phone:
        phone = Phone(self.roof.app.test_client(), self.roof.parts.accounts.by_login(login))
        self.roof.parts.devices.enrol(phone.person, phone.jwk, "a phone of the test")
        assert phone.get_token().status_code == 200
        return phone

    def all_of_it(self) -> None:
        drawn = ((self.foreman, "Quay, as the foreman drew it"), (self.inspector, "Quay, as the inspector did"))
        for phone, name in drawn:
            self.redraw(phone, name, self.original.digest)
        for phone, result, more in ((self.foreman, "pass", {}), (self.inspector, "fail", FAST)):
            self._look(phone, result, more)
        chain = dict(self.foreman.chains)
        for copy in ("the phone", "its copy"):
            self.foreman.chains = dict(chain)
            self._send(self.foreman, *(self._walk(self.foreman, f"{copy} {n}") for n in range(2)))
        with self.roof.app.app_context():
            self.roof.parts.devices.revoke(self.ended.kid, "server")
        self._send(self.ended, self._walk(self.ended, "a phone that was lost"), status="quarantined")

    def redraw(self, phone: Phone, name: str, *replaces: str) -> None:
        body = {**self.original.payload["body"], "name": name}
        self._send(phone, phone.entry("area", self.job, self.area, body, replaces=list(replaces)))

    def _walk(self, phone: Phone, crew: str, walk: str = "", more: Any = None) -> str:
        body = {"definition": self._definition(), "areas": [self.area], "crew": crew, "placed": []}
        return phone.entry("walk", self.job, walk, body, **(more or {}))

    def _look(self, phone: Phone, result: str, more: Any) -> None:
        walk, station = new_uuid(), new_uuid()
        place = {"walk": walk, "area": self.area, "panel": 3, "from_low_end": {"value": "10", "unit": "ft"},
                 "zone": "field", "chosen": "hand", "reached": "yes"}  # fmt: skip
        answer = body_of("answer") | {
            "walk": walk, "station": station, "area": self.area, "photos": [], "choice": result, "reading": None,
            "item": ITEM, "definition": self._definition(),
        }  # fmt: skip
        answer["verdict"] = answer["verdict"] | {"result": result}
        tokens = [self._walk(phone, "both", walk, more), phone.entry("station", self.job, station, place, **more)]
        subject = f"{station}/{DEFINITION}/{ITEM}"
        self._send(phone, *tokens, phone.entry("answer", self.job, subject, answer, **more))

    def _definition(self) -> str:
        return str(self.roof.record()["job"]["definitions"][DEFINITION])

    def _send(self, phone: Phone, *tokens: str, status: str = "accepted") -> None:
        answers = phone.send(*tokens).json["answers"]
        assert [one["status"] for one in answers] == [status] * len(tokens), answers
