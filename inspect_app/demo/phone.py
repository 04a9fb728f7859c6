"""A phone in Python: its key, its chain of entries, its outbox, and its talk with the server over HTTP.

What the browser does, as a program: the demonstration walks with it, and tests attack the server with it. Time,
randomness and the connection are handed in; nothing is kept on disk.
"""

import base64
import hashlib
from collections.abc import Callable
from datetime import datetime
from typing import Any

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.demo.http import Http, Reply
from inspect_app.entry.format import format_entry, parse
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.jws import verify
from inspect_app.entry.proof import Purpose, format_proof
from inspect_app.entry.statement import parse_statement
from inspect_app.entry.thumbprint import thumbprint
from inspect_app.entry.uuid7 import uuid7

CHUNK = 256 * 1024
TUS = {"Tus-Resumable": "1.0.0"}
BUILD = "demonstration"


class NotTaken(RuntimeError):
    """The server refused what this phone holds for right."""


class Phone:
    """One person's phone. ``now()`` gives aware local time, ``entropy(n)`` gives n random bytes."""

    def __init__(self, http: Http, now: Callable[[], datetime], entropy: Callable[[int], bytes]) -> None:
        self.http, self.now, self.entropy = http, now, entropy
        self.key = ec.generate_private_key(ec.SECP256R1())
        self.kid = thumbprint(public_jwk(self.key))
        self.person: dict[str, str] = {}
        self.server: dict[str, Any] = {}
        self.chains: dict[str, tuple[int, str]] = {}
        self.outbox: dict[str, str] = {}
        self.photos: dict[str, tuple[str, bytes]] = {}
        self.receipts: dict[str, str] = {}

    def new_id(self) -> str:
        return uuid7(int(self.now().timestamp() * 1000), self.entropy(10))

    def sign_in(self, login: str, password: str, device: str) -> None:
        """Sign in, make the key known, and keep the server's own key."""
        csrf = self._good(self.http.call("GET", "/api/session")).json()["csrf"]
        given = {"login": login, "password": password}
        signed = self._good(self.http.call("POST", "/api/session", given, {"X-Seamwalk-Csrf": csrf})).json()
        self.person = signed["person"]
        enrolment = {"jwk": public_jwk(self.key), "device": device, "proof": self._proof("enrol")}
        told = self._good(self.http.call("POST", "/api/devices", enrolment, {"X-Seamwalk-Csrf": signed["csrf"]}))
        self.server = told.json()["server"]

    def say(self, job: str, kind: str, subject: str, body: dict[str, Any], replaces: tuple[str, ...] = ()) -> str:
        """Sign one entry into the outbox; its digest."""
        seq, prev = self.chains.get(job, (0, None))
        at = self.now()
        payload = {
            "v": 1, "id": self.new_id(), "kind": kind, "job": job, "subject": subject, "replaces": list(replaces),
            "at": at.isoformat(timespec="milliseconds"),
            "clock": {"monotonic": int(at.timestamp() * 1000) % 86_400_000, "server": None, "age": None, "zone": ""},
            "seq": seq, "prev": prev, "by": self.person["id"], "build": BUILD, "body": body,
        }  # fmt: skip
        token = format_entry(payload, self.key)
        digest = parse(token).digest
        self.chains[job] = (seq + 1, digest)
        self.outbox[digest] = token
        return digest

    def tickets(self, job: str, series: str = "work") -> list[dict[str, Any]]:
        """The unused tickets of this key in the job, lowest number first, as a lot's entry names one."""
        token = self._good(self.http.call("POST", "/api/delivery", {"proof": self._proof("deliver")})).json()["token"]
        asked = {"job": job, "series": series, "have": -1}
        told = self._good(self.http.call("POST", "/api/tickets", asked, {"Authorization": f"Bearer {token}"}))
        found = []
        for jws in told.json()["tickets"]:
            statement = parse_statement(jws)
            verify(statement, self.server["jwk"])
            said = statement.payload
            found.append({"series": said["series"], "n": said["n"], "random": said["random"], "statement": jws})
        return found

    def keep_photo(self, job: str, data: bytes) -> str:
        """Put a photograph beside the outbox; its hash."""
        name = hashlib.sha256(data).hexdigest()
        self.photos[name] = (job, data)
        return name

    def deliver(self) -> None:
        """Send everything unsent: manifest, entries, photos. Each leaves the outbox only for a receipt that
        verifies against the server's key. Raises ``NotTaken`` for a refusal."""
        bearer = self._bearer()
        self._send_manifest(bearer)
        for start in range(0, len(self.outbox), 25):
            batch = list(self.outbox.values())[start : start + 25]
            answers = self._good(self.http.call("POST", "/api/entries", {"entries": batch}, bearer)).json()["answers"]
            for answer in answers:
                if answer["status"] not in ("accepted", "duplicate"):
                    raise NotTaken(f"{answer['status']}: {answer.get('message')} {answer.get('field')}")
                self._receive(answer["receipt"], "entry", answer["digest"])
        self.outbox = {digest: token for digest, token in self.outbox.items() if digest not in self.receipts}
        for name in list(self.photos):
            self._upload(name, bearer)
            del self.photos[name]

    def tell(self) -> None:
        """Say what is still only here, and send nothing of it."""
        self._send_manifest(self._bearer())

    def send_apart(self) -> None:
        """Send all of it by a key that was revoked: it stays in the outbox, and is kept apart on the server. Raises
        ``NotTaken`` where the server takes it for anything else."""
        bearer = self._bearer()
        batch = {"entries": list(self.outbox.values())}
        for answer in self._good(self.http.call("POST", "/api/entries", batch, bearer)).json()["answers"]:
            if answer["status"] != "quarantined":
                raise NotTaken(f"{answer['status']}: not kept apart")
        for name in self.photos:
            place = self._sent(name, bearer)
            held = self._good(self.http.call("HEAD", place, None, bearer | TUS))
            if int(held.headers["upload-offset"]) != len(self.photos[name][1]) or "seamwalk-receipt" in held.headers:
                raise NotTaken(f"{name}: not kept apart")

    def _bearer(self) -> dict[str, str]:
        token = self._good(self.http.call("POST", "/api/delivery", {"proof": self._proof("deliver")})).json()["token"]
        return {"Authorization": f"Bearer {token}"}

    def _send_manifest(self, bearer: dict[str, str]) -> None:
        items = [
            {"what": "entry", "job": parse(token).job, "name": digest, "size": len(token)}
            for digest, token in self.outbox.items()
        ] + [
            {"what": "photo", "job": job, "name": name, "size": len(data)} for name, (job, data) in self.photos.items()
        ]
        told = {"items": items, "oldest": self.now().isoformat(timespec="milliseconds")}
        self._good(self.http.call("POST", "/api/manifest", told, bearer))

    def _upload(self, name: str, bearer: dict[str, str]) -> None:
        self._sent(name, bearer)
        asked = f"/api/photos/receipt?job={self.photos[name][0]}&sha256={name}"
        self._receive(self._good(self.http.call("GET", asked, None, bearer)).json()["receipt"], "photo", name)

    def _sent(self, name: str, bearer: dict[str, str]) -> str:
        """Every byte of a photo, in pieces; the address of its upload."""
        job, data = self.photos[name]
        said = {"job": job, "sha256": name, "type": "image/jpeg"}
        coded = ",".join(f"{key} {base64.b64encode(value.encode()).decode()}" for key, value in said.items())
        headers = bearer | TUS | {"Upload-Length": str(len(data)), "Upload-Metadata": coded}
        place = self._good(self.http.call("POST", "/api/photos", b"", headers)).headers["location"]
        offset = int(self._good(self.http.call("HEAD", place, None, bearer | TUS)).headers["upload-offset"])
        while offset < len(data):
            piece = data[offset : offset + CHUNK]
            checksum = base64.b64encode(hashlib.sha256(piece).digest()).decode()
            sent = {"Upload-Offset": str(offset), "Upload-Checksum": f"sha256 {checksum}"}
            sent["Content-Type"] = "application/offset+octet-stream"
            reply = self._good(self.http.call("PATCH", place, piece, bearer | TUS | sent))
            offset = int(reply.headers["upload-offset"])
        return place

    def _receive(self, receipt: str, what: str, name: str) -> None:
        statement = parse_statement(receipt)
        verify(statement, self.server["jwk"])
        if statement.payload.get(what) != name:
            raise NotTaken(f"a receipt for something else: {statement.payload}")
        self.receipts[name] = receipt

    def _proof(self, purpose: Purpose) -> str:
        return format_proof(self._good(self.http.call("GET", "/api/nonce")).json()["nonce"], purpose, self.key)

    @staticmethod
    def _good(reply: Reply) -> Reply:
        if reply.status >= 300:
            raise NotTaken(f"{reply.status}: {reply.body[:300].decode(errors='replace')}")
        return reply
