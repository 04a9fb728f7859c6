"""The reports of a package: every one that was finished, superseded ones too."""

import hashlib
from datetime import datetime
from pathlib import Path

from sqlalchemy import select

from inspect_app.package.member import Member
from inspect_app.store.tables import ReportRow
from inspect_app.store.transactions import Transactions
from inspect_app.store.vault import blocks

SETTLED = 60.0  # seconds: a countersignature is in the file a moment before its digest is noted


def reports(transactions: Transactions, folder: Path, job: str, now: datetime) -> tuple[list[Member], list[int]]:
    """The members, and the numbers of those whose file is gone. A report's digest is the one it was shelved or
    countersigned with, as a photo's is; it is read where none was noted, or where it changed just now. Needs an app
    context."""
    asked = select(ReportRow).where(ReportRow.job == job, ReportRow.state == "ready").order_by(ReportRow.number)
    with transactions.reading() as session:
        found = [(row.number, row.kind, folder / str(row.file), row.sha256) for row in session.scalars(asked)]
    members, gone = list[Member](), list[int]()
    for number, kind, file, noted in found:
        try:
            there = file.stat()
            settled = there.st_mtime < now.timestamp() - SETTLED
            size, sha256 = (there.st_size, noted) if noted and settled else _read(file)
        except OSError:
            gone.append(number)
            continue
        members.append(Member(f"data/reports/{number}-{kind}.pdf", size, sha256, file))
    return members, gone


def _read(file: Path) -> tuple[int, str]:
    """Size and SHA-256 of what was read."""
    size, hasher = 0, hashlib.sha256()
    for block in blocks(file):
        size += len(block)
        hasher.update(block)
    return size, hasher.hexdigest()
