"""The log of what was accepted: append entries and photos, each once, each with its receipt."""

from collections.abc import Callable

from sqlalchemy import insert, select

from inspect_app.entry.format import Entry
from inspect_app.entry.statement import entry_receipt, photo_receipt
from inspect_app.store.statements import Statements
from inspect_app.store.tables import EntryRow, PhotoRow, StatementRow
from inspect_app.store.transactions import Transactions


class Log:
    """Appending again what is held gives the same receipt and does nothing else. ``on_photo(job, sha256)`` is
    called when a photo that was not held has become durable."""

    def __init__(
        self, transactions: Transactions, statements: Statements, on_photo: Callable[[str, str], None]
    ) -> None:
        self.transactions, self.statements, self.on_photo = transactions, statements, on_photo

    def append(self, entry: Entry) -> str:
        """Keep an entry that ``entry.accept`` has accepted; its receipt, a JWS."""
        with self.transactions.writing() as session:
            held = self.entry_receipt(entry.digest)
            if held:
                return held
            issued = self.statements.receipt(
                entry.job, lambda seq, at, n, prev: entry_receipt(seq, at, entry.job, n, prev, entry.digest)
            )
            session.execute(
                insert(EntryRow).values(
                    seq=issued.seq, digest=entry.digest, job=entry.job, kind=entry.kind,
                    subject=str(entry.payload["subject"]), kid=entry.kid, token=entry.token,
                )
            )  # fmt: skip
            return issued.jws

    def receive_photo(self, job: str, sha256: str, size: int, type: str) -> str:
        """Note that the vault holds this photo, durably, for this job; its receipt, a JWS."""
        with self.transactions.writing() as session:
            held = self.photo_receipt(job, sha256)
            if held:
                return held
            issued = self.statements.receipt(
                job, lambda seq, at, n, prev: photo_receipt(seq, at, job, n, prev, sha256, size)
            )
            session.execute(
                insert(PhotoRow).values(job=job, sha256=sha256, size=size, type=type, seq=issued.seq)
            )
            self.transactions.after_commit(lambda: self.on_photo(job, sha256))
            return issued.jws

    def entry_receipt(self, digest: str) -> str | None:
        """The receipt given for that entry; None when it is not in the log."""
        with self.transactions.reading() as session:
            return session.scalar(
                select(StatementRow.jws)
                .join(EntryRow, EntryRow.seq == StatementRow.seq)
                .where(EntryRow.digest == digest)
            )

    def photo_receipt(self, job: str, sha256: str) -> str | None:
        """The receipt given for that photo in that job; None when it is not held."""
        with self.transactions.reading() as session:
            return session.scalar(
                select(StatementRow.jws)
                .join(PhotoRow, PhotoRow.seq == StatementRow.seq)
                .where(PhotoRow.job == job, PhotoRow.sha256 == sha256)
            )
