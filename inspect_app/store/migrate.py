"""Bring the database to the schema of this release, whatever release it was made by.

A migration is never changed once released; there is no way down, because going down loses what was recorded.
"""

from pathlib import Path

from alembic import command
from alembic.autogenerate import compare_metadata
from alembic.config import Config
from alembic.migration import MigrationContext
from sqlalchemy import Connection

from inspect_app.store.database import Table
from inspect_app.store.transactions import Transactions

FOLDER = Path(__file__).parent / "migrations"


def configured(connection: Connection) -> Config:
    """Alembic's settings for one connection."""
    config = Config()
    config.set_main_option("script_location", str(FOLDER))
    config.attributes["connection"] = connection
    return config


def migrate(transactions: Transactions) -> None:
    """Run what has not been run, in one transaction; of several starting servers the first does it."""
    with transactions.writing() as session:
        command.upgrade(configured(session.connection()), "head")


def differences(connection: Connection) -> list[object]:
    """Where the database and the tables of this release disagree; empty when they agree."""
    return list(compare_metadata(MigrationContext.configure(connection), Table.metadata))
