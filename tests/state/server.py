"""The real server on a folder of its own, in this process. It can die at any step, and opens again from what the folder
held at that very moment: no handler, rollback or truncation that runs afterwards is any part of what a kill leaves.

A step is a statement to the database, its commit, or a call to the disk. A kill says nothing about power cuts.
"""

import errno
import io
import os
import shutil
import sqlite3
from pathlib import Path
from typing import Any, NamedTuple

from sqlalchemy import event
from sqlalchemy.exc import OperationalError

from inspect_app.application import create_app
from inspect_app.entry.format import parse
from inspect_app.settings import settings_from
from inspect_app.store.database import db
from inspect_app.store.vault_disk import Disk
from tests.office import CHEAP
from tests.steady_clock import SteadyClock

SQLITE = {"full": sqlite3.SQLITE_FULL, "broken": sqlite3.SQLITE_IOERR, "busy": sqlite3.SQLITE_BUSY}
SYSTEM = {"full": errno.ENOSPC, "broken": errno.EIO}


class Died(BaseException):
    """The process is gone in the middle of a request; ``Server`` has opened again."""


class Strike(NamedTuple):
    """At step ``at`` of a request: ``die``, a ``full`` or ``broken`` disk, a ``busy`` database."""

    at: int
    how: str


class Held(NamedTuple):
    """What the store holds: receipts by digest and by ``(job, sha256)``; kept apart: digests, and the key that
    brought each ``(job, sha256)``."""

    log: dict[str, str]
    apart: set[str]
    photos: dict[tuple[str, str], str]
    photos_apart: dict[tuple[str, str], str]


class StruckDisk(Disk):
    """Tells each call before it is made; a write that fails has put half of its bytes on the disk."""

    def __init__(self, step: Any) -> None:
        self.step = step

    def write(self, file: Any, data: bytes) -> None:
        self.step("disk", lambda: file.write(data[: len(data) // 2]))
        super().write(file, data)


def _told_first(name: str) -> Any:
    def call(self: StruckDisk, *arguments: Any) -> Any:
        self.step("disk", lambda: None)
        return getattr(Disk, name)(self, *arguments)

    return call


for _name in ("create", "reopen", "sync", "link", "rename", "remove", "sync_folder"):
    setattr(StruckDisk, _name, _told_first(_name))


class Server:
    """``lives``: how often it was opened."""

    def __init__(self, folder: Path, clock: SteadyClock) -> None:
        self.clock, self.lives = clock, 0
        self._strike: Strike | None = None
        self._open(folder)

    def _open(self, folder: Path) -> None:
        self.folder, self.lives, self._steps = folder, self.lives + 1, 0
        settings = settings_from({"SEAMWALK_DATA": str(folder), "SEAMWALK_DATABASE_URL": ""})
        self.app = create_app(settings, self.clock, lambda job: None, CHEAP)
        self.parts, desk = self.app.extensions["seamwalk"], self.app.extensions["photos"]
        desk.vault.disk = desk.uploads.disk = StruckDisk(self._step)
        with self.app.app_context():
            event.listen(db.engine, "before_cursor_execute", lambda *_: self._step("database", lambda: None))
            event.listen(db.engine, "commit", lambda _: self._step("database", lambda: None))

    def close(self) -> None:
        with self.app.app_context():
            db.engine.dispose()

    def die(self) -> None:
        """Between two requests, or at the end of one."""
        self._leave()
        self._begin_again()

    def _leave(self) -> None:
        self._left = self.folder.parent / f"life{self.lives + 1}"
        shutil.copytree(self.folder, self._left)

    def _begin_again(self) -> None:
        self.close()
        shutil.rmtree(self.folder)
        self._open(self._left)

    def _step(self, of: str, half: Any) -> None:
        strike, self._steps = self._strike, self._steps + 1
        if strike is None or self._steps - 1 != strike.at:
            return
        if strike.how == "die":
            half()
            self._leave()
            raise Died
        if of == "disk" and strike.how in SYSTEM:
            half()
            raise OSError(SYSTEM[strike.how], os.strerror(SYSTEM[strike.how]))
        if of == "database":
            reason = sqlite3.OperationalError(strike.how)
            reason.sqlite_errorcode = SQLITE[strike.how]
            raise OperationalError("a statement", None, reason)

    def ask(
        self, method: str, path: str, headers: dict[str, str], body: bytes = b"", strike: Strike | None = None,
        cut: int | None = None,
    ) -> Any:  # fmt: skip
        """The reply. ``cut``: so many bytes of the body arrive and no more. Raises ``Died``: with a strike that kills,
        at its step, or when all is done and the reply is on its way."""
        arrived = body if cut is None else body[:cut]
        self._strike, self._steps = strike, 0
        try:
            reply = self.app.test_client().open(
                path, method=method, headers=headers, input_stream=io.BytesIO(arrived), content_length=len(body)
            )
        except Died:
            self._strike = None
            self._begin_again()
            raise
        self._strike = None
        if strike is not None and strike.how == "die":
            self.die()
            raise Died
        return reply

    def held(self, jobs: tuple[str, ...]) -> Held:
        log, apart, photos, photos_apart = {}, set(), {}, {}
        with self.app.app_context():
            for job in jobs:
                log |= {parse(one.token).digest: one.receipt for one in self.parts.reading.job_entries(job)}
                apart |= {parse(token).digest for token in self.parts.quarantine.tokens(job)}
                for sha256 in self.parts.reading.photos(job):
                    photos[job, sha256] = str(self.parts.log.photo_receipt(job, sha256))
                for sha256 in self.parts.quarantine.photos(job):
                    photos_apart[job, sha256] = self.parts.quarantine.photo(job, sha256).kid
        return Held(log, apart, photos, photos_apart)
