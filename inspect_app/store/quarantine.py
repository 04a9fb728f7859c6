"""Entries kept apart: visible, never dropped, never in a record until a person decides."""

from typing import NamedTuple

from sqlalchemy import delete, func, insert, select

from inspect_app.clock import Clock, spell
from inspect_app.entry.format import Entry, parse
from inspect_app.entry.pictures import pictures
from inspect_app.store.tables import QuarantinePhotoRow, QuarantineRow
from inspect_app.store.transactions import Transactions

MOST = 1000  # entries of one key: enough for a month of work, too few to fill a disk
MOST_PHOTOS, MOST_BYTES = 500, 4 * 1024**3  # of one key


class KeptApart(NamedTuple):
    """An entry of the quarantine. ``photos``: those it names."""

    digest: str
    job: str
    kid: str
    kind: str
    subject: str
    by: str
    at: str
    received_at: str
    reason: str
    photos: list[str]
    entry: Entry


class KeptPhoto(NamedTuple):
    """A photo that a revoked key brought."""

    sha256: str
    kid: str
    size: int
    type: str


class Quarantine:
    """The entries of revoked keys, and their photos."""

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

    def of(self, job: str) -> list[KeptApart]:
        """The entries kept apart of this job, in order of arrival."""
        return self._read(QuarantineRow.job == job)

    def find(self, digest: str) -> KeptApart | None:
        found = self._read(QuarantineRow.digest == digest)
        return found[0] if found else None

    def let_go(self, digest: str) -> None:
        """It is in the log now, in this same transaction, or soon will be."""
        with self.transactions.writing() as session:
            session.execute(delete(QuarantineRow).where(QuarantineRow.digest == digest))

    def keep_photo(self, job: str, sha256: str, kid: str, size: int, type: str) -> bool:
        """Note a photo that the vault holds. False when its key has as many there as one key may have."""
        with self.transactions.writing() as session:
            if self.photo(job, sha256) is not None:
                return True
            asked = select(func.count(), func.sum(QuarantinePhotoRow.size)).where(QuarantinePhotoRow.kid == kid)
            count, bytes_held = session.execute(asked).one()
            if count >= MOST_PHOTOS or (bytes_held or 0) + size > MOST_BYTES:
                return False
            row = {"job": job, "sha256": sha256, "kid": kid, "size": size, "type": type}
            session.execute(insert(QuarantinePhotoRow).values(**row, received_at=spell(self.clock())))
            return True

    def photo(self, job: str, sha256: str) -> KeptPhoto | None:
        here = (QuarantinePhotoRow.job == job, QuarantinePhotoRow.sha256 == sha256)
        row = QuarantinePhotoRow
        with self.transactions.reading() as session:
            found = session.execute(select(row.sha256, row.kid, row.size, row.type).where(*here)).first()
        return KeptPhoto(*found) if found else None

    def photos(self, job: str) -> set[str]:
        """The photos kept apart of this job."""
        with self.transactions.reading() as session:
            return set(session.scalars(select(QuarantinePhotoRow.sha256).where(QuarantinePhotoRow.job == job)))

    def let_photo_go(self, job: str, sha256: str) -> None:
        """It has its receipt now, in this same transaction."""
        here = (QuarantinePhotoRow.job == job, QuarantinePhotoRow.sha256 == sha256)
        with self.transactions.writing() as session:
            session.execute(delete(QuarantinePhotoRow).where(*here))

    def _read(self, condition: object) -> list[KeptApart]:
        asked = select(QuarantineRow).where(condition)  # type: ignore[arg-type]
        with self.transactions.reading() as session:
            rows = list(session.scalars(asked.order_by(QuarantineRow.received_at, QuarantineRow.digest)))
            return [_kept(row) for row in rows]


def _kept(row: QuarantineRow) -> KeptApart:
    entry = parse(row.token)
    said = entry.payload
    return KeptApart(row.digest, row.job, row.kid, entry.kind, str(said["subject"]), entry.by, str(said["at"]),
                     row.received_at, row.reason, sorted(pictures(said)), entry)  # fmt: skip
