"""Random tickets for draws: given to a key before anybody knows what will be drawn by them.

A lot is named by its ticket and drawn by its bytes (``rules/draw.py``), so no time, name or crew steers it. A key
holds a few tickets ahead, for days without signal, and never more: whoever could read a hundred of them off their own
phone could look for the one that suits them. A ticket left out shows, since the numbers have no gap.
"""

from collections.abc import Callable
from datetime import datetime, timedelta

from sqlalchemy import func, insert, select

from inspect_app.clock import Clock
from inspect_app.entry.base64url import encode
from inspect_app.entry.statement import parse_statement, ticket
from inspect_app.errors import BadInput, TooOften
from inspect_app.store.statements import Statements
from inspect_app.store.tables import EntryRow, StatementRow, TicketRow
from inspect_app.store.transactions import Transactions

AHEAD = 12  # draws: a fortnight of one lot a day with no signal
AUDITS = 20  # tickets of the audit series in a day, for one key and job: they are asked for one by one
FORGOTTEN = 1000  # tickets of one series that a restoration may have undone
DAY = timedelta(days=1)


class Tickets:
    """``entropy(n)`` gives n random bytes."""

    def __init__(
        self, transactions: Transactions, statements: Statements, clock: Clock, entropy: Callable[[int], bytes]
    ) -> None:
        self.transactions, self.statements, self.clock, self.entropy = transactions, statements, clock, entropy

    def give(self, job: str, kid: str, series: str, have: int) -> list[str]:
        """The tickets (JWS) after number ``have`` (−1: none) that may still be used, in order, after issuing what is
        wanted: in the series ``work`` until ``AHEAD`` follow the highest number used in an accepted lot, in ``audit``
        one where none is left after ``have``. Asked again, the same tickets. Raises ``BadInput`` for a number that was
        never given, ``TooOften`` beyond ``AUDITS`` in a day."""
        with self.transactions.writing():
            given = self._given(job, kid, series)
            if have >= given and not (self.statements.restorations() and have - given < FORGOTTEN):
                raise BadInput("ticket_unknown", "have", have)
            given = max(given, have + 1)  # a server that was set back has forgotten tickets that the phone still holds
            used = self._highest_used(job, kid, series, given)
            wanted = used + 1 + AHEAD if series == "work" else max(have, used) + 2
            if series == "audit" and wanted > given:
                self._not_too_often(job, kid)
            for n in range(given, wanted):
                self._issue(job, kid, series, n)
            return self._from(job, kid, series, max(have, used) + 1)

    def _given(self, job: str, kid: str, series: str) -> int:
        asked = select(func.max(TicketRow.n) + 1).where(
            TicketRow.job == job, TicketRow.kid == kid, TicketRow.series == series
        )
        with self.transactions.reading() as session:
            return session.scalar(asked) or 0

    def _highest_used(self, job: str, kid: str, series: str, given: int) -> int:
        """−1 before the first. A lot under a number that was never given uses none: else one entry could have the
        server issue without end."""
        start = f"{kid}/{series}/"
        asked = select(EntryRow.subject).where(
            EntryRow.job == job, EntryRow.kind == "lot", EntryRow.kid == kid
        )
        with self.transactions.reading() as session:
            named = [subject for subject in session.scalars(asked) if subject.startswith(start)]
        numbers = [int(subject.removeprefix(start)) for subject in named]
        return max((n for n in numbers if n < given), default=-1)

    def _not_too_often(self, job: str, kid: str) -> None:
        last = self._from(job, kid, "audit", 0)[-AUDITS:]  # whatever their numbers: a restoration may leave some out
        if len(last) < AUDITS:
            return
        oldest = parse_statement(last[0])
        left = datetime.fromisoformat(str(oldest.payload["at"])) + DAY - self.clock()
        if left > timedelta(0):
            raise TooOften("too_many_tickets", "series", int(left.total_seconds()) + 1)

    def _issue(self, job: str, kid: str, series: str, n: int) -> None:
        random = encode(self.entropy(32))
        issued = self.statements.issue(lambda seq, at: ticket(seq, at, job, kid, series, n, random))
        with self.transactions.writing() as session:
            session.execute(
                insert(TicketRow).values(job=job, kid=kid, series=series, n=n, seq=issued.seq)
            )

    def _from(self, job: str, kid: str, series: str, n: int) -> list[str]:
        asked = (
            select(StatementRow.jws)
            .join(TicketRow, TicketRow.seq == StatementRow.seq)
            .where(TicketRow.job == job, TicketRow.kid == kid, TicketRow.series == series, TicketRow.n >= n)
            .order_by(TicketRow.n)
        )
        with self.transactions.reading() as session:
            return list(session.scalars(asked))
