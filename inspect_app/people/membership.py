"""Who belongs to which job. People see their own jobs and no others."""

from collections.abc import Collection

from sqlalchemy import insert, select, update

from inspect_app.clock import Clock, spell
from inspect_app.store.tables import MembershipRow
from inspect_app.store.transactions import Transactions


class Membership:
    """Joining only; nobody is taken off a job whose records name them."""

    def __init__(self, transactions: Transactions, clock: Clock) -> None:
        self.transactions, self.clock = transactions, clock

    def join(self, person: str, job: str, firm: str | None = None) -> bool:
        """Make the person (an id) a member, of a firm of the job if told; False when they were one already."""
        with self.transactions.writing() as session:
            if self.belongs(person, job):
                return False
            session.execute(insert(MembershipRow).values(job=job, person=person, since=spell(self.clock()), firm=firm))
            return True

    def place(self, person: str, job: str, firm: str) -> bool:
        """Make the person a member in this firm of the job; False when they are there for another firm already."""
        with self.transactions.writing() as session:
            self.join(person, job)
            here = (MembershipRow.job == job, MembershipRow.person == person)
            known = session.scalar(select(MembershipRow.firm).where(*here))
            if known is None:
                session.execute(update(MembershipRow).where(*here).values(firm=firm))
            return known in (None, firm)

    def belongs(self, person: str, job: str) -> bool:
        asked = select(MembershipRow.job).where(MembershipRow.job == job, MembershipRow.person == person)
        with self.transactions.reading() as session:
            return session.scalar(asked) is not None

    def jobs_of(self, person: str) -> list[str]:
        """The ids of the person's jobs, oldest first: they are UUIDv7."""
        asked = select(MembershipRow.job).where(MembershipRow.person == person)
        with self.transactions.reading() as session:
            return sorted(session.scalars(asked))

    def members(self, jobs: Collection[str]) -> dict[str, set[str]]:
        """``{job: {person id}}`` of those of the jobs that have members."""
        asked = select(MembershipRow.job, MembershipRow.person).where(MembershipRow.job.in_(jobs))
        found: dict[str, set[str]] = {}
        with self.transactions.reading() as session:
            for job, person in session.execute(asked):
                found.setdefault(job, set()).add(person)
        return found
