"""The real server, in a thread, with an invented job: what the phones of these tests talk to."""

import hashlib
import threading
from dataclasses import replace
from pathlib import Path

import werkzeug.serving
from cryptography.hazmat.primitives.asymmetric import ec
from flask import Response

from inspect_app.application import create_app
from inspect_app.entry.base64url import encode
from inspect_app.entry.format import format_entry
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.jws import format_jws, parse_jws
from inspect_app.entry.uuid7 import uuid7
from inspect_app.settings import settings_from
from tests.begun import begun
from tests.browser.gate import Gate, free_port
from tests.office import CHEAP
from tests.vectors.entry_bodies import q

PASSWORD = "an invented password"
JOB = uuid7(1795642805120, b"invented12")
AT = "2026-11-25T16:40:05.120-05:00"


class Office:
    """``url``; ``people`` {login: id}; ``job``; ``gate``; ``stop()`` and ``start()`` as a server that goes
    away. A folder that already holds an office is opened as it stands."""

    def __init__(
        self, folder: Path, definitions: dict[str, str] | None = None, static: Path | None = None
    ) -> None:
        settings = settings_from({"SEAMWALK_DATA": str(folder)})
        begun(folder)
        self.app = create_app(replace(settings, static=static or settings.static), hasher=CHEAP)
        # Under /api/, so that the worker does not answer with the app itself.
        self.app.add_url_rule("/api/blank", "blank", lambda: Response("<!doctype html><title>blank</title>"))
        self.parts = self.app.extensions["seamwalk"]
        self.gate = Gate(self.app.wsgi_app, self._forge)
        self._stranger = ec.generate_private_key(ec.SECP256R1())
        self.port = free_port()
        self.url = f"http://127.0.0.1:{self.port}"
        self.job = JOB
        with self.app.app_context():
            first = not self.parts.accounts.everybody()
            self._people()
            if first:
                self._open_job(definitions or {})
        self.static = static or settings.static
        self._server: werkzeug.serving.BaseWSGIServer | None = None

    def _people(self) -> None:
        roles = {"ann": "foreman", "ben": "inspector", "cato": "administrator"}
        self.accounts = {
            login: self.parts.accounts.by_login(login)
            or self.parts.accounts.add(login, f"{login.title()} (invented)", role, PASSWORD)
            for login, role in roles.items()
        }
        self.people = {login: person.id for login, person in self.accounts.items()}
        for person in self.people.values():
            self.parts.membership.join(person, self.job)

    def _open_job(self, definitions: dict[str, str]) -> None:
        key = ec.generate_private_key(ec.SECP256R1())
        administrator = self.people["cato"]
        self.parts.devices.enrol(self.accounts["cato"], public_jwk(key), "office")
        body = {
            "name": "Boathouse (invented)", "place": "No such quay", "units": "US", "language": "en",
            "paper": "letter", "invented": True, "metal_low": q("-20", "F"), "metal_high": q("180", "F"),
            "metal_range_source": "invented", "placing_error": q("0.125", "in"), "parties": [],
            "definitions": definitions,
        }  # fmt: skip
        payload = {
            "v": 1, "id": uuid7(1795642805121, b"invented13"), "kind": "job", "job": self.job,
            "subject": self.job, "replaces": [], "at": AT, "seq": 0, "prev": None,
            "clock": {"monotonic": 0, "server": None, "age": None, "zone": ""},
            "by": administrator, "build": "test", "body": body,
        }  # fmt: skip
        answer = self.parts.batches.receive([format_entry(payload, key)])[0]
        assert answer.status == "accepted", answer

    def start(self) -> None:
        server = werkzeug.serving.make_server(
            "127.0.0.1", self.port, self.gate, threaded=True, request_handler=Quiet
        )
        self._server = server
        self.gate.open = True
        threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.02}, daemon=True).start()

    def stop(self) -> None:
        self.gate.open = False
        if self._server:
            self._server.shutdown()
            self._server.server_close()
            self._server = None

    def __enter__(self) -> "Office":
        self.start()
        return self

    def __exit__(self, *_: object) -> None:
        self.stop()

    def entries(self) -> list:
        """Every entry the server holds, parsed, in its order."""
        with self.app.app_context():
            rows = self.parts.reading.entries_after(0, [self.job], 100_000)
        return [parse_jws(row.token, "seamwalk-entry") for row in rows]

    def photo(self, sha256: str) -> bytes | None:
        return self.parts.vault.read(sha256) if self.parts.vault.holds(sha256) else None

    def _forge(self, token: str) -> object:
        """A receipt like the server's own, by a key that is not the server's."""
        payload = {"v": 1, "kind": "receipt", "seq": 1, "at": AT, "job": self.job, "n": 0, "prev": None}
        if token.count(".") != 2:
            return format_jws({**payload, "photo": token, "size": 1}, "seamwalk-statement", self._stranger)
        digest = encode(hashlib.sha256(token.rpartition(".")[0].encode()).digest())
        receipt = format_jws({**payload, "entry": digest}, "seamwalk-statement", self._stranger)
        return {"digest": digest, "status": "accepted", "receipt": receipt}


class Quiet(werkzeug.serving.WSGIRequestHandler):
    """Cut connections are what these tests are about, nothing to report. Connections are kept alive, as a
    real server does it; what was open when the server stopped is cut at its next request."""

    protocol_version = "HTTP/1.1"

    def log(self, *_: object) -> None:
        pass
