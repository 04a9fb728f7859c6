"""Who may write, what a failure takes back, and how durable a commit is."""

import pytest
import sqlalchemy as sa
from sqlalchemy.exc import DBAPIError

from inspect_app.store.tables import PersonRow
from tests.store.each_call import Calls, counted

ROW = {"login": "a", "name": "a", "role": "foreman", "password": "x", "added_at": "now"}


def count(session):
    return session.scalar(sa.select(sa.func.count()).select_from(PersonRow))


def test_a_read_transaction_cannot_write(any_office):
    with any_office.app.app_context():
        with pytest.raises(DBAPIError), any_office.parts.transactions.reading() as session:
            session.execute(sa.insert(PersonRow).values(id="1", **ROW))
        with any_office.parts.transactions.reading() as session:
            assert count(session) == 0


def test_an_exception_takes_everything_back_and_makes_no_later_call(any_office):
    called, transactions = [], any_office.parts.transactions
    with any_office.app.app_context():
        with pytest.raises(KeyError), transactions.writing() as session:
            session.execute(sa.insert(PersonRow).values(id="1", **ROW))
            transactions.after_commit(lambda: called.append(1))
            raise KeyError
        with transactions.reading() as session:
            assert count(session) == 0
        assert called == []


def test_calls_after_commit_come_after_the_outermost_block(any_office):
    seen, transactions = [], any_office.parts.transactions
    with any_office.app.app_context():
        with transactions.writing():
            with transactions.writing() as session:
                session.execute(sa.insert(PersonRow).values(id="1", **ROW))
                transactions.after_commit(lambda: seen.append("called"))
            seen.append("inner left")
        assert seen == ["inner left", "called"]


def test_a_call_after_commit_sees_what_was_committed_and_may_write_itself(any_office):
    transactions, counts = any_office.parts.transactions, []

    def look():
        with transactions.writing() as session:
            counts.append(count(session))

    with any_office.app.app_context(), transactions.writing() as session:
        session.execute(sa.insert(PersonRow).values(id="1", **ROW))
        transactions.after_commit(look)
    assert counts == [1]


def test_beginning_to_write_while_reading_is_our_mistake(any_office):
    transactions = any_office.parts.transactions
    with (
        any_office.app.app_context(),
        transactions.reading(),
        pytest.raises(RuntimeError, match="out of date"),
        transactions.writing(),
    ):
        pass


def test_each_read_sees_what_others_have_committed_since(any_office):
    other = any_office.again()
    with any_office.app.app_context():
        with any_office.parts.transactions.reading() as session:
            assert count(session) == 0
        with other.app.app_context(), other.parts.transactions.writing() as session:
            session.execute(sa.insert(PersonRow).values(id="1", **ROW))
        with any_office.parts.transactions.reading() as session:
            assert count(session) == 1


def test_sqlite_commits_reach_the_disk_before_they_are_answered(office):
    """2 is FULL: https://www.sqlite.org/pragma.html#pragma_synchronous."""
    with office.app.app_context(), office.parts.transactions.writing() as session:
        assert session.scalar(sa.text("PRAGMA synchronous")) == 2
        assert session.scalar(sa.text("PRAGMA journal_mode")) == "wal"
        assert session.scalar(sa.text("PRAGMA foreign_keys")) == 1


def test_one_reading_sees_one_moment_whatever_is_committed_meanwhile(any_office):
    other = any_office.again()
    with any_office.app.app_context(), any_office.parts.transactions.reading() as session:
        before = count(session)
        with other.app.app_context(), other.parts.transactions.writing() as writer:
            writer.execute(sa.insert(PersonRow).values(id="1", **ROW))
        session.expire_all()
        assert count(session) == before
    with any_office.app.app_context(), any_office.parts.transactions.reading() as session:
        assert count(session) == before + 1


@pytest.mark.parametrize("at", [0, 1])
def test_a_database_that_is_busy_as_writing_begins_is_asked_once_more(office, at):
    with counted(office, Calls(at, "busy")) as calls, office.app.app_context():
        with office.parts.transactions.writing() as session:
            session.execute(sa.insert(PersonRow).values(id="1", **ROW))
        assert calls.seen.count("db.execute") == at + 1 + 3
        with office.parts.transactions.reading() as session:
            assert count(session) == 1
