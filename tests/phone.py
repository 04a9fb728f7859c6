"""A phone of one person: its key, its chains of entries, and what it says to the server."""

from typing import Any

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.format import format_entry, parse
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.proof import format_proof
from inspect_app.entry.thumbprint import thumbprint
from inspect_app.entry.uuid7 import uuid7
from tests.bodies import body_of

_count = 0


def new_uuid() -> str:
    global _count
    _count += 1
    return uuid7(1795642805120 + _count, _count.to_bytes(10, "big"))


class Phone:
    """``client`` is a Flask test client of its own: a phone shares no cookies."""

    def __init__(self, client: Any, person: Any) -> None:
        self.client, self.person = client, person
        self.key = ec.generate_private_key(ec.SECP256R1())
        self.jwk = public_jwk(self.key)
        self.kid = thumbprint(self.jwk)
        self.chains: dict[str, tuple[int, str]] = {}
        self.bearer: dict[str, str] = {}

    def sign_in(self, password: str) -> Any:
        csrf = self.client.get("/api/session").json["csrf"]
        reply = self.client.post(
            "/api/session", json={"login": self.person.login, "password": password}, headers=_csrf(csrf)
        )
        self.csrf = reply.json.get("csrf", csrf)
        return reply

    def nonce(self) -> str:
        return str(self.client.get("/api/nonce").json["nonce"])

    def enrol(self, **changed: Any) -> Any:
        given = {"jwk": self.jwk, "device": "test", "proof": self.proof("enrol")}
        return self.client.post("/api/devices", json=given | changed, headers=_csrf(self.csrf))

    def proof(self, purpose: Any) -> str:
        return format_proof(self.nonce(), purpose, self.key)

    def get_token(self) -> Any:
        reply = self.client.post("/api/delivery", json={"proof": self.proof("deliver")})
        if reply.status_code == 200:
            self.bearer = {"Authorization": f"Bearer {reply.json['token']}"}
        return reply

    def entry(self, kind: str, job: str, subject: str = "", body: dict | None = None, **changed: Any) -> str:
        """A signed entry, the next of this phone's chain in the job."""
        seq, prev = self.chains.get(job, (0, None))
        body = body_of(kind) | (body or {})
        payload = {
            "v": 1, "id": new_uuid(), "kind": kind, "job": job, "subject": subject or new_uuid(),
            "replaces": [], "at": "2026-11-25T16:40:05.120-05:00",
            "clock": {"monotonic": 1, "server": None, "age": None, "zone": ""},
            "seq": seq, "prev": prev, "by": self.person.id, "build": "test", "body": body,
        } | changed  # fmt: skip
        token = format_entry(payload, self.key)
        self.chains[job] = (seq + 1, parse(token).digest)
        return token

    def job(self, job: str, **body: Any) -> str:
        return self.entry("job", job, job, body)

    def tickets(self, job: str, series: str = "work", have: int = -1) -> Any:
        """Asks for the random tickets after number ``have``."""
        asked = {"job": job, "series": series, "have": have}
        return self.client.post("/api/tickets", json=asked, headers=self.bearer)

    def lot(self, job: str, n: int, series: str = "work", owner: str = "") -> str:
        """A lot under this key's ticket of that number (or that of another, ``owner``); all in it is invented."""
        ticket = body_of("lot")["ticket"] | {"series": series, "n": n}
        return self.entry("lot", job, f"{owner or self.kid}/{series}/{n}", {"ticket": ticket})

    def send(self, *tokens: Any, **headers: str) -> Any:
        return self.client.post("/api/entries", json={"entries": list(tokens)}, headers=self.bearer | headers)

    def pull(self, after: int = 0, **asked: Any) -> Any:
        return self.client.get("/api/entries", query_string={"after": after, **asked}, headers=self.bearer)


def _csrf(token: str) -> dict[str, str]:
    return {"X-Seamwalk-Csrf": token}
