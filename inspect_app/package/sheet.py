"""The texts of a package, one after the other in an unnamed file: a job of any length is held on the disk, not in the
memory, for as long as somebody downloads it. The file goes with the last who holds it."""

import hashlib
import tempfile
from collections.abc import Iterator
from pathlib import Path
from threading import Lock
from typing import NamedTuple


class Sheet:
    """Texts are written once and read by any thread."""

    def __init__(self, folder: Path) -> None:
        """``folder``: where there is room. Raises ``OSError``."""
        self._file = tempfile.TemporaryFile(dir=folder)  # noqa: SIM115
        self._lock = Lock()
        self._end = 0

    def write(self, text: bytes) -> "Span":
        """Raises ``OSError`` when the disk is full."""
        with self._lock:
            self._file.seek(self._end)
            self._file.write(text)
            span = Span(self, self._end, len(text), hashlib.sha256(text).hexdigest())
            self._end += len(text)
            return span

    def read(self, at: int, size: int) -> bytes:
        with self._lock:
            self._file.seek(at)
            return self._file.read(size)


class Span(NamedTuple):
    """A text of a sheet; ``sha256`` in hexadecimal."""

    sheet: Sheet
    at: int
    size: int
    sha256: str

    def blocks(self, start: int, block: int) -> Iterator[bytes]:
        """Its bytes from ``start`` on."""
        for at in range(start, self.size, block):
            yield self.sheet.read(self.at + at, min(block, self.size - at))
