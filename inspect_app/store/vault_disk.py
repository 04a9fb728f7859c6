"""The few disk operations whose order is the durability promise; a test's disk can fail at any of them."""

import os
from pathlib import Path
from typing import BinaryIO

try:
    from fcntl import F_FULLFSYNC, fcntl  # type: ignore[attr-defined]
except ImportError:  # only macOS has it: there a plain fsync stops at the drive's own cache
    F_FULLFSYNC = None


class Disk:
    """The real disk. Every method raises ``OSError`` when the disk is full or failing."""

    def create(self, path: Path) -> BinaryIO:
        """A new file for writing; ``FileExistsError`` where there is one."""
        return open(path, "xb", buffering=0)

    def reopen(self, path: Path) -> BinaryIO:
        """An existing file for writing, as it stands."""
        return open(path, "r+b", buffering=0)

    def write(self, file: BinaryIO, data: bytes) -> None:
        """Write all of it: a nearly full disk takes a part first, and says so only at the next call."""
        rest = memoryview(data)
        while rest:
            rest = rest[file.write(rest) :]

    def sync(self, file: BinaryIO) -> None:
        """Return only when the file's bytes are on the disk."""
        if F_FULLFSYNC is not None:
            fcntl(file.fileno(), F_FULLFSYNC)
        else:
            os.fsync(file.fileno())

    def cut(self, file: BinaryIO, size: int) -> None:
        """Take back everything after ``size`` bytes."""
        file.truncate(size)

    def link(self, source: Path, target: Path) -> None:
        """A second name for the same bytes; never replaces ``target``."""
        os.link(source, target)

    def rename(self, source: Path, target: Path) -> None:
        """Give a file its final name, in one step."""
        os.replace(source, target)

    def remove(self, path: Path) -> None:
        """Remove a name; nothing when it is not there."""
        path.unlink(missing_ok=True)

    def sync_folder(self, folder: Path) -> None:
        """Make new and changed names in ``folder`` survive a power cut (Windows does it by itself)."""
        if os.name == "nt":
            return
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)
