"""Sign the server's statements in their one sequence, and keep them."""

from collections.abc import Callable, Mapping
from typing import NamedTuple

from sqlalchemy import func, insert, select

from inspect_app.clock import Clock, spell
from inspect_app.entry.statement import format_statement, parse_statement
from inspect_app.store.server_key import ServerKey
from inspect_app.store.tables import StatementRow
from inspect_app.store.transactions import Transactions

Make = Callable[[int, str], Mapping[str, object]]
MakeReceipt = Callable[[int, str, int, str | None], Mapping[str, object]]


class Issued(NamedTuple):
    """A statement just kept: its place and its token."""

    seq: int
    jws: str


class Statements:
    """The sequence, from 1 without a gap; numbers are given under the store's write lock."""

    def __init__(self, transactions: Transactions, key: ServerKey, clock: Clock) -> None:
        self.transactions, self.key, self.clock = transactions, key, clock

    def issue(self, make: Make) -> Issued:
        """Sign and keep ``make(seq, at)``, a payload of ``entry.statement``."""
        with self.transactions.writing():
            seq = self.last() + 1
            return self._keep(seq, make(seq, spell(self.clock())), None, None)

    def receipt(self, job: str, make: MakeReceipt) -> Issued:
        """Sign and keep ``make(seq, at, n, prev)``: the next receipt of the job's chain."""
        with self.transactions.writing() as session:
            seq = self.last() + 1
            before = session.execute(
                select(StatementRow.n, StatementRow.digest)
                .where(StatementRow.job == job)
                .order_by(StatementRow.n.desc())
                .limit(1)
            ).first()
            n, prev = (before.n + 1, before.digest) if before else (0, None)
            return self._keep(seq, make(seq, spell(self.clock()), n, prev), job, n)

    def last(self) -> int:
        """The greatest number given; 0 before the first."""
        with self.transactions.reading() as session:
            return session.scalar(select(func.max(StatementRow.seq))) or 0

    def at(self, seq: int) -> str:
        """The statement with that number. ``RuntimeError`` when there is none."""
        with self.transactions.reading() as session:
            jws = session.scalar(select(StatementRow.jws).where(StatementRow.seq == seq))
        if jws is None:
            raise RuntimeError(f"no statement {seq}")
        return jws

    def _keep(self, seq: int, payload: Mapping[str, object], job: str | None, n: int | None) -> Issued:
        jws = format_statement(payload, self.key.private)
        statement = parse_statement(jws)
        with self.transactions.writing() as session:
            session.execute(
                insert(StatementRow).values(
                    seq=seq, kind=statement.kind, job=job, n=n, digest=statement.digest, jws=jws
                )
            )
        return Issued(seq, jws)
