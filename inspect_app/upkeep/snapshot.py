"""One moment of a database, read without changing anything, while a server may be at work on it."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from urllib.parse import quote

from sqlalchemy import Engine, create_engine, make_url
from sqlalchemy.orm import Session
from sqlalchemy.pool import NullPool

from inspect_app.errors import BadInput
from inspect_app.store.transactions import Transactions


class Snapshot(Transactions):
    """Everything that reads by ``Transactions`` can read this one moment; nothing can write."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session

    @contextmanager
    def reading(self) -> Iterator[Session]:
        yield self.session

    @contextmanager
    def writing(self) -> Iterator[Session]:
        raise RuntimeError("a snapshot is only read")
        yield


@contextmanager
def snapshot(url: str) -> Iterator[Snapshot]:
    """The database at ``url`` (SQLAlchemy's) as it is now. Raises ``BadInput`` ``no_database`` where there is none,
    what the driver raises when it does not answer."""
    file = sqlite_file(url)
    engine = _sqlite(file) if file else create_engine(url, poolclass=NullPool)
    logs = [Path(f"{file}{end}") for end in ("-wal", "-shm")] if file else []
    tidy = file is not None and not any(log.exists() for log in logs)
    try:
        with engine.connect() as connection:
            # SQLite takes its snapshot with the first read after BEGIN; PostgreSQL likewise, at this level.
            connection.exec_driver_sql(
                "BEGIN" if file else "SET TRANSACTION ISOLATION LEVEL REPEATABLE READ, READ ONLY"
            )
            with Session(bind=connection) as session:
                yield Snapshot(session)
    finally:
        engine.dispose()
        if tidy and file:
            # A reader leaves the log's two empty files behind; a last ordinary connection takes them away.
            last = sqlite3.connect(file)
            with suppress(sqlite3.DatabaseError):  # what is damaged has been told of
                last.execute("PRAGMA schema_version")
            last.close()


def sqlite_file(url: str) -> Path | None:
    """The file of an embedded database; None for a server's. Raises ``BadInput`` where the file is not there."""
    parsed = make_url(url)
    if not parsed.drivername.startswith("sqlite"):
        return None
    file = Path(parsed.database or "")
    if not file.is_file():
        raise BadInput("no_database", "SEAMWALK_DATA", str(file))
    return file


def read_only(file: Path) -> sqlite3.Connection:
    """A connection that cannot write: SQLite's own rule."""
    connection = sqlite3.connect(f"file:{quote(str(file.resolve()))}?mode=ro", uri=True, timeout=10)
    connection.isolation_level = None
    return connection


def _sqlite(file: Path) -> Engine:
    return create_engine("sqlite://", creator=lambda: read_only(file), poolclass=NullPool)
