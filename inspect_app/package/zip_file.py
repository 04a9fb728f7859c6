"""A part of a stored zip as an open file to read, for servers that send files by themselves: a slow link then holds
none of their threads."""

import io
from collections.abc import Iterator

from inspect_app.package.stored_zip import StoredZip


class ZipFile(io.RawIOBase):
    """The bytes from ``start`` up to ``stop``. It stands at ``start`` and ends at ``stop``, counted from the beginning
    of the whole. A server that could send a part only of what it read goes back a little and reads it again: what was
    read last is kept for that."""

    def __init__(self, zip: StoredZip, start: int, stop: int) -> None:
        super().__init__()
        self._zip, self._at, self._stop = zip, start, stop
        self._kept, self._kept_at = b"", start
        self._coming: Iterator[bytes] = zip.blocks(start)

    def readable(self) -> bool:
        return True

    def seekable(self) -> bool:
        return True

    def tell(self) -> int:
        return self._at

    def seek(self, offset: int, whence: int = io.SEEK_SET) -> int:
        self._at = offset + {io.SEEK_SET: 0, io.SEEK_CUR: self._at, io.SEEK_END: self._stop}[whence]
        return self._at

    def read(self, size: int = -1) -> bytes:
        """Some bytes, at most ``size``; none at the end. Raises what ``StoredZip.blocks`` raises."""
        left = max(self._stop - self._at, 0)
        size = left if size is None or size < 0 else min(size, left)
        if not self._kept_at <= self._at <= self._kept_at + len(self._kept):
            self._kept, self._kept_at, self._coming = b"", self._at, self._zip.blocks(self._at)
        while size and self._at == self._kept_at + len(self._kept):
            self._kept_at += len(self._kept)
            self._kept = next(self._coming)
        skip = self._at - self._kept_at
        data = self._kept[skip : skip + size]
        self._at += len(data)
        return data
