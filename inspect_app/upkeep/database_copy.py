"""Copy a whole database as it is at one moment, while a server goes on writing to it."""

import os
import sqlite3
from pathlib import Path

from alembic import command
from sqlalchemy import Connection, create_engine, insert, inspect, select
from sqlalchemy.pool import NullPool

from inspect_app.errors import BadInput, Conflict
from inspect_app.store.database import Table
from inspect_app.store.migrate import configured
from inspect_app.upkeep.schema import check_database
from inspect_app.upkeep.snapshot import read_only, snapshot, sqlite_file

ROWS = 500


def copy_to_file(url: str, target: Path) -> None:
    """A new SQLite file of all that is there. An embedded database is copied by SQLite's own online backup
    (https://www.sqlite.org/backup.html), page by page; a server's from one snapshot, table by table. Raises
    ``BadInput`` ``backup_schema`` for tables of another release."""
    with snapshot(url) as moment:
        for fault in check_database(moment):
            if fault.code.startswith("schema"):
                raise BadInput("backup_schema", "database", fault.facts["found"])
        file = sqlite_file(url)
        if file:
            _online(file, target)
        else:
            engine = create_engine(f"sqlite:///{target.as_posix()}", poolclass=NullPool)
            with engine.begin() as copy:
                _tables(moment.session.connection(), copy)
    descriptor = os.open(target, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


def copy_from_file(file: Path, url: str) -> None:
    """Put all of a SQLite file into an empty server's database, in one transaction. Raises ``Conflict``
    ``restore_database_full`` where there are tables."""
    source = create_engine("sqlite://", creator=lambda: read_only(file), poolclass=NullPool)
    target = create_engine(url, poolclass=NullPool)
    with source.connect() as old, target.begin() as new:
        require_empty(new)
        _tables(old, new)


def require_empty(connection: Connection) -> None:
    if inspect(connection).get_table_names():
        raise Conflict("restore_database_full", "SEAMWALK_DATABASE_URL", connection.engine.url.database)


def _online(file: Path, target: Path) -> None:
    source, copy = read_only(file), sqlite3.connect(target)
    try:
        source.backup(copy)  # in one step: all of one moment, and writers need not wait (WAL)
        copy.execute("PRAGMA journal_mode=DELETE")  # one file, to be carried anywhere
    finally:
        copy.close()
        source.close()


def _tables(old: Connection, new: Connection) -> None:
    command.upgrade(configured(new), "head")
    for table in Table.metadata.sorted_tables:
        rows = old.execution_options(yield_per=ROWS).execute(select(table))
        for part in rows.mappings().partitions(ROWS):
            new.execute(insert(table), [dict(row) for row in part])
