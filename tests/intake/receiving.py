"""A log of receipts in one small file, and everything else of the uploads real, on a temporary folder."""

import hashlib
import io
import json
import os

from inspect_app.intake.uploads import Uploads
from inspect_app.intake.uploads_caps import Caps
from inspect_app.intake.uploads_metadata import Checksum, Declared
from inspect_app.store.vault import Vault
from inspect_app.store.vault_disk import Disk

JOB = "019abcde-0000-7000-8000-000000000001"
OTHER_JOB = "019abcde-0000-7000-8000-000000000002"
PHONE, OTHER_PHONE = "phone-one", "phone-two"
PHOTO = os.urandom(200_000)


class ReceiptLog:
    """Gives each job and photo one receipt, only for a photo that the vault holds whole at that moment, and
    remembers it over a crash."""

    def __init__(self, vault, file):
        self.vault = vault
        self.file = file
        self.given = {tuple(key): jws for key, jws in json.loads(file.read_text())} if file.exists() else {}
        self.failures = 0

    def told(self, device, job, sha256):
        return self.given.get((job, sha256))

    def holds(self, job, sha256):
        return (job, sha256) in self.given

    def take(self, device, job, sha256, size, type):
        if self.failures:
            self.failures -= 1
            raise RuntimeError("the log is away")
        assert len(self.vault.read(sha256, verify=True)) == size
        receipt = self.given.setdefault((job, sha256), f"receipt-{len(self.given)}")
        self.file.write_text(json.dumps([[key, jws] for key, jws in self.given.items()]))
        return receipt


class Receiving:
    def __init__(self, folder, caps=None, disk=None):
        self.time = 1_000_000_000.0
        self.vault = Vault(folder / "vault", disk)
        self.receipts = ReceiptLog(self.vault, folder / "receipts.json")
        self.folder = folder / "uploads"
        self.caps = caps or Caps()
        self.restart(disk)

    def restart(self, disk=None):
        """As a server does after a crash: everything it knew in memory is gone, but for the log."""
        self.vault.disk = disk or Disk()
        self.uploads = Uploads(self.folder, self.vault, self.receipts, lambda: self.time, self.caps, disk)

    def create(self, photo=PHOTO, device=PHONE, job=JOB, sha256=None, length=None):
        declared = Declared(job, sha256 or sha(photo), "image/jpeg", "")
        return self.uploads.create(device, len(photo) if length is None else length, declared)

    def patch(self, upload, offset, data, device=PHONE, checksum=None):
        return self.uploads.patch(device, upload, offset, io.BytesIO(data), checksum, len(data))


def sha(data):
    return hashlib.sha256(data).hexdigest()


def checksum(data, algorithm="sha256"):
    return Checksum(algorithm, hashlib.new(algorithm, data).digest())
