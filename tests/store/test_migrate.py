"""Migrations make exactly the tables that the code declares, and making them again does nothing."""

import uuid

import pytest
import sqlalchemy as sa
from alembic import command

from inspect_app.settings import sqlite_in
from inspect_app.store.database import Table, db
from inspect_app.store.migrate import configured, differences, migrate
from tests.conftest import POSTGRESQL
from tests.office import Office
from tests.postgresql import new_database


@pytest.fixture(params=["sqlite", POSTGRESQL])
def any_office(request, tmp_path):
    """As the fixture of this name elsewhere, but for tables of its own making."""
    url = ""
    if request.param == "postgresql":
        url = new_database(request.getfixturevalue("postgresql"), f"first_{uuid.uuid4().hex}")
    office = Office(tmp_path / "data", url, first=True)
    yield office
    with office.app.app_context():
        db.engine.dispose()


def test_migrations_and_tables_agree(any_office):
    with any_office.app.app_context(), any_office.parts.transactions.reading() as session:
        assert differences(session.connection()) == []


def test_a_difference_would_be_seen(any_office):
    with any_office.app.app_context(), any_office.parts.transactions.writing() as session:
        session.execute(sa.text("ALTER TABLE manifest ADD COLUMN unplanned INTEGER"))
        assert differences(session.connection()) != []


def test_every_declared_table_is_there_after_the_first_start(any_office):
    with any_office.app.app_context(), any_office.parts.transactions.reading() as session:
        assert set(Table.metadata.tables) <= set(sa.inspect(session.connection()).get_table_names())


def test_starting_again_changes_nothing(any_office):
    job, _chief = any_office.job()
    again = any_office.again()
    with again.app.app_context():
        migrate(again.parts.transactions)
        assert len(again.parts.reading.job_entries(job)) == 1
        assert again.parts.server_key.kid == any_office.parts.server_key.kid
        db.engine.dispose()


def test_a_database_of_the_first_release_is_brought_up_and_keeps_what_it_holds(tmp_path):
    engine = sa.create_engine(sqlite_in(tmp_path))
    with engine.begin() as connection:
        command.upgrade(configured(connection), "0001")
        assert "ticket" not in sa.inspect(connection).get_table_names()
        assert differences(connection) != []
        connection.execute(sa.text("INSERT INTO person VALUES ('p', 'ada', 'Ada (invented)', 'foreman', 'x', '')"))
        connection.execute(sa.text("INSERT INTO membership VALUES ('j', 'p', '')"))
        connection.execute(sa.text("INSERT INTO statement VALUES (1, 'revocation', NULL, NULL, 'd', 'signed')"))
    with engine.begin() as connection:
        command.upgrade(configured(connection), "head")
        assert differences(connection) == []
        assert connection.execute(sa.text("SELECT login, job FROM person JOIN membership ON person = id")).all() == [
            ("ada", "j")
        ]
        assert connection.scalar(sa.text("SELECT jws FROM statement")) == "signed"
        connection.execute(sa.text("INSERT INTO ticket VALUES ('j', 'k', 'work', 0, 1)"))
    engine.dispose()
