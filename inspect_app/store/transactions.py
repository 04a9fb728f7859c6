"""Transactions: who may write, in which order, and how durably.

All changes go through ``writing``: one writer at a time in this process (a lock held to the commit), and in
all processes (``BEGIN IMMEDIATE`` on SQLite, a transaction-long advisory lock on PostgreSQL). So the order in
which sequence numbers are given is the order in which they become visible, and a reader that follows the
sequence never misses a late commit. Every other transaction is read-only by the database's own rule.

SQLite: WAL, ``synchronous=FULL`` (a receipt is a promise of durability; NORMAL may lose committed work at a
power cut: https://www.sqlite.org/pragma.html#pragma_synchronous), 10 s of patience with other processes.
"""

import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

from sqlalchemy import Connection, Engine, event
from sqlalchemy.exc import DBAPIError
from sqlalchemy.orm import Session

from inspect_app.errors import StorageBusy
from inspect_app.store.database import db
from inspect_app.store.trouble import trouble

PATIENCE = 10_000  # milliseconds that SQLite waits for another process's lock
ADVISORY_LOCK = 7_326_692_566_143  # any number that nothing else in the same database locks
WRITES = {"seamwalk_writes": True}


class Transactions:
    """The store's two kinds of transaction. Both need an app context; nested uses join the outermost."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._mine = threading.local()

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """The one way to change the store. Leaving the outermost block commits; an exception rolls
        everything back. Raises what the driver raises (``store.trouble`` tells a full disk from a busy
        one)."""
        if self._writes:
            yield db.session()
            return
        if getattr(self._mine, "reads", 0):
            raise RuntimeError("a reader may not begin to write: its snapshot would be out of date")
        with self._lock:
            after = self._mine.after = []
            try:
                self._begin()
                yield db.session()
                db.session.commit()
            except BaseException:
                db.session.rollback()
                raise
            finally:
                self._mine.after = None
        for call in after:
            call()

    @staticmethod
    def _begin() -> None:
        """Nothing is done yet, so whatever was busy may be asked once more."""
        db.session.rollback()
        try:
            db.session.connection(execution_options=WRITES)
        except DBAPIError as error:
            db.session.rollback()
            if not isinstance(trouble(error), StorageBusy):
                raise
            db.session.connection(execution_options=WRITES)

    @contextmanager
    def reading(self) -> Iterator[Session]:
        """One snapshot of the store, as fresh as it can be; ended with the outermost block. Inside
        ``writing`` it is the writer's own view."""
        if self._writes:
            yield db.session()
            return
        self._mine.reads = getattr(self._mine, "reads", 0) + 1
        try:
            yield db.session()
        finally:
            self._mine.reads -= 1
            if not self._mine.reads:
                db.session.rollback()

    def after_commit(self, call: Callable[[], None]) -> None:
        """Have ``call`` made once what is being written is durable; never when it is rolled back."""
        if not self._writes:
            raise RuntimeError("nothing is being written")
        self._mine.after.append(call)

    @property
    def _writes(self) -> bool:
        return getattr(self._mine, "after", None) is not None


def prepare(engine: Engine) -> None:
    """Give an engine the rules above. Connects to nothing."""
    if engine.dialect.name == "sqlite":
        event.listen(engine, "connect", _tune_sqlite)
        event.listen(engine, "begin", _begin_sqlite)
    else:
        event.listen(engine, "begin", _begin_postgresql)


def _tune_sqlite(connection: Any, _record: object) -> None:
    connection.isolation_level = None  # the driver must not begin by itself: it would begin deferred
    for setting in (f"busy_timeout={PATIENCE}", "journal_mode=WAL", "synchronous=FULL", "foreign_keys=ON"):
        connection.execute(f"PRAGMA {setting}")


def _begin_sqlite(connection: Connection) -> None:
    writes = connection.get_execution_options().get("seamwalk_writes", False)
    connection.exec_driver_sql(f"PRAGMA query_only={'OFF' if writes else 'ON'}")
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")


def _begin_postgresql(connection: Connection) -> None:
    if connection.get_execution_options().get("seamwalk_writes", False):
        connection.exec_driver_sql(f"SELECT pg_advisory_xact_lock({ADVISORY_LOCK})")
    else:
        # REPEATABLE READ: else each question sees another moment, and a report encloses a receipt without its entry.
        connection.exec_driver_sql("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ, READ ONLY")
