"""A photo taken by the real app, with its receipt, beside the same bytes written to a file and synced."""

import hashlib
import os
import random
import tempfile
from pathlib import Path

from tests.bench.measure import Row, ratio
from tests.tus.plain_client import BYTES, checksum, metadata
from tests.tus.real_app import prepare, real_app, tokens_of

SIZE = 4 * 1024 * 1024  # bytes: what a phone's camera gives
TIMES = 4


def rows() -> list[Row]:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name) / "data"
        prepare(folder)
        client, source = real_app(folder).test_client(), random.Random(1)
        bearer = {"Authorization": f"Bearer {tokens_of(folder)['foreman']}", "Tus-Resumable": "1.0.0"}

        def upload() -> None:
            photo = source.randbytes(SIZE)
            reply = client.post("/api/photos", data=photo, headers=bearer | {
                "Content-Type": BYTES, "Upload-Length": str(SIZE), "Upload-Metadata": metadata(photo),
                "Upload-Checksum": checksum(photo),
            })  # fmt: skip
            assert "Seamwalk-Receipt" in reply.headers, reply.text

        def copy() -> None:
            photo = source.randbytes(SIZE)
            metadata(photo), checksum(photo)  # the client's own part, in both
            with open(Path(name) / hashlib.sha256(photo).hexdigest(), "wb") as out:
                out.write(photo)
                out.flush()
                os.fsync(out.fileno())

        return [
            Row("take a photo of 4 MiB", "write and sync the same bytes", ratio(upload, copy, TIMES), 8,
                "hashed twice, synced as a piece, in the vault and in the log before its receipt"),
        ]  # fmt: skip
