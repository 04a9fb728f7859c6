"""Where finished reports stand: numbered files in a folder for each job, and a row that says how far each is.

A number is given once and its files never change: what is new gets the next number and supersedes it.
"""

import os
from datetime import datetime, timedelta
from pathlib import Path
from typing import NamedTuple
from uuid import uuid4

from sqlalchemy import delete, insert, select, update

from inspect_app.clock import Clock, spell
from inspect_app.entry.statement import parse_statement
from inspect_app.store.tables import ReportRow, StatementRow
from inspect_app.store.transactions import Transactions
from inspect_app.store.vault_disk import Disk

HUNDRED = 100
GIVEN_UP = timedelta(minutes=15)  # a report takes seconds: whatever is still being made after that died


class Shelved(NamedTuple):
    """A report of a job: its number, state (``making``, ``ready``, ``failed``), files and trouble."""

    number: int
    state: str
    up_to: int
    contents: str | None
    pdf: Path | None
    trouble: str | None

    @property
    def contents_file(self) -> Path | None:
        """``contents.json`` beside the PDF."""
        return (
            self.pdf.with_name(self.pdf.name.replace("report-", "contents-").replace(".pdf", ".json"))
            if self.pdf
            else None
        )


class Shelf:
    """Reports by job. All calls need an app context."""

    def __init__(self, folder: Path, transactions: Transactions, clock: Clock, disk: Disk | None = None) -> None:
        self.folder, self.transactions, self.clock, self.disk = folder, transactions, clock, disk or Disk()

    def newest(self, job: str) -> Shelved | None:
        """The report with the highest number, whatever its state."""
        return self._one(job, None)

    def newest_ready(self, job: str) -> Shelved | None:
        """The one that holds: the highest number that is ready."""
        return self._one(job, "ready")

    def begin(self, job: str) -> int:
        """Take the next number."""
        with self.transactions.writing() as session:
            asked = select(ReportRow.number, ReportRow.made_at).where(ReportRow.job == job)
            last = session.execute(asked.order_by(ReportRow.number.desc()).limit(1)).first()
            number = self._after(job, *(last or (0, "")))
            session.execute(insert(ReportRow).values(
                job=job, number=number, state="making", up_to=0, made_at=spell(self.clock())))  # fmt: skip
            return number

    def _after(self, job: str, number: int, made_at: str) -> int:
        """The next number. After a restoration the next hundred, for a job begun before it (its id tells when): reports
        may have been undone that somebody has on paper."""
        asked = select(StatementRow.seq, StatementRow.jws).where(StatementRow.kind == "restoration")
        with self.transactions.reading() as session:
            back = session.execute(asked.order_by(StatementRow.seq.desc()).limit(1)).first()
        begun = int(job.replace("-", "")[:12], 16)  # of a UUIDv7: milliseconds since 1970, as a restoration's number
        undone = back is not None and begun < back.seq and made_at < str(parse_statement(back.jws).payload["at"])
        return (number // HUNDRED + 1) * HUNDRED if undone else number + 1

    def fail(self, job: str, number: int, trouble: str) -> None:
        """Say that it could not be made, and why."""
        self._set(job, number, state="failed", trouble=trouble[:500])

    def withdraw(self, job: str, number: int) -> None:
        """Give back a number under which nothing was written."""
        with self.transactions.writing() as session:
            session.execute(delete(ReportRow).where(
                ReportRow.job == job, ReportRow.number == number, ReportRow.state == "making"))  # fmt: skip

    def finish(self, job: str, number: int, pdf: Path, contents: bytes, digest: str, up_to: int) -> Shelved:
        """Put a finished PDF (a temporary file in ``work(job)``) and its contents under their names, durably,
        then say that it is ready."""
        folder = self.folder / job
        name = f"report-{number:04d}.pdf"
        beside = folder / f"contents-{number:04d}.json"
        temporary = folder / f"{uuid4().hex}.part"
        try:
            with self.disk.create(temporary) as file:
                self.disk.write(file, contents)
                self.disk.sync(file)
            self.disk.rename(temporary, beside)
            self.disk.rename(pdf, folder / name)
        finally:
            self.disk.remove(temporary)
        self.disk.sync_folder(folder)
        self._set(job, number, state="ready", contents=digest, file=f"{job}/{name}", up_to=up_to)
        return Shelved(number, "ready", up_to, digest, folder / name, None)

    def work(self, job: str) -> Path:
        """The job's folder, made on need."""
        folder = self.folder / job
        folder.mkdir(parents=True, exist_ok=True)
        return folder

    def _one(self, job: str, state: str | None) -> Shelved | None:
        asked = select(ReportRow).where(ReportRow.job == job).order_by(ReportRow.number.desc()).limit(1)
        if state is not None:
            asked = asked.where(ReportRow.state == state)
        with self.transactions.reading() as session:
            row = session.scalar(asked)
            if row is None:
                return None
            shown = row.state
            if shown == "making" and self.clock() - datetime.fromisoformat(row.made_at) > GIVEN_UP:
                shown = "failed"
            file = self.folder / row.file if row.file else None
            return Shelved(row.number, shown, row.up_to, row.contents, file, row.trouble)

    def _set(self, job: str, number: int, **values: object) -> None:
        with self.transactions.writing() as session:
            session.execute(update(ReportRow).where(ReportRow.job == job, ReportRow.number == number).values(**values))


def synced(path: Path) -> None:
    """Make a written file durable."""
    descriptor = os.open(path, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)
