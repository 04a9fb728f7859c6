"""One upload on the disk: three files named by its id, in a folder of the device that made it.

``ID.json``  what was declared; its appearance is the creation
``ID.part``  the bytes so far: **its size, after fsync, is the offset**; there is no other record of it
``ID.turn``  a token of the newest appender; an older one finds another token there and is cut

The id is derived from device, job and hash, so that asking again after a lost answer finds the same upload,
and one device's ids lead nowhere in another's folder.
"""

import contextlib
import hashlib
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any, BinaryIO, NamedTuple

from inspect_app.intake.uploads_lock import Locks
from inspect_app.intake.uploads_refused import UploadRefused
from inspect_app.store.vault_disk import Disk


class Upload(NamedTuple):
    """What was declared: ``id``, ``device`` (kid), ``job``, ``sha256``, ``length`` in bytes, ``type`` and
    ``name``."""

    id: str
    device: str
    job: str
    sha256: str
    length: int
    type: str
    name: str


def upload_id(device: str, job: str, sha256: str) -> str:
    """32 hexadecimal digits."""
    return hashlib.sha256("\0".join((device, job, sha256)).encode()).hexdigest()[:32]


def folder_of(folder: Path, device: str) -> Path:
    """A name that is the same on every file system: thumbprints differ by case."""
    return folder / hashlib.sha256(device.encode()).hexdigest()[:32]


class Place:
    """The files of one upload. Every method that touches ``part`` holds the upload's lock for that long."""

    def __init__(self, folder: Path, device: str, name: str, locks: Locks, disk: Disk) -> None:
        self.folder = folder_of(folder, device)
        self.name = name
        self.state, self.part, self.turn = (self.folder / f"{name}.{end}" for end in ("json", "part", "turn"))
        self._locks = locks
        self._disk = disk

    def lock(self) -> contextlib.AbstractContextManager[None]:
        return self._locks.of(self.name)

    def load(self) -> Upload | None:
        """What was declared, or None: never made, removed, or swept."""
        try:
            return Upload(**json.loads(self.state.read_text("utf-8")))
        except (FileNotFoundError, ValueError, TypeError):  # damaged is as good as lost: it is made again
            return None

    def make(self, upload: Upload, part: bool) -> None:
        """Durably write the declaration, after an empty ``part`` if there is to be one."""
        self.folder.mkdir(exist_ok=True)
        self._disk.sync_folder(self.folder.parent)
        if part:
            self._disk.remove(self.part)
            with self._disk.create(self.part) as file:
                self._disk.sync(file)
        temporary = self.state.with_suffix(".new")
        self._disk.remove(temporary)
        with self._disk.create(temporary) as file:
            self._disk.write(file, json.dumps(upload._asdict()).encode())
            self._disk.sync(file)
        self._disk.rename(temporary, self.state)
        self._disk.sync_folder(self.folder)

    def size(self) -> int | None:
        """How many bytes are on the disk, after making sure of it; None when there is no ``part``."""
        try:
            with self.part.open("rb") as file:
                self._disk.sync(file)
                return file.seek(0, 2)
        except FileNotFoundError:
            return None

    def begin(self, token: str, offset: int) -> None:
        """Become the newest appender, at exactly ``offset``."""
        with self.lock():
            self._expect(offset)
            self.turn.write_text(token, "ascii")

    def append(self, token: str, offset: int, data: bytes) -> int:
        """Put ``data`` on the disk at ``offset``, which must be the end; returns the new one. Where the disk
        takes only a part of it or does not confirm it, all of it is taken back and ``OSError`` raised."""
        with self.lock():
            self._expect(offset)
            if self.turn.read_text("ascii") != token:
                raise UploadRefused("upload_overtaken", "Upload-Offset", offset)
            with self._disk.reopen(self.part) as file:
                file.seek(offset)
                with self._taken_back(file, offset):
                    self._disk.write(file, data)
                    self._disk.sync(file)
        return offset + len(data)

    def remove(self, declaration: bool) -> None:
        """Drop the bytes received, and the declaration too if wanted (first: no bytes, no upload)."""
        if declaration:
            self._disk.remove(self.state)
        for path in (self.part, self.turn):
            self._disk.remove(path)

    def _expect(self, offset: int) -> None:
        size = self.size()
        if size is None:
            raise UploadRefused("upload_gone", "upload", self.name)
        if size != offset:
            raise UploadRefused("upload_offset_wrong", "Upload-Offset", offset, offset=size)

    @contextlib.contextmanager
    def _taken_back(self, file: BinaryIO, size: int) -> Iterator[Any]:
        try:
            yield
        except BaseException:
            self._disk.cut(file, size)
            raise
