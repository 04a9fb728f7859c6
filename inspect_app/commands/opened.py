"""A package as it lies on a disk, opened for reading: a folder or a stored zip. It follows no link, opens nothing but
plain files, and reads in blocks."""

import hashlib
import os
import stat
import zlib
from collections.abc import Iterator
from pathlib import Path
from typing import BinaryIO, NamedTuple, cast

from inspect_app.evidence.package.archive import NoArchive, read_archive
from inspect_app.evidence.package.names import MOST, Strange

BLOCK = 1 << 20
ZIP = b"PK"
PLAIN = os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0)


class Place(NamedTuple):
    """Where the bytes of one file lie: ``size`` of them from ``at`` in the file ``path``; ``crc`` where an archive says
    one."""

    path: str
    at: int
    size: int
    crc: int | None = None

    def blocks(self) -> Iterator[bytes]:
        """Its bytes, a mebibyte at a time. ``OSError`` where it is no plain file, or not of that size."""
        with _opened(self.path) as file:
            if self.crc is None and os.fstat(file.fileno()).st_size != self.size:
                raise OSError(f"{self.path} changes while it is read")
            file.seek(self.at)
            left = self.size
            while left and (block := file.read(min(BLOCK, left))):
                left -= len(block)
                yield block
            if left:
                raise OSError(f"{self.path} ends before its size")

    def read(self, most: int) -> bytes:
        """All of them. ``OSError`` for more than ``most``."""
        if self.size > most:
            raise OSError(f"{self.path} is too large")
        return b"".join(self.blocks())

    def first(self, size: int) -> bytes:
        """So many of them at most. ``OSError``."""
        with _opened(self.path) as file:
            file.seek(self.at)
            return file.read(min(size, self.size))

    def sums(self) -> tuple[str, bool]:
        """SHA-256 in hexadecimal, and whether the CRC-32 is the archive's."""
        hasher, crc = hashlib.sha256(), 0
        for block in self.blocks():
            hasher.update(block)
            crc = zlib.crc32(block, crc) if self.crc is not None else crc
        return hasher.hexdigest(), self.crc in (None, crc)


class Opened(NamedTuple):
    """``places`` of its plain files by name; ``strange``: whatever else stands there; ``archive`` and ``no_archive`` as
    ``evidence.package.verify.Found`` has them."""

    places: dict[str, Place]
    strange: list[Strange]
    archive: list[tuple[str, str]] | None = None
    no_archive: str | None = None


def is_archive(path: Path) -> bool:
    """Whether a plain file begins as a zip does. ``OSError`` when it cannot be read."""
    with _opened(str(path)) as file:
        return file.read(2) == ZIP


def open_folder(folder: Path) -> Opened:
    """``OSError`` when the folder itself cannot be read."""
    places: dict[str, Place] = {}
    strange: list[Strange] = []
    waiting, seen = [(str(folder), "")], 0
    while waiting:
        path, before = waiting.pop()
        with os.scandir(path) as inside:
            for one in sorted(inside, key=lambda one: one.name):
                # A name of a disk may be no text: such a one is none of ours, and is shown with its bytes.
                name = before + os.fsencode(one.name).decode("utf-8", "backslashreplace")
                if (seen := seen + 1) > MOST:
                    raise OSError(f"{folder} holds more than {MOST} files and folders")
                if one.is_symlink():
                    strange.append(Strange(name, "link"))
                elif one.is_dir(follow_symlinks=False):
                    waiting.append((one.path, f"{name}/"))
                elif one.is_file(follow_symlinks=False):
                    places[name] = Place(one.path, 0, one.stat(follow_symlinks=False).st_size)
                else:
                    strange.append(Strange(name, "special"))
    return Opened(places, strange)


def open_archive(path: Path) -> Opened:
    """``OSError`` when the file itself cannot be read; what is wrong with it as an archive is told in it."""
    with _opened(str(path)) as file:

        def read(at: int, size: int) -> bytes:
            file.seek(at)
            return file.read(size)

        try:
            members, faults = read_archive(os.fstat(file.fileno()).st_size, read)
        except NoArchive as none:
            return Opened({}, [], [], str(none))
    return Opened({one.name: Place(str(path), one.at, one.size, one.crc) for one in members}, [], faults)


def _opened(path: str) -> BinaryIO:
    descriptor = os.open(path, PLAIN)
    try:
        if not stat.S_ISREG(os.fstat(descriptor).st_mode):
            raise OSError(f"{path} is no plain file")
        return cast(BinaryIO, os.fdopen(descriptor, "rb", buffering=0))
    except BaseException:
        os.close(descriptor)
        raise
