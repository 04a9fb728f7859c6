"""One file of a package: its name below the bag, what it holds, and where its bytes lie until they are written."""

from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from inspect_app.package.sheet import Span
from inspect_app.store.vault import BLOCK


class Member(NamedTuple):
    """``size`` in bytes and ``sha256`` (hexadecimal) are known beforehand, of a photo from its intake; ``source`` is a
    file of the data folder or a text of the package's own sheet."""

    name: str
    size: int
    sha256: str
    source: Path | Span

    def blocks(self, start: int = 0, block: int = BLOCK) -> Iterator[bytes]:
        """Its bytes from ``start`` on. ``OSError`` when they cannot be had, or are fewer or more than its size."""
        if isinstance(self.source, Span):
            yield from self.source.blocks(start, block)
            return
        with open(self.source, "rb", buffering=0) as file:
            file.seek(start)
            left = self.size - start
            while left > 0 and (read := file.read(min(block, left))):
                left -= len(read)
                yield read
            if left or file.read(1):
                raise OSError(f"{self.source} is not of {self.size} bytes any more")
