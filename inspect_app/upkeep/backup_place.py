"""Where a backup is written: a folder that the next backup goes on with, or one file."""

import io
import os
import shutil
import tarfile
from collections.abc import Callable, Mapping
from math import ceil
from pathlib import Path
from typing import BinaryIO, Protocol
from uuid import uuid4

from inspect_app.store.vault import blocks, hash_of
from inspect_app.store.vault_disk import Disk
from inspect_app.upkeep.backup_form import PAGE

BEGUN, WORK = "backup.begun", "work.part"
SHARE = 7  # of what is held, one in so many is read again


class Place(Protocol):
    """``work``: a folder for what is made on the way. ``holds``: which of these files ``{name: (size, SHA-256)}`` are
    there already, as far as is known. ``put`` copies one. Everything is its owner's alone."""

    work: Path

    def holds(self, wanted: Mapping[str, tuple[int, str]]) -> set[str]: ...

    def put(self, name: str, source: Path) -> None: ...

    def finish(self, name: str, data: bytes) -> None:
        """Write the last file, which makes the backup one."""

    def close(self) -> None:
        """Take away what was made on the way, and what did not come to its end."""


class FolderPlace:
    """Each file whole or not there at all, and on the disk before the next. ``backup.begun`` names the server's key
    until a first backup is finished, so that one that was cut off is known as ours.

    A file's time says when it was last known to be what it should: when it was written, or read again and found so.
    Each backup reads again the seventh part that was not read for longest, and whatever was touched since the last one:
    a daily backup has read everything within a week, at a seventh of the cost, and rot gets no older."""

    def __init__(self, folder: Path, kid: str, disk: Disk | None = None) -> None:
        self.folder, self.disk, self.named = folder, disk or Disk(), set[str]()
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        folder.chmod(0o700)
        self.work = folder / WORK
        self._write(BEGUN, lambda file: self.disk.write(file, kid.encode("ascii")))
        self.close()
        self.work.mkdir(mode=0o700)

    def holds(self, wanted: Mapping[str, tuple[int, str]]) -> set[str]:
        last = self._time(self.folder / PAGE)
        here = {name: self._time(self.folder / name) for name, (size, _) in wanted.items()
                if (self.folder / name).is_file() and (self.folder / name).stat().st_size == size}  # fmt: skip
        longest = sorted(here, key=lambda name: (here[name], name))[: ceil(len(here) / SHARE)]
        again = {*longest, *(name for name, time in here.items() if time > last)}
        return here.keys() - {name for name in again if not self._sound(self.folder / name, wanted[name][1])}

    def _sound(self, file: Path, sha256: str) -> bool:
        try:
            if hash_of(blocks(file)) != sha256:
                return False
        except OSError:  # a place of the disk that does not read any more
            return False
        os.utime(file)
        return True

    @staticmethod
    def _time(file: Path) -> int:
        return file.stat().st_mtime_ns if file.exists() else 0

    def put(self, name: str, source: Path) -> None:
        def fill(file: BinaryIO) -> None:
            for block in blocks(source):
                self.disk.write(file, block)

        self._write(name, fill)
        self.named.add(name)

    def finish(self, name: str, data: bytes) -> None:
        self._write(name, lambda file: self.disk.write(file, data))
        self.disk.remove(self.folder / BEGUN)
        for old in self.folder.glob("database-*.sqlite3"):  # of the backup before, which this one has replaced
            if old.name not in self.named:
                self.disk.remove(old)

    def close(self) -> None:
        shutil.rmtree(self.work, ignore_errors=True)
        for left in self.folder.glob("*.part"):
            self.disk.remove(left)

    def _write(self, name: str, fill: Callable[[BinaryIO], None]) -> None:
        target = self.folder / name
        folders = [one for one in (target.parent.parent, target.parent) if self.folder in one.parents]
        for folder in folders:
            folder.mkdir(mode=0o700, exist_ok=True)
        temporary = self.folder / f"{uuid4().hex}.part"
        with _private(temporary) as file:
            fill(file)
            self.disk.sync(file)
        self.disk.rename(temporary, target)
        for folder in (*folders, self.folder):
            self.disk.sync_folder(folder)


class FilePlace:
    """One .tar file, under its own name only once it is whole."""

    def __init__(self, file: Path, disk: Disk | None = None) -> None:
        self.file, self.disk = file, disk or Disk()
        file.parent.mkdir(parents=True, exist_ok=True)
        self.work = file.with_name(f"{file.name}.{uuid4().hex}.part")
        self.work.mkdir(mode=0o700)
        # Buffered: a nearly full disk takes a part of an unbuffered write, and the archive would not notice.
        self._out = _private(self.work / file.name, -1)
        self._tar = tarfile.TarFile(fileobj=self._out, mode="w", format=tarfile.PAX_FORMAT)

    def holds(self, wanted: Mapping[str, tuple[int, str]]) -> set[str]:
        return set()

    def put(self, name: str, source: Path) -> None:
        with open(source, "rb") as file:
            self._tar.addfile(_member(name, os.fstat(file.fileno()).st_size), file)

    def finish(self, name: str, data: bytes) -> None:
        self._tar.addfile(_member(name, len(data)), io.BytesIO(data))
        self._tar.close()
        self._out.flush()
        self.disk.sync(self._out)
        self.disk.rename(self.work / self.file.name, self.file)
        self.disk.sync_folder(self.file.parent)

    def close(self) -> None:
        self._out.close()
        shutil.rmtree(self.work, ignore_errors=True)


def _private(file: Path, buffering: int = 0) -> BinaryIO:
    return open(os.open(file, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb", buffering=buffering)


def _member(name: str, size: int) -> tarfile.TarInfo:
    member = tarfile.TarInfo(name)
    member.size, member.mode = size, 0o600
    return member
