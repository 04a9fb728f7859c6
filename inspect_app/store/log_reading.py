"""Read the log: by cursor for phones, by job for records and reports."""

from collections.abc import Collection
from typing import NamedTuple

from sqlalchemy import select

from inspect_app.store.tables import EntryRow, PhotoRow, StatementRow
from inspect_app.store.transactions import Transactions


class Received(NamedTuple):
    """An entry of the log: its server order, its token and the receipt given for it."""

    seq: int
    token: str
    receipt: str


class Holding(NamedTuple):
    """A photo held for a job: its size in bytes, the type that was declared, its receipt's order."""

    sha256: str
    size: int
    type: str
    seq: int


class LogReading:
    """The log as it stands."""

    def __init__(self, transactions: Transactions) -> None:
        self.transactions = transactions

    def entries_after(self, seq: int, jobs: Collection[str], limit: int) -> list[Received]:
        """At most ``limit`` entries of these jobs after ``seq``, in server order. A number once passed never
        gains an entry: what commits later has a greater one."""
        asked = (
            select(EntryRow.seq, EntryRow.token, StatementRow.jws)
            .join(StatementRow, StatementRow.seq == EntryRow.seq)
            .where(EntryRow.seq > seq, EntryRow.job.in_(jobs))
            .order_by(EntryRow.seq)
            .limit(limit)
        )
        with self.transactions.reading() as session:
            return [Received(*row) for row in session.execute(asked)]

    def job_entries(self, job: str, kind: str | None = None) -> list[Received]:
        """Every entry of the job (of one kind, if given), in server order."""
        asked = (
            select(EntryRow.seq, EntryRow.token, StatementRow.jws)
            .join(StatementRow, StatementRow.seq == EntryRow.seq)
            .where(EntryRow.job == job)
            .order_by(EntryRow.seq)
        )
        if kind is not None:
            asked = asked.where(EntryRow.kind == kind)
        with self.transactions.reading() as session:
            return [Received(*row) for row in session.execute(asked)]

    def job_after(self, job: str, seq: int) -> list[Received]:
        """Every entry of the job after ``seq``, in server order."""
        asked = (
            select(EntryRow.seq, EntryRow.token, StatementRow.jws)
            .join(StatementRow, StatementRow.seq == EntryRow.seq)
            .where(EntryRow.job == job, EntryRow.seq > seq)
            .order_by(EntryRow.seq)
        )
        with self.transactions.reading() as session:
            return [Received(*row) for row in session.execute(asked)]

    def receipts(self, job: str) -> list[str]:
        """The job's chain of receipts, in order."""
        asked = select(StatementRow.jws).where(StatementRow.job == job).order_by(StatementRow.n)
        with self.transactions.reading() as session:
            return list(session.scalars(asked))

    def statements(self, kinds: Collection[str]) -> list[str]:
        """Every statement of these kinds, in order."""
        asked = select(StatementRow.jws).where(StatementRow.kind.in_(kinds)).order_by(StatementRow.seq)
        with self.transactions.reading() as session:
            return list(session.scalars(asked))

    def photos(self, job: str) -> dict[str, Holding]:
        """The photos held for the job, by hash."""
        asked = select(PhotoRow.sha256, PhotoRow.size, PhotoRow.type, PhotoRow.seq).where(PhotoRow.job == job)
        with self.transactions.reading() as session:
            return {row.sha256: Holding(*row) for row in session.execute(asked.order_by(PhotoRow.sha256))}

    def jobs_with(self, kind: str) -> list[str]:
        """The jobs that have any entry of that kind, oldest first: their ids are UUIDv7."""
        with self.transactions.reading() as session:
            return sorted(session.scalars(select(EntryRow.job).where(EntryRow.kind == kind).distinct()))

    def has_kind(self, job: str, kind: str) -> bool:
        """Whether the job has any entry of that kind."""
        asked = select(EntryRow.seq).where(EntryRow.job == job, EntryRow.kind == kind).limit(1)
        with self.transactions.reading() as session:
            return session.scalar(asked) is not None
