"""A package as a zip file that nobody has to write anywhere: its length and the place of each byte are known at once.

So a download has an exact length, can be gone on with at any byte after a link broke, and takes no room on the disk.
Photos are pressed already: storing them as they are is as small, and costs no more than reading them.
"""

from bisect import bisect_right
from collections.abc import Iterator

from inspect_app.package.bag import Bag
from inspect_app.package.zip_form import Entry, central_header, descriptor, dos_time, end, local_header

try:
    from isal.isal_zlib import crc32
except ImportError:  # a machine that the library is not built for: the same, slower
    from zlib import crc32

BLOCK = 128 * 1024  # bytes read at once: what has just been read is summed up while it is still in the processor


class StoredZip:
    """``size`` in bytes. ``blocks`` may be asked for again and again, from any byte; the CRC-32 of what has been read
    is remembered, what was passed over is read for it when the directory is due."""

    def __init__(self, bag: Bag) -> None:
        self.members = bag.members
        self._moment = dos_time(bag.made)
        self._entries: list[Entry] = []
        at = 0
        for one in self.members:
            entry = Entry(f"{bag.name}/{one.name}".encode("ascii"), one.size, at)
            self._entries.append(entry)
            at += len(local_header(entry, self._moment)) + one.size + len(descriptor(entry, 0))
        self._starts = [one.at for one in self._entries]
        self._directory_at = at
        self._crcs: dict[int, int] = {}
        self.size = at + len(self._directory([0] * len(self._entries)))

    def blocks(self, start: int = 0) -> Iterator[bytes]:
        """Its bytes from ``start`` on. ``OSError`` when a file has gone or changed its length meanwhile: what was given
        by then is told from a whole zip file by its length."""
        if start < self._directory_at:
            first = bisect_right(self._starts, start) - 1
            for index in range(first, len(self._entries)):
                yield from self._one(index, max(start - self._starts[index], 0))
        directory = self._directory([self._crc(index) for index in range(len(self._entries))])
        if rest := directory[max(start - self._directory_at, 0) :]:
            yield rest

    def _one(self, index: int, skip: int) -> Iterator[bytes]:
        """The header, bytes and descriptor of a member, without the first ``skip`` bytes of them all."""
        entry = self._entries[index]
        header = local_header(entry, self._moment)
        if skip < len(header):
            yield header[skip:]
        begin = max(skip - len(header), 0)
        if begin < entry.size:
            crc = 0
            for block in self.members[index].blocks(begin, BLOCK):
                crc = crc32(block, crc)
                yield block
            if begin == 0:
                self._crcs[index] = crc
        yield descriptor(entry, self._crc(index))[max(begin - entry.size, 0) :]

    def _crc(self, index: int) -> int:
        if index not in self._crcs:
            crc = 0
            for block in self.members[index].blocks(0, BLOCK) if self._entries[index].size else ():
                crc = crc32(block, crc)
            self._crcs[index] = crc
        return self._crcs[index]

    def _directory(self, crcs: list[int]) -> bytes:
        directory = b"".join(map(central_header, self._entries, crcs, [self._moment] * len(crcs)))
        return directory + end(len(crcs), len(directory), self._directory_at)
