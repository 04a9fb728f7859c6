"""Sign the server's statements in their one sequence, and keep them.

A server that was set back to a backup cannot know which numbers it gave after that backup. Its sequence therefore goes
on at the time of the restoration in milliseconds since 1970: no number given before can be as great while fewer than a
thousand statements a second are signed. So no number is given twice, whoever asks "what came after" misses nothing,
and every receipt from then on names the restoration.
"""

from collections.abc import Callable, Mapping
from typing import NamedTuple

from sqlalchemy import func, insert, select

from inspect_app.clock import Clock, spell
from inspect_app.entry.statement import format_statement, parse_statement, restoration
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
    """The sequence, from 1, with no gap but before a restoration; numbers are given under the store's write lock."""

    def __init__(self, transactions: Transactions, key: ServerKey, clock: Clock) -> None:
        self.transactions, self.key, self.clock = transactions, key, clock
        self._restorations: list[str] | None = None

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
            payload = dict(make(seq, spell(self.clock()), n, prev))
            if said := self.restorations():
                payload["restored"] = parse_statement(said[-1]).digest
            return self._keep(seq, payload, job, n)

    def restore(self) -> Issued:
        """Say that this store was set back to a backup: to be called once, before anything else is written."""
        with self.transactions.writing() as session:
            last, now = self.last(), self.clock()
            head = session.scalar(select(StatementRow.digest).where(StatementRow.seq == last))
            seq = max(last + 1, int(now.timestamp() * 1000))
            self._restorations = None
            return self._keep(seq, restoration(seq, spell(now), last, head), None, None)

    def restorations(self) -> list[str]:
        """The restorations of this store (JWS), oldest first. Read once: a store is set back while no server runs on
        it."""
        if self._restorations is None:
            asked = select(StatementRow.jws).where(StatementRow.kind == "restoration").order_by(StatementRow.seq)
            with self.transactions.reading() as session:
                self._restorations = list(session.scalars(asked))
        return self._restorations

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
