"""The real server in this process, on a folder in memory where there is one: it can be asked, struck down in the middle
of an answer, opened again from what lies on its disk, and counted."""

import base64
import io
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from cryptography.hazmat.primitives.asymmetric import ec
from sqlalchemy import event

from inspect_app import application
from inspect_app.commands.restore import set_back
from inspect_app.entry.format import format_entry
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.uuid7 import uuid7
from inspect_app.people.accounts import Accounts
from inspect_app.people.passwords import Passwords
from inspect_app.settings import settings_from
from inspect_app.store.database import db
from inspect_app.upkeep.backup import back_up
from tests.bodies import body_of
from tests.office import CHEAP, PASSWORD
from tests.simulation.struck_disk import Struck, StruckDisk
from tests.steady_clock import SteadyClock

# Long ago: what the sweeps compare with the times that the file system gives must look the same on every machine.
BEGINNING = datetime(2020, 1, 1, 12, tzinfo=UTC)
JOB = uuid7(1577880000000, b"simulated0")
PEOPLE = {"ann": "foreman", "ben": "inspector", "cy": "foreman", "chief": "administrator"}
MEMORY = Path("/dev/shm")


class Server:
    """``answer`` takes one question of the other side and gives its answer, both plain data."""

    def __init__(self) -> None:
        self.folder = Path(tempfile.mkdtemp(dir=MEMORY if MEMORY.is_dir() else None))
        (self.folder / "no checklists").mkdir()
        settings = settings_from({"SEAMWALK_DATA": str(self.folder / "data")})
        self.settings = replace(settings, checklists=self.folder / "no checklists")
        self.clock = SteadyClock(BEGINNING)
        self.app = application.create_app(self.settings, self.clock, hasher=CHEAP)
        self.open()
        with self.app.app_context():
            self.people = self._people()
        self.mark()

    def open(self) -> None:
        """As a process that starts on this folder: nothing of the one before is left but what lies on the disk. The
        routes stay, which hold nothing."""
        self.close()
        with self.app.app_context():
            secret = application.kept_secret(self.settings.data / "session.key", lambda: b"s" * 32)
            self.app.secret_key = secret
            parts = application.build(self.settings, self.clock, secret, lambda job: None, Passwords(CHEAP))
            office = application.office_desk(parts)
            desk = application.photo_desk(parts, office.scope)
            self.disk = StruckDisk()
            parts.vault.disk = desk.uploads.disk = self.disk
            self.app.extensions.update(seamwalk=parts, office=office, photos=desk)
            self.app.extensions["reports"] = application.report_maker(parts, desk.copies)
            if not event.contains(db.engine, "commit", self._commit):
                event.listen(db.engine, "commit", self._commit)
        self.parts, self.desk = parts, desk

    def close(self) -> None:
        with self.app.app_context():
            db.session.remove()
            db.engine.dispose()

    def end(self) -> None:
        self.close()
        shutil.rmtree(self.folder)

    def mark(self) -> None:
        """What lies on the disk now is what every run begins with."""
        self.close()
        shutil.rmtree(self.folder / "beginning", ignore_errors=True)
        shutil.copytree(self.settings.data, self.folder / "beginning" / "data")
        back_up(self.settings.data, self.settings.database_url, self.folder / "beginning" / "backup", self.clock.now)

    def answer(self, asked: dict[str, Any]) -> dict[str, Any]:
        """``{"killed": True}`` where the process died over it; it is open again."""
        self.clock.now = BEGINNING + timedelta(milliseconds=asked.get("now", 0))
        try:
            return getattr(self, f"_{asked['op']}")(asked)
        except Struck:
            self.open()
            return {"killed": True}

    def _begin(self, _: dict[str, Any]) -> dict[str, Any]:
        self.close()
        for name in ("data", "backup"):
            shutil.rmtree(self.folder / name, ignore_errors=True)
            shutil.copytree(self.folder / "beginning" / name, self.folder / name)
        self.open()
        return {"job": JOB, "people": self.people, "password": PASSWORD}

    def _mark(self, _: dict[str, Any]) -> dict[str, Any]:
        self.mark()
        return {}

    def _http(self, asked: dict[str, Any]) -> dict[str, Any]:
        """``cut``: so many bytes of the body arrive, then the connection ends."""
        body = base64.b64decode(asked["body"])
        given: dict[str, Any] = {"data": body}
        if asked.get("cut") is not None:
            given = {"input_stream": io.BytesIO(body[: asked["cut"]]), "content_length": len(body)}
        with self.app.test_client(use_cookies=False) as client:
            reply = client.open(asked["path"], method=asked["method"], headers=asked["headers"], **given)
            said = base64.b64encode(reply.get_data()).decode()
            headers = [[name, value] for name, value in reply.headers]
            reply.close()
        return {"status": reply.status_code, "headers": headers, "body": said}

    def _strike(self, asked: dict[str, Any]) -> dict[str, Any]:
        self.disk.strike = [asked["how"], asked["after"]] if asked["how"] else None
        return {}

    def _kill(self, _: dict[str, Any]) -> dict[str, Any]:
        self.open()
        return {}

    def _expire(self, _: dict[str, Any]) -> dict[str, Any]:
        """Every sign-in and token ends: the secret that they were signed with is another."""
        file = self.settings.data / "session.key"
        before = file.read_bytes()
        file.unlink()
        file.write_bytes(bytes(byte ^ 1 for byte in before))
        self.open()
        return {}

    def _back_up(self, _: dict[str, Any]) -> dict[str, Any]:
        """As an administrator does it, while it serves; one made before is gone on with."""
        back_up(self.settings.data, self.settings.database_url, self.folder / "backup", self.clock.now)
        return {}

    def _set_back(self, _: dict[str, Any]) -> dict[str, Any]:
        """The store is lost, and made again of the newest backup."""
        self.close()
        shutil.rmtree(self.settings.data)
        assert set_back(self.settings, self.folder / "backup", clock=self.clock).done
        self.open()
        return {}

    def _revoke(self, asked: dict[str, Any]) -> dict[str, Any]:
        with self.app.app_context():
            if self.parts.devices.find(asked["kid"]) is not None:
                self.parts.devices.revoke(asked["kid"], "server")
        return {}

    def _census(self, _: dict[str, Any]) -> dict[str, Any]:
        """Everything held: tokens of the log and of the quarantine, photos whose bytes are what their name says, and
        apart from them those that are not; and whose each key is."""
        with self.app.app_context():
            log = [one.token for one in self.parts.reading.job_entries(JOB)]
            apart = self.parts.quarantine.tokens(JOB)
            confirmed, kept = set(self.parts.reading.photos(JOB)), self.parts.quarantine.photos(JOB)
            vault = self.parts.vault
            keys = {one.kid: person for person in self.people.values() for one in self.parts.devices.of(person)}
            whole = {name for name in confirmed | kept if vault.holds(name) and vault.found(name) == name}
        return {"log": log, "apart": apart, "photos": sorted(confirmed & whole), "photos_apart": sorted(kept & whole),
                "photos_missing": sorted((confirmed | kept) - whole), "keys": keys}  # fmt: skip

    def _commit(self, _connection: object) -> None:
        if self.disk.strike is None or self.disk.strike[0] == "kill":
            self.disk.step()

    def _people(self) -> dict[str, str]:
        parts, ids = self.parts, _counted()
        accounts = Accounts(parts.transactions, self.clock, lambda: next(ids), Passwords(CHEAP))
        people = {
            name: accounts.add(name, f"{name.title()} (invented)", role, PASSWORD) for name, role in PEOPLE.items()
        }
        for person in people.values():
            parts.membership.join(person.id, JOB)
        key = ec.derive_private_key(7, ec.SECP256R1())
        parts.devices.enrol(people["chief"], public_jwk(key.public_key()), "office")
        payload = {
            "v": 1, "id": next(ids), "kind": "job", "job": JOB, "subject": JOB, "replaces": [], "seq": 0, "prev": None,
            "at": "2020-01-01T12:00:00.000+00:00", "clock": {"monotonic": 0, "server": None, "age": None, "zone": ""},
            "by": people["chief"].id, "build": "test", "body": body_of("job") | {"definitions": {}},
        }  # fmt: skip
        answer = parts.batches.receive([format_entry(payload, key)])[0]
        assert answer.status == "accepted", answer
        return {name: person.id for name, person in people.items()}


def _counted() -> Iterator[str]:
    for number in range(1000):
        yield uuid7(1577880000001 + number, number.to_bytes(10, "big"))


@contextmanager
def served() -> Iterator[Server]:
    server = Server()
    try:
        yield server
    finally:
        server.end()
