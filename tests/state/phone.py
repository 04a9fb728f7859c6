"""A model of a phone: what it showed as saved, what it holds receipts for, and the requests it would send next.

It never lets anything go but by the hand of a person: wiped, or set back to an old copy.
"""

import base64
import copy
import json
from dataclasses import dataclass, field
from datetime import datetime, timedelta, timezone
from typing import Any

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.format import format_entry, parse
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.jws import verify
from inspect_app.entry.proof import format_proof
from inspect_app.entry.statement import parse_statement
from inspect_app.entry.thumbprint import thumbprint
from inspect_app.entry.uuid7 import uuid7
from tests.bodies import body_of

BODIES = {kind: json.dumps(body_of(kind)) for kind in ("area", "walk", "photo", "admission")}
START = datetime(2026, 11, 25, 16, 40, tzinfo=timezone(timedelta(hours=-5)))


@dataclass
class Picture:
    """A photo on the phone. ``at``: the upload's address; ``sure``: whether its offset is known."""

    data: bytes
    at: str = ""
    offset: int = 0
    sure: bool = True
    apart: bool = False
    receipt: str = ""


@dataclass
class Store:
    """All that lies on a phone, and goes into a copy of it. ``chains``: job → next ``seq`` and ``prev``."""

    number: int
    chains: dict[str, tuple[int, str | None]] = field(default_factory=dict)
    saved: dict[str, str] = field(default_factory=dict)
    receipts: dict[str, str] = field(default_factory=dict)
    answers: dict[str, str] = field(default_factory=dict)
    pictures: dict[tuple[str, str], Picture] = field(default_factory=dict)
    known: dict[str, str] = field(default_factory=dict)
    cursor: int = 0


@dataclass
class Sent:
    """A request on its way, with the answer still waited for. ``about``: digests, or ``(job, sha256)``."""

    method: str
    path: str
    headers: dict[str, str]
    body: bytes
    about: Any
    key: str
    waiting: bool = True


class Phone:
    """``person``: id and login. ``number`` makes the key, so that a run can be repeated."""

    def __init__(self, person: Any, number: int) -> None:
        self.person, self.bearer, self.jump, self.backup = person, "", timedelta(), None
        self.renew(number)

    def renew(self, number: int) -> None:
        """An empty phone with a new key: after a loss, a wipe, or the end of the old key."""
        self.store, self.bearer = Store(number), ""
        self._keyed()

    def _keyed(self) -> None:
        self.key = ec.derive_private_key(self.store.number + 10_000, ec.SECP256R1())
        self.jwk = public_jwk(self.key)
        self.kid = thumbprint(self.jwk)

    def twin(self) -> "Phone":
        other = Phone(self.person, self.store.number)
        other.store, other.jump = copy.deepcopy(self.store), self.jump
        return other

    def keep_backup(self) -> None:
        self.backup = copy.deepcopy(self.store)

    def set_back(self) -> None:
        assert self.backup is not None
        self.store, self.bearer = copy.deepcopy(self.backup), ""
        self._keyed()

    def save(self, count: int, kind: str, job: str, subject: str, body: dict[str, Any], replaces: list[str]) -> str:
        """Sign and keep an entry, the ``count``-th of the whole run; its digest."""
        seq, prev = self.store.chains.get(job, (0, None))
        at = (START + timedelta(seconds=count) + self.jump).isoformat(timespec="milliseconds")
        token = format_entry({
            "v": 1, "id": uuid7(1795642805120 + count, count.to_bytes(10, "big")), "kind": kind, "job": job,
            "subject": subject, "replaces": replaces, "at": at, "seq": seq, "prev": prev, "by": self.person.id,
            "clock": {"monotonic": count, "server": None, "age": None, "zone": ""}, "build": "model",
            "body": json.loads(BODIES[kind]) | body,
        }, self.key)  # fmt: skip
        digest = parse(token).digest
        self.store.chains[job] = (seq + 1, digest)
        self.store.saved[digest] = token
        return digest

    def unsent(self) -> list[str]:
        return [one for one in self.store.saved if one not in self.store.receipts]

    def unsent_pictures(self) -> list[tuple[str, str]]:
        return [name for name, one in self.store.pictures.items() if not one.receipt]

    def proof(self, nonce: str, purpose: Any) -> str:
        return format_proof(nonce, purpose, self.key)

    def _request(self, method: str, path: str, body: bytes, about: Any, **headers: str) -> Sent:
        return Sent(method, path, {"Authorization": f"Bearer {self.bearer}", **headers}, body, about, self.kid)

    def batch(self, digests: list[str], author: "Phone | None" = None) -> Sent:
        """Entries, its own or those of somebody else who uses the same phone."""
        tokens = [(author or self).store.saved[one] for one in digests]
        body = json.dumps({"entries": tokens}).encode()
        return self._request("POST", "/api/entries", body, digests, **{"Content-Type": "application/json"})

    def upload(self, name: tuple[str, str], size: int, spoiled: bool = False) -> Sent:
        """The next request for that photo; ``size`` bytes of it where bytes are due, one of them ``spoiled``."""
        job, sha256 = name
        one = self.store.pictures[name]
        tus = {"Tus-Resumable": "1.0.0"}
        piece = one.data[one.offset : one.offset + size]
        if spoiled and piece:
            piece = piece[:-1] + bytes([piece[-1] ^ 1])
        if one.apart:
            return self._request("GET", f"/api/photos/receipt?job={job}&sha256={sha256}", b"", name)
        if not one.at:
            told = {"job": job, "sha256": sha256, "type": "image/jpeg"}
            said = ",".join(f"{key} {base64.b64encode(value.encode()).decode()}" for key, value in told.items())
            length = {"Upload-Length": str(len(one.data)), "Upload-Metadata": said}
            return self._request("POST", "/api/photos", b"", name, **tus, **length)
        if not one.sure:
            return self._request("HEAD", one.at, b"", name, **tus)
        offset = {"Upload-Offset": str(one.offset), "Content-Type": "application/offset+octet-stream"}
        return self._request("PATCH", one.at, piece, name, **tus, **offset)

    def hear_batch(self, sent: Sent, reply: Any, jwk: Any) -> None:
        """Only a receipt that names the entry and is signed by the server takes it out of what is unsent."""
        for digest, answer in zip(sent.about, reply.json["answers"], strict=True):
            assert answer["digest"] == digest
            self.store.answers[digest] = answer.get("code") or answer["status"]
            if "receipt" in answer:
                said = parse_statement(answer["receipt"])
                verify(said, jwk)
                assert (said.kind, said.payload["entry"]) == ("receipt", digest)
                assert self.store.receipts.setdefault(digest, answer["receipt"]) == answer["receipt"]

    def hear_upload(self, sent: Sent, reply: Any, jwk: Any) -> None:
        one = self.store.pictures[sent.about]
        receipt, status = reply.headers.get("Seamwalk-Receipt", ""), reply.status_code
        if sent.method == "GET":
            one.apart = status != 404  # 404: it may have to be brought again
            receipt = reply.json["receipt"] if status == 200 else ""
        elif status in (200, 201, 204):
            one.at = reply.headers.get("Location", one.at)
            one.offset, one.sure = int(reply.headers["Upload-Offset"]), True
            one.apart = one.offset == len(one.data) and not receipt
        elif status in (404, 410, 460):
            one.at, one.offset = "", 0
        else:
            one.sure = False
        if receipt:
            said = parse_statement(receipt)
            verify(said, jwk)
            job, sha256 = sent.about
            assert (said.payload["job"], said.payload["photo"], said.payload["size"]) == (job, sha256, len(one.data))
            assert one.receipt in ("", receipt)
            one.receipt, one.apart = receipt, False
