"""Every definition this server has ever served, by digest: a job that pins one can be read for ever, also
when a later release ships it no more."""

import hashlib
from collections.abc import Mapping
from pathlib import Path
from uuid import uuid4

from inspect_app.entry.base64url import encode, names_sha256
from inspect_app.store.vault_disk import Disk


class DefinitionArchive:
    """One folder of compiled definitions: JSON bytes, each under the digest of them."""

    def __init__(self, folder: Path, disk: Disk | None = None) -> None:
        self.folder, self.disk = folder, disk or Disk()
        folder.mkdir(parents=True, exist_ok=True)

    def keep(self, definitions: Mapping[str, bytes]) -> None:
        """Keep ``{digest: bytes}``; what is kept already stays as it is."""
        for digest, data in definitions.items():
            if self.read(digest) is None:
                self._write(digest, data)
        self.disk.sync_folder(self.folder)

    def read(self, digest: str) -> bytes | None:
        """The bytes with this digest; None when they are not kept, or no longer are what they were."""
        file = self.folder / f"{digest}.json"
        if not names_sha256(digest) or not file.is_file():
            return None
        data = file.read_bytes()
        return data if encode(hashlib.sha256(data).digest()) == digest else None

    def _write(self, digest: str, data: bytes) -> None:
        temporary = self.folder / f"{uuid4().hex}.part"
        try:
            with self.disk.create(temporary) as file:
                self.disk.write(file, data)
                self.disk.sync(file)
            self.disk.rename(temporary, self.folder / f"{digest}.json")
        finally:
            self.disk.remove(temporary)
