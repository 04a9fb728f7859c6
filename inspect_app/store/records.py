"""The folded record of each job: made on need from the log, kept until the log or the people change."""

import json
from typing import Any

from sqlalchemy import delete, func, insert, select

from inspect_app.entry.format import TYPE
from inspect_app.entry.jws import parse_jws
from inspect_app.record.fold import fold
from inspect_app.store.log_reading import LogReading
from inspect_app.store.people_map import people_digest, people_of
from inspect_app.store.tables import DerivedJob, EntryRow
from inspect_app.store.transactions import Transactions

Record = dict[str, Any]


class Records:
    """Records as the fold gives them; see ``inspect_app/record``."""

    def __init__(self, transactions: Transactions, log: LogReading) -> None:
        self.transactions, self.log = transactions, log

    def record(self, job: str) -> Record:
        """The job's record. It is empty but whole for a job without entries."""
        with self.transactions.reading() as session:
            up_to = session.scalar(select(func.max(EntryRow.seq)).where(EntryRow.job == job)) or 0
            people = people_digest(people_of(self.transactions, job))
            kept = session.execute(
                select(DerivedJob.up_to, DerivedJob.people, DerivedJob.record).where(DerivedJob.job == job)
            ).first()
        fresh = kept is not None and (kept.up_to, kept.people) == (up_to, people)
        text = kept.record if kept is not None and fresh else self.refresh(job)
        record: Record = json.loads(text)
        return record

    def name(self, job: str) -> str:
        """The job's name, from its ``job`` entries alone; empty before the first."""
        with self.transactions.reading():
            received = self.log.job_entries(job, "job")
            people = people_of(self.transactions, job)
        head = fold([folded(item.token) for item in received], people)["job"]
        return str(head["name"]) if head else ""

    def refresh(self, job: str) -> str:
        """Fold the job again from its log, keep the result, and give it as JSON."""
        with self.transactions.reading():
            received = self.log.job_entries(job)
            people = people_of(self.transactions, job)
        record = json.dumps(fold([folded(item.token) for item in received], people), sort_keys=True)
        row = {"job": job, "up_to": received[-1].seq if received else 0, "people": people_digest(people)}
        # The fold may take a while, so it runs outside the write lock. What arrived meanwhile makes the row
        # out of date, and the next reader folds again.
        with self.transactions.writing() as session:
            session.execute(delete(DerivedJob).where(DerivedJob.job == job))
            session.execute(insert(DerivedJob).values(**row, record=record))
        return record


def folded(token: str) -> dict[str, Any]:
    """One entry as the fold takes it."""
    entry = parse_jws(token, TYPE)
    return {"digest": entry.digest, "kid": entry.kid, "payload": entry.payload}
