"""What a device may be told of photos, and where those that it brings go.

A photo that the job holds is told of to who sees it; anybody else of the job has to bring its bytes first, and so has
it already. What a revoked key brings is kept apart, unless an entry in the log names it: then these bytes are what was
signed, whoever carries them.
"""

from inspect_app.entry.format import parse
from inspect_app.entry.pictures import pictures
from inspect_app.intake.uploads_refused import UploadRefused
from inspect_app.people.devices import Devices
from inspect_app.people.scope import Scope
from inspect_app.store.log import Log
from inspect_app.store.log_reading import LogReading
from inspect_app.store.quarantine import Quarantine


class PhotoDoor:
    """The receipts of ``uploads.py``, device by device (its kid)."""

    def __init__(
        self, log: Log, reading: LogReading, quarantine: Quarantine, devices: Devices, scope: Scope
    ) -> None:  # fmt: skip
        self.log, self.reading, self.quarantine = log, reading, quarantine
        self.devices, self.scope = devices, scope
        self._read = dict[str, tuple[int, set[str]]]()  # job -> how far its log was read, the photos named so far

    def told(self, device: str, job: str, sha256: str) -> str | None:
        """The receipt, to who may know that the job holds the photo. A revoked key is told nothing that it does not
        bring."""
        found, known = self.devices.find(device), self.log.photo_receipt(job, sha256)
        if known is None or found is None or found.revoked or not self.scope.shows_photo(job, found.person, sha256):
            return None
        return known

    def holds(self, job: str, sha256: str) -> bool:
        """Whether the vault holds it for this job, with a receipt or kept apart."""
        return self.log.photo_receipt(job, sha256) is not None or self.quarantine.photo(job, sha256) is not None

    def take(self, device: str, job: str, sha256: str, size: int, type: str) -> str | None:
        """The vault holds it durably: its receipt, or None when it is kept apart. Raises ``UploadRefused``
        ``upload_kept_apart_full``."""
        found = self.devices.find(device)
        with self.log.transactions.writing():
            known = self.log.photo_receipt(job, sha256)
            if known is not None or found is None or not found.revoked or self._named(job, sha256):
                self.quarantine.let_photo_go(job, sha256)
                return known or self.log.receive_photo(job, sha256, size, type)
            if not self.quarantine.keep_photo(job, sha256, device, size, type):
                raise UploadRefused("upload_kept_apart_full", "key", device)
            return None

    def _named(self, job: str, sha256: str) -> bool:
        """Each entry is read once: a revoked key's copy asks for every one of its photos."""
        seq, named = self._read.get(job, (0, set[str]()))
        for one in self.reading.job_after(job, seq):
            seq = one.seq
            named |= pictures(parse(one.token).payload)
        self._read[job] = (seq, named)
        return sha256 in named
