"""Every call that a server makes of its disk and its database, counted, so that each can fail once in each way.

Files: everything Python opens, links, renames, makes or removes below the data folder (PEP 578 tells of it before it
happens), and the calls of ``Disk``, which also syncs and writes. Database: each statement and each commit.
"""

import errno
import os
import sqlite3
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from sqlalchemy import event

from inspect_app.store.database import db
from inspect_app.store.vault_disk import Disk

# What is done before it is reported as failed: the worst of answers, since nobody knows.
AFTER = ("disk.sync", "disk.rename", "disk.link", "disk.sync_folder", "db.commit")
WAYS = {
    "file": ("full", "broken"),
    "disk": ("full", "broken", "after"),
    "db": ("full", "broken", "busy", "after"),
}
SQLITE = {"full": sqlite3.SQLITE_FULL, "broken": sqlite3.SQLITE_IOERR, "busy": sqlite3.SQLITE_BUSY}
FILES = {"open", "os.rename", "os.link", "os.remove", "os.mkdir", "os.chmod", "os.listdir", "os.scandir", "os.truncate"}


class Calls:
    """``seen``: the calls so far; the ``at``-th fails in one ``way``."""

    def __init__(self, at: int = -1, way: str = "") -> None:
        self.at, self.way, self.seen = at, way, list[str]()

    def before(self, name: str) -> bool:
        """Fail here, or say whether to fail after it was done."""
        here = len(self.seen) == self.at
        self.seen.append(name)
        if here and self.way == "after":
            return True
        if here:
            self.strike(name)
        return False

    def strike(self, name: str) -> None:
        if name.startswith("db."):
            error = sqlite3.OperationalError(f"planted: {self.way}")
            error.sqlite_errorcode = SQLITE.get(self.way, sqlite3.SQLITE_IOERR)  # type: ignore[misc]
            raise error
        number = errno.ENOSPC if self.way == "full" else errno.EIO
        raise OSError(number, os.strerror(number))


def ways_of(name: str) -> tuple[str, ...]:
    family = name.split(".")[0] if name.startswith(("disk", "db")) else "file"
    return tuple(way for way in WAYS[family] if way != "after" or name in AFTER)


class CountedDisk(Disk):
    def __init__(self, calls: Calls) -> None:
        self.calls = calls

    def write(self, file: Any, data: bytes) -> None:
        try:
            self.calls.before("disk.write")
        except OSError:
            file.write(data[: len(data) // 2])  # as real disks do: a part of it is there
            raise
        super().write(file, data)


def _counted(name: str) -> Any:
    def operation(self: CountedDisk, *arguments: Any) -> Any:
        after = self.calls.before(f"disk.{name}")
        result = getattr(Disk, name)(self, *arguments)
        if after:
            self.calls.strike(f"disk.{name}")
        return result

    return operation


for _name in ("create", "reopen", "sync", "cut", "link", "rename", "remove", "sync_folder"):
    setattr(CountedDisk, _name, _counted(_name))

_watching: list[tuple[Calls, str]] = []


def _audit(name: str, arguments: tuple[Any, ...]) -> None:
    if not _watching or name not in FILES:
        return
    calls, folder = _watching[-1]
    path = arguments[0] if arguments else None
    if isinstance(path, str | os.PathLike) and str(path).startswith(folder) and ".sqlite3" not in str(path):
        calls.before(name)


_hooked: list[bool] = []


@contextmanager
def counted(office: Any, calls: Calls) -> Iterator[Calls]:
    """Within the block every call of this office's server is counted, and one may fail."""
    if not _hooked:
        sys.addaudithook(_audit)
        _hooked.append(True)
    desk = office.app.extensions["photos"]
    desk.vault.disk = desk.uploads.disk = CountedDisk(calls)
    with office.app.app_context():
        engine = db.engine
    dialect, commit = engine.dialect, engine.dialect.do_commit

    def execute(*_: Any) -> None:
        calls.before("db.execute")

    def committed(connection: Any) -> None:
        after = calls.before("db.commit")
        commit(connection)
        if after:
            calls.strike("db.commit")

    event.listen(engine, "do_execute", execute)
    event.listen(engine, "do_execute_no_params", execute)
    dialect.do_commit = committed
    _watching.append((calls, f"{Path(office.settings.data)}{os.sep}"))
    try:
        yield calls
    finally:
        _watching.pop()
        event.remove(engine, "do_execute", execute)
        event.remove(engine, "do_execute_no_params", execute)
        dialect.do_commit = commit
        desk.vault.disk = desk.uploads.disk = Disk()
        engine.dispose()
