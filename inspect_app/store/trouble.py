"""Tell a full or failing disk, and a busy or absent database, from our own mistakes."""

import errno
import sqlite3

from sqlalchemy.exc import DBAPIError

from inspect_app.errors import Problem, StorageBusy, StorageFull

FULL = (errno.ENOSPC, errno.EDQUOT, errno.EFBIG)
FAILING = (errno.EIO, errno.EROFS)


def trouble(error: BaseException) -> Problem | None:
    """The ``StorageFull`` or ``StorageBusy`` behind an error of the system or the driver, else None."""
    if isinstance(error, OSError) and error.errno in FULL:
        return StorageFull("storage_full", "disk")
    if isinstance(error, OSError) and error.errno in FAILING:
        return StorageFull("storage_failing", "disk", error.strerror)
    if not isinstance(error, DBAPIError) or error.orig is None:
        return None
    return _sqlite(error.orig) if isinstance(error.orig, sqlite3.Error) else _postgresql(error.orig)


def _sqlite(error: sqlite3.Error) -> Problem | None:
    # The low byte is the primary code: https://www.sqlite.org/rescode.html
    code = (getattr(error, "sqlite_errorcode", None) or 0) & 0xFF
    if code == sqlite3.SQLITE_FULL:
        return StorageFull("storage_full", "disk")
    if code in (sqlite3.SQLITE_IOERR, sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_NOTADB):
        return StorageFull("storage_failing", "disk", str(error))
    if code in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED):
        return StorageBusy("storage_busy", "database")
    return None


def _postgresql(error: BaseException) -> Problem | None:
    # https://www.postgresql.org/docs/15/errcodes-appendix.html
    state = getattr(error, "sqlstate", None)
    if state == "53100":
        return StorageFull("storage_full", "disk")
    if state in ("58030", "XX001", "XX002"):
        return StorageFull("storage_failing", "disk", state)
    if state is None or state[:2] in ("08", "53", "55", "57", "40"):
        return StorageBusy("storage_busy", "database")
    return None
