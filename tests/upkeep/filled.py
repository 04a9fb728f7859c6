"""An office with some of everything in it, and what ``check`` says of it."""

import hashlib
import random
from pathlib import Path
from typing import Any

from inspect_app.intake.uploads_metadata import Declared
from inspect_app.report.holds import Holds
from inspect_app.report.shelf import Shelf
from inspect_app.store.database import db
from inspect_app.upkeep.check import Checked, check
from tests.upload_headers import metadata_of

PHOTO = b"\xff\xd8\xff" + random.Random(7).randbytes(90_000)
SHA = hashlib.sha256(PHOTO).hexdigest()
LOST_PHOTO = random.Random(8).randbytes(5_000)


class Filled:
    """``job``, its ``chief``, a ``foreman`` who walked it with a photo, and ``gone``, whose key was ended; tickets, an
    upload in progress, a finished report, the folded record."""

    def __init__(self, office: Any) -> None:
        self.office = office
        kept = sorted(file.stem for file in (office.settings.data / "definitions").glob("*.json"))
        self.job, self.chief = office.job(definitions={"nail_flange": kept[0]})
        self.foreman = office.phone("fay", "foreman", self.job)
        self.gone = office.phone("gil", "foreman", self.job)
        self.photo(self.foreman, PHOTO)
        assert self.foreman.send(*office.walk(self.foreman, self.job, SHA)).status_code == 200
        assert len(self.foreman.tickets(self.job).json["tickets"]) == 12
        with office.app.app_context():
            parts = office.parts
            parts.devices.revoke(self.gone.kid, "server")
            parts.records.record(self.job)
            uploads = office.app.extensions["photos"].uploads
            uploads.create(self.foreman.kid, len(LOST_PHOTO), Declared(self.job, "0f" * 32, "image/jpeg", ""))
            self.report(parts)
        self.gone.send(self.gone.entry("area", self.job))

    def photo(self, phone: Any, data: bytes) -> str:
        """Upload all of it in one request; its receipt."""
        metadata = metadata_of(self.job, hashlib.sha256(data).hexdigest())
        headers = {"Tus-Resumable": "1.0.0", "Upload-Length": str(len(data)), "Upload-Metadata": metadata,
                   "Content-Type": "application/offset+octet-stream", **phone.bearer}  # fmt: skip
        reply = phone.client.post("/api/photos", data=data, headers=headers)
        assert reply.status_code == 201, reply.data
        return str(reply.headers["Seamwalk-Receipt"])

    def report(self, parts: Any) -> None:
        data = parts.settings.data
        shelf = Shelf(data / "reports", parts.transactions, parts.clock, Holds(data / "holds"))
        contents = b'{"invented": true}'
        digest = hashlib.sha256(contents).hexdigest()
        pdf = shelf.work(self.job) / "made.part"
        pdf.write_bytes(b"%PDF-1.7 /Subject (seamwalk contents sha256 " + digest.encode() + b")")
        shelf.finish(self.job, shelf.begin(self.job), pdf, contents, digest, 3)

    def close(self) -> None:
        with self.office.app.app_context():
            db.engine.dispose()


def checked(office: Any, data: Path | None = None) -> Checked:
    return check(data or office.settings.data, office.settings.database_url)


def codes(office: Any) -> set[str]:
    return {one.code for one in checked(office).faults}
