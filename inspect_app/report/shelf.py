"""Where finished reports stand: numbered files in a folder for each job, and a row that says how far each is.

A number is given once and its files never change: what is new gets the next number, and supersedes the newest before
it that speaks of the same and says otherwise. The numbers of a job are one series, whatever its reports speak of.
"""

import json
import os
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any, NamedTuple
from uuid import uuid4

from sqlalchemy import delete, insert, select, update

from inspect_app.clock import Clock, spell
from inspect_app.entry.statement import parse_statement
from inspect_app.record.scope import WHOLE
from inspect_app.report.asked import meaning_of, sorted_json
from inspect_app.report.holds import Holds
from inspect_app.store.tables import ReportRow, StatementRow
from inspect_app.store.transactions import Transactions
from inspect_app.store.vault import blocks, hash_of
from inspect_app.store.vault_disk import Disk

HUNDRED = 100
GIVEN_UP = timedelta(minutes=15)  # a report takes seconds: whatever is still being made after that died


class Shelved(NamedTuple):
    """A report of a job: its number, state (``making``, ``ready``, ``failed``), files and trouble; the ``scope`` it
    speaks of; what a list says of it (``told``, as ``shelf_list.told_of`` gives it)."""

    number: int
    state: str
    up_to: int
    contents: str | None
    pdf: Path | None
    trouble: str | None
    scope: dict[str, Any] = WHOLE
    told: dict[str, Any] = {}

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

    def __init__(self, folder: Path, transactions: Transactions, clock: Clock, holds: Holds) -> None:
        """``holds``: what says which of them is being made just now."""
        self.folder, self.transactions, self.clock, self.holds = folder, transactions, clock, holds
        self.disk = Disk()

    def newest(self, job: str, scope: dict[str, Any] = WHOLE) -> Shelved | None:
        """The report of that scope with the highest number, whatever its state."""
        return self._one(job, scope, None)

    def newest_ready(self, job: str, scope: dict[str, Any] = WHOLE) -> Shelved | None:
        """The one that holds: of that scope the highest number that is ready."""
        return self._one(job, scope, "ready")

    def ready(self, job: str) -> list[Shelved]:
        """Every report that is ready, superseded ones too, by number."""
        asked = select(ReportRow).where(ReportRow.job == job, ReportRow.state == "ready").order_by(ReportRow.number)
        with self.transactions.reading() as session:
            return [self._shelved(row) for row in session.scalars(asked)]

    def of_scope(self, job: str, scope: dict[str, Any]) -> list[Shelved]:
        """Those of them that speak of it, the newest first."""
        return [one for one in reversed(self.ready(job)) if one.scope == scope]

    def spelled(self, job: str, scope: dict[str, Any]) -> dict[str, Any]:
        """The scope as the reports that speak of the same place write its lengths, so that they are one series; as it
        is where there are none."""
        asked = select(ReportRow.scope).where(ReportRow.job == job, ReportRow.kind == scope["kind"]).distinct()
        with self.transactions.reading() as session:
            known = [json.loads(one) for one in session.scalars(asked)]
        return next((one for one in known if meaning_of(one) == meaning_of(scope)), scope)

    def numbered(self, job: str, number: int) -> Shelved | None:
        """The report of that number, when it is ready."""
        return next((one for one in self.ready(job) if one.number == number), None)

    def begin(self, job: str, scope: dict[str, Any] = WHOLE) -> int:
        """Take the next number."""
        with self.transactions.writing() as session:
            asked = select(ReportRow.number, ReportRow.made_at).where(ReportRow.job == job)
            last = session.execute(asked.order_by(ReportRow.number.desc()).limit(1)).first()
            number = self._after(job, *(last or (0, "")))
            session.execute(insert(ReportRow).values(
                job=job, number=number, state="making", up_to=0, made_at=spell(self.clock()), kind=scope["kind"],
                scope=sorted_json(scope)))  # fmt: skip
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
                ReportRow.job == job, ReportRow.number == number, ReportRow.state != "ready"))  # fmt: skip

    def sweep(self) -> None:
        """What nobody is making any more, since the process that did has ended, will never be ready."""
        with self.transactions.writing() as session:
            for row in session.scalars(select(ReportRow).where(ReportRow.state == "making")):
                if self.holds.free("report", held_as(row.job, json.loads(row.scope))):
                    row.state, row.trouble = "failed", "the server ended while it was being made"
        oldest = (self.clock() - GIVEN_UP).timestamp()
        for left in self.folder.glob("*/*.part"):
            try:
                if left.stat().st_mtime < oldest:
                    left.unlink()
            except OSError:  # somebody is finishing it, or the disk does not let us: it is no report, and harms nobody
                continue

    def finish(self, job: str, number: int, pdf: Path, contents: bytes, digest: str, up_to: int,
               told: dict[str, Any] | None = None) -> Shelved:  # fmt: skip
        """Put a finished PDF (a temporary file in ``work(job)``) and its contents under their names, durably,
        then say that it is ready. ``told``: what a list says of it."""
        folder = self.folder / job
        sha256 = hash_of(blocks(pdf))  # before it has its name: what is read later must be these bytes
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
        self._set(job, number, state="ready", trouble=None, contents=digest, file=f"{job}/{name}", sha256=sha256,
                  up_to=up_to, told=sorted_json(told or {}))  # fmt: skip
        shelved = self.numbered(job, number)
        assert shelved is not None  # what was just written
        return shelved

    def signed_again(self, shelved: Shelved, pdf: Path) -> None:
        """Put a report with one more signature, a finished file in the same folder, in its own place, durably: it
        begins with every byte of the one before."""
        assert shelved.pdf is not None
        self.disk.rename(pdf, shelved.pdf)
        self.disk.sync_folder(shelved.pdf.parent)

    def note_print(self, job: str, number: int, sha256: str) -> None:
        """Keep what a report's bytes are now."""
        self._set(job, number, sha256=sha256)

    def work(self, job: str) -> Path:
        """The job's folder, made on need."""
        folder = self.folder / job
        folder.mkdir(parents=True, exist_ok=True)
        return folder

    def _one(self, job: str, scope: dict[str, Any], state: str | None) -> Shelved | None:
        asked = select(ReportRow).where(ReportRow.job == job, ReportRow.scope == sorted_json(scope))
        asked = asked.order_by(ReportRow.number.desc()).limit(1)
        if state is not None:
            asked = asked.where(ReportRow.state == state)
        with self.transactions.reading() as session:
            row = session.scalar(asked)
            return None if row is None else self._shelved(row)

    def _shelved(self, row: ReportRow) -> Shelved:
        shown = row.state
        if shown == "making" and self.clock() - datetime.fromisoformat(row.made_at) > GIVEN_UP:
            shown = "failed"
        file = self.folder / row.file if row.file else None
        return Shelved(row.number, shown, row.up_to, row.contents, file, row.trouble, json.loads(row.scope),
                       json.loads(row.told) if row.told else {})  # fmt: skip

    def _set(self, job: str, number: int, **values: object) -> None:
        with self.transactions.writing() as session:
            session.execute(update(ReportRow).where(ReportRow.job == job, ReportRow.number == number).values(**values))


def held_as(job: str, scope: dict[str, Any]) -> str:
    """What reports of that scope are held as while one is made."""
    return f"{job} {meaning_of(scope)}"


def synced(path: Path) -> None:
    """Make a written file durable."""
    descriptor = os.open(path, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)
