"""A database as every office begins: empty tables. Migrated once, and then copied."""

import tempfile
from functools import cache
from pathlib import Path

import sqlalchemy as sa
from alembic import command

from inspect_app.settings import sqlite_in
from inspect_app.store.migrate import configured
from inspect_app.store.transactions import WRITES, prepare


def begun(data: Path) -> None:
    """See that the data folder has an embedded database, already migrated, where it had none."""
    data.mkdir(mode=0o700, parents=True, exist_ok=True)
    if not (data / "seamwalk.sqlite3").exists():
        (data / "seamwalk.sqlite3").write_bytes(_empty())


def migrate_at(url: str) -> None:
    """As the first start does it."""
    engine = sa.create_engine(url)
    prepare(engine)
    with engine.execution_options(**WRITES).begin() as connection:
        command.upgrade(configured(connection), "head")
    engine.dispose()


@cache
def _empty() -> bytes:
    with tempfile.TemporaryDirectory() as folder:
        migrate_at(sqlite_in(Path(folder)))
        return (Path(folder) / "seamwalk.sqlite3").read_bytes()
