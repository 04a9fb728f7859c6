"""Entries kept apart: visible, never dropped, never in a record until a person decides."""

from sqlalchemy import func, insert, select

from inspect_app.clock import Clock, spell
from inspect_app.entry.format import Entry
from inspect_app.store.tables import QuarantineRow
from inspect_app.store.transactions import Transactions

MOST = 1000  # entries of one key: enough for a month of work, too few to fill a disk


class Quarantine:
    """The entries of revoked keys."""

    def __init__(self, transactions: Transactions, clock: Clock) -> None:
        self.transactions, self.clock = transactions, clock

    def keep(self, entry: Entry, reason: str) -> bool:
        """Keep it once. False when its key has as many there as one key may have: it stays on the phone."""
        with self.transactions.writing() as session:
            if self.reason(entry.digest) is not None:
                return True
            asked = select(func.count()).select_from(QuarantineRow).where(QuarantineRow.kid == entry.kid)
            if (session.scalar(asked) or 0) >= MOST:
                return False
            session.execute(
                insert(QuarantineRow).values(
                    digest=entry.digest, job=entry.job, kid=entry.kid, reason=reason,
                    received_at=spell(self.clock()), token=entry.token,
                )
            )  # fmt: skip
            return True

    def reason(self, digest: str) -> str | None:
        """Why that entry is kept apart; None when it is not."""
        with self.transactions.reading() as session:
            return session.scalar(select(QuarantineRow.reason).where(QuarantineRow.digest == digest))

    def tokens(self, job: str) -> list[str]:
        """The entries kept apart that say they are of this job, in order of their digest."""
        asked = select(QuarantineRow.token).where(QuarantineRow.job == job).order_by(QuarantineRow.digest)
        with self.transactions.reading() as session:
            return list(session.scalars(asked))
