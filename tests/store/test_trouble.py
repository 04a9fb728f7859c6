"""A full or failing disk is told from a busy one, and from our own mistakes."""

import errno

import pytest
import sqlalchemy as sa
from sqlalchemy import event
from sqlalchemy.exc import OperationalError

from inspect_app.errors import StorageBusy, StorageFull
from inspect_app.store.database import db
from inspect_app.store.tables import PersonRow
from inspect_app.store.trouble import trouble

BIG = {"login": "a", "name": "n" * 200_000, "role": "foreman", "password": "x", "added_at": "now"}


def let_it_be_full(engine, spare=0):
    """From now on SQLite may add no page to its file, or ``spare``: what a full disk is to it."""

    def limit(connection):
        pages = connection.exec_driver_sql("PRAGMA page_count").scalar()
        connection.exec_driver_sql(f"PRAGMA max_page_count={pages + spare}")

    event.listen(engine, "begin", limit)
    return lambda: (event.remove(engine, "begin", limit), engine.dispose())


def test_a_full_database_is_a_full_disk_and_nothing_was_kept(office):
    with office.app.app_context():
        make_room = let_it_be_full(db.engine)
        with pytest.raises(OperationalError) as raised, office.parts.transactions.writing() as session:
            session.execute(sa.insert(PersonRow).values(id="1", **BIG))
        assert isinstance(trouble(raised.value), StorageFull)
        make_room()
        with office.parts.transactions.writing() as session:
            assert session.scalars(sa.select(PersonRow.id)).all() == []
            session.execute(sa.insert(PersonRow).values(id="1", **BIG))


@pytest.mark.parametrize(
    ("number", "code"),
    [(errno.ENOSPC, "storage_full"), (errno.EDQUOT, "storage_full"), (errno.EIO, "storage_failing")],
)
def test_the_system_saying_so_is_enough(number, code):
    known = trouble(OSError(number, "x"))
    assert isinstance(known, StorageFull) and known.code == code


def test_a_lock_that_another_process_holds_is_busy_not_full(office):
    other = office.again()
    with other.app.app_context(), other.parts.transactions.writing(), office.app.app_context():
        with office.parts.transactions.reading() as session:
            session.connection().exec_driver_sql("PRAGMA busy_timeout=10")
        with pytest.raises(OperationalError) as raised, office.parts.transactions.writing():
            pass
        assert isinstance(trouble(raised.value), StorageBusy)


def test_a_database_that_is_not_there_is_busy_not_our_mistake():
    engine = sa.create_engine("postgresql+psycopg://app@/none?host=/nonexistent")
    with pytest.raises(OperationalError) as raised:
        engine.connect()
    assert isinstance(trouble(raised.value), StorageBusy)


def test_our_own_mistakes_are_not_hidden(office):
    with (
        office.app.app_context(),
        pytest.raises(OperationalError) as raised,
        office.parts.transactions.reading() as session,
    ):
        session.execute(sa.text("SELECT * FROM no_such_table"))
    assert trouble(raised.value) is None
    assert trouble(KeyError("x")) is None
