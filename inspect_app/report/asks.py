"""The reports that people asked for: who, what, and how far each is. They outlive the server that was asked."""

import time
from collections.abc import Callable
from datetime import timedelta
from typing import NamedTuple

from sqlalchemy import delete, func, insert, select, update
from sqlalchemy.orm import Session

from inspect_app.clock import Clock, spell
from inspect_app.report.asked import Asked, read_asked
from inspect_app.report.progress import Tell
from inspect_app.store.tables import ReportAskRow
from inspect_app.store.transactions import Transactions

MOST = 8  # of one job that wait or are made: more is a finger that did not wait
MOST_OF_ALL = 64
RECENT = 100  # asks of a job that are looked through
KEPT = timedelta(days=2)  # what became of it can be read that long
PENDING = ("waiting", "making")
BETWEEN = 0.5  # seconds between two notes of how far it is: each is a commit
MOST_ROWS = 2**63 - 1


class Ask(NamedTuple):
    """``state``: ``waiting``, ``making``, ``ready``, ``same`` (nothing had changed since ``number``), ``failed``;
    ``stage`` as in ``progress``, ``share`` 0 to 1; ``trouble``: a code of the words, where it failed."""

    id: int
    job: str
    person: str
    asked: Asked
    state: str
    stage: str
    share: float
    number: int | None
    trouble: str | None
    asked_at: str


class Asks:
    """All calls need an app context."""

    def __init__(self, transactions: Transactions, clock: Clock) -> None:
        self.transactions, self.clock = transactions, clock

    def add(self, job: str, person: str, asked: Asked) -> Ask | None:
        """Note what is asked for; what waits already or is being made is not asked twice. None where too much waits."""
        with self.transactions.writing() as session:
            session.execute(delete(ReportAskRow).where(
                ReportAskRow.state.not_in(PENDING), ReportAskRow.asked_at < spell(self.clock() - KEPT)))  # fmt: skip
            same = select(ReportAskRow).where(ReportAskRow.job == job, ReportAskRow.asked == asked.text)
            row = session.scalar(same.where(ReportAskRow.state.in_(PENDING)))
            if row is None and not _room(session, job):
                return None
            if row is None:
                row = session.scalars(insert(ReportAskRow).returning(ReportAskRow), {
                    "job": job, "person": person, "asked": asked.text, "state": "waiting", "stage": "waiting",
                    "share": 0, "asked_at": spell(self.clock())}).one()  # fmt: skip
            return _ask(row)

    def find(self, job: str, identity: int) -> Ask | None:
        """One of a job's."""
        if identity > MOST_ROWS:  # a number that no column holds is nobody's
            return None
        with self.transactions.reading() as session:
            row = session.get(ReportAskRow, identity)
            return _ask(row) if row is not None and row.job == job else None

    def of(self, job: str) -> list[Ask]:
        """What waits, is made or failed and was not asked again, newest first; what is ready is on the shelf."""
        told: dict[str, Ask] = {}
        newest = select(ReportAskRow).where(ReportAskRow.job == job).order_by(ReportAskRow.id.desc()).limit(RECENT)
        with self.transactions.reading() as session:
            for row in session.scalars(newest):
                told.setdefault(row.asked, _ask(row))
        return [one for one in told.values() if one.state in (*PENDING, "failed")]

    def begin(self, identity: int) -> Ask | None:
        """Take one that waits to make it; None where somebody else has, or it is gone."""
        with self.transactions.writing() as session:
            taken = update(ReportAskRow).where(ReportAskRow.id == identity, ReportAskRow.state == "waiting")
            row = session.scalar(taken.values(state="making", stage="gather").returning(ReportAskRow))
            return None if row is None else _ask(row)

    def teller(self, identity: int, now: Callable[[], float] = time.monotonic) -> Tell:
        """Notes how far it is: each stage when it begins, and within one at most every half second. It never goes
        back, though the pages are laid out again where a number took a line more."""
        last, said, most = "", 0.0, 0.0

        def tell(stage: str, share: float) -> None:
            nonlocal last, said, most
            most = max(most, share)
            if stage != last or now() - said >= BETWEEN:
                last, said = stage, now()
                self._set(identity, state="making", trouble=None, stage=stage, share=int(most * 1000))

        return tell

    def done(self, identity: int, number: int, new: bool) -> None:
        """It is ready under this number; not ``new``: that report says all of it already."""
        self._set(identity, state="ready" if new else "same", stage="seal", share=1000, number=number,
                  trouble=None)  # fmt: skip

    def fail(self, identity: int, trouble: str) -> None:
        """It could not be made; ``trouble`` is a code of the words."""
        self._set(identity, state="failed", trouble=trouble)

    def sweep(self) -> list[Ask]:
        """At the start of a server: what the one before was making has failed, and is not begun again by itself, since
        it may be what ended that server. Returns those that still wait, the oldest first. Where that server has not
        ended and goes on making one, its next word on how far it is takes the failure back."""
        with self.transactions.writing() as session:
            session.execute(update(ReportAskRow).where(ReportAskRow.state == "making").values(
                state="failed", trouble="interrupted"))  # fmt: skip
            waiting = select(ReportAskRow).where(ReportAskRow.state == "waiting").order_by(ReportAskRow.id)
            return [_ask(row) for row in session.scalars(waiting)]

    def _set(self, identity: int, **values: object) -> None:
        with self.transactions.writing() as session:
            session.execute(update(ReportAskRow).where(ReportAskRow.id == identity).values(**values))


def _room(session: Session, job: str) -> bool:
    pending = select(func.count()).select_from(ReportAskRow).where(ReportAskRow.state.in_(PENDING))
    own = session.scalar(pending.where(ReportAskRow.job == job)) or 0
    return own < MOST and (session.scalar(pending) or 0) < MOST_OF_ALL


def _ask(row: ReportAskRow) -> Ask:
    return Ask(row.id, row.job, row.person, read_asked(row.asked), row.state, row.stage, row.share / 1000, row.number,
               row.trouble, row.asked_at)  # fmt: skip
