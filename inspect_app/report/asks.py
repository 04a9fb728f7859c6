"""The reports that people asked for: who, what, and how far each is. They outlive the server that was asked."""

import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import datetime, timedelta
from typing import NamedTuple

from sqlalchemy import delete, func, insert, select, update
from sqlalchemy.orm import Session

from inspect_app.clock import Clock, spell
from inspect_app.report.asked import Asked, read_asked
from inspect_app.report.holds import Holds
from inspect_app.report.progress import Tell
from inspect_app.store.tables import ReportAskRow
from inspect_app.store.transactions import Transactions

MOST_OF_PERSON = 8  # that wait or are made, whatever the jobs: more is a finger that did not wait
MOST_OF_JOB = 24  # so that no member's asking can use up what the others may ask for
MOST_OF_ALL = 64
SURVEYS = 20  # other places, radiuses or forms of one person in a day: each is a file that stays
DAY = timedelta(days=1)
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


class Full(Exception):
    """No more is noted; ``code`` of the words: ``reports_waiting_yours`` (who asks has as many waiting as one person
    may have), ``reports_waiting`` (the job has, or all jobs have), ``surveys_today`` (who asks has asked for as many
    places in a day as one person may); ``seconds`` until there is room, None where nobody knows."""

    def __init__(self, code: str, seconds: int | None = None) -> None:
        super().__init__(code, seconds)
        self.code, self.seconds = code, seconds


class Asks:
    """All calls need an app context."""

    def __init__(self, transactions: Transactions, clock: Clock, holds: Holds) -> None:
        self.transactions, self.clock, self.holds = transactions, clock, holds

    def add(self, job: str, person: str, asked: Asked) -> Ask:
        """Note what is asked for; what waits already or is being made is not asked twice. Raises ``Full``."""
        with self.transactions.writing() as session:
            session.execute(delete(ReportAskRow).where(
                ReportAskRow.state.not_in(PENDING), ReportAskRow.asked_at < spell(self.clock() - KEPT)))  # fmt: skip
            pending = select(ReportAskRow).where(ReportAskRow.job == job, ReportAskRow.state.in_(PENDING))
            alike = (row for row in session.scalars(pending) if read_asked(row.asked).meaning == asked.meaning)
            row = next(alike, None)
            if row is None:
                _require_room(session, job, person)
                if asked.kind == "survey":
                    _require_day(session, job, person, asked, self.clock())
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

    @contextmanager
    def begun(self, identity: int) -> Iterator[Ask | None]:
        """Take one that waits, and hold it while it is made; None where somebody else has, or it is gone."""
        with self.holds.hold("ask", str(identity)):
            yield self.begin(identity)

    def begin(self, identity: int) -> Ask | None:
        """As ``begun``, of one that is held."""
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
                self._set(identity, stage=stage, share=int(most * 1000))

        return tell

    def done(self, identity: int, number: int, new: bool) -> None:
        """It is ready under this number; not ``new``: that report says all of it already."""
        self._set(identity, state="ready" if new else "same", stage="seal", share=1000, number=number,
                  trouble=None)  # fmt: skip

    def fail(self, identity: int, trouble: str) -> None:
        """It could not be made; ``trouble`` is a code of the words."""
        self._set(identity, state="failed", trouble=trouble)

    def sweep(self) -> list[Ask]:
        """What nobody is making any more has failed, and is not begun again by itself, since it may be what ended the
        server that did. Returns those that wait, the oldest first."""
        with self.transactions.writing() as session:
            for row in session.scalars(select(ReportAskRow).where(ReportAskRow.state == "making")):
                if self.holds.free("ask", str(row.id)):
                    row.state, row.trouble = "failed", "interrupted"
            waiting = select(ReportAskRow).where(ReportAskRow.state == "waiting").order_by(ReportAskRow.id)
            return [_ask(row) for row in session.scalars(waiting)]

    def _set(self, identity: int, **values: object) -> None:
        with self.transactions.writing() as session:
            session.execute(update(ReportAskRow).where(ReportAskRow.id == identity).values(**values))


def _require_room(session: Session, job: str, person: str) -> None:
    """Counted person by person first, so that who is refused is told whose waiting it is."""
    pending = select(func.count()).select_from(ReportAskRow).where(ReportAskRow.state.in_(PENDING))
    if (session.scalar(pending.where(ReportAskRow.person == person)) or 0) >= MOST_OF_PERSON:
        raise Full("reports_waiting_yours")
    of_job = session.scalar(pending.where(ReportAskRow.job == job)) or 0
    if of_job >= MOST_OF_JOB or (session.scalar(pending) or 0) >= MOST_OF_ALL:
        raise Full("reports_waiting")


def _require_day(session: Session, job: str, person: str, asked: Asked, now: datetime) -> None:
    """Nothing made for it (a report said it already, or it failed) counts nothing; nor does the same again."""
    made = select(ReportAskRow).where(ReportAskRow.person == person, ReportAskRow.asked_at > spell(now - DAY),
                                      ReportAskRow.state.in_((*PENDING, "ready")))  # fmt: skip
    since: dict[tuple[str, str], str] = {}
    for row in session.scalars(made.order_by(ReportAskRow.id)):
        one = read_asked(row.asked)
        if one.kind == "survey":
            since[row.job, one.meaning] = row.asked_at
    if (job, asked.meaning) not in since and len(since) >= SURVEYS:
        first = datetime.fromisoformat(min(since.values()))
        raise Full("surveys_today", max(1, round((first + DAY - now).total_seconds())))


def _ask(row: ReportAskRow) -> Ask:
    return Ask(row.id, row.job, row.person, read_asked(row.asked), row.state, row.stage, row.share / 1000, row.number,
               row.trouble, row.asked_at)  # fmt: skip
