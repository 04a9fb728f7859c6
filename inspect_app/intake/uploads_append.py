"""Move a request's body onto the disk, block by block, keeping what came when the connection breaks."""

import hashlib
import tempfile
from collections.abc import Iterator
from typing import IO, Protocol

from inspect_app.intake.uploads_metadata import Checksum
from inspect_app.intake.uploads_place import Place
from inspect_app.intake.uploads_refused import UploadRefused

READ = 64 * 1024
BLOCK = 1 << 20  # what is kept in memory, and written between two fsyncs


class Stream(Protocol):
    """A request's body: at most ``size`` bytes, none at its end; raises when the connection breaks."""

    def read(self, size: int, /) -> bytes: ...


def append(
    place: Place, token: str, offset: int, length: int, stream: Stream, checksum: Checksum | None
) -> int:
    """Append the body at ``offset``; returns the offset reached. ``UploadRefused`` for ``upload_checksum_wrong``
    (nothing is kept), ``upload_beyond_length`` and ``upload_overtaken`` (a newer request has taken over); whatever
    ``stream`` raises passes through after its bytes so far are safe."""
    if checksum is None:
        return _append(place, token, offset, length, stream)
    with tempfile.SpooledTemporaryFile(max_size=BLOCK, dir=str(place.folder)) as held:
        hasher = hashlib.new(checksum.algorithm)
        size = 0
        while data := stream.read(READ):
            size += len(data)
            if offset + size > length:
                raise UploadRefused("upload_beyond_length", "Upload-Offset", offset + size, length=length)
            hasher.update(data)
            held.write(data)
        if hasher.digest() != checksum.digest:
            declared, found = checksum.digest.hex(), hasher.hexdigest()
            raise UploadRefused("upload_checksum_wrong", "Upload-Checksum", found, declared=declared, found=found)
        held.seek(0)
        return _append(place, token, offset, length, _Reading(held))


def _append(place: Place, token: str, offset: int, length: int, stream: Stream) -> int:
    for block in _blocks(stream):
        if offset + len(block) > length:
            raise UploadRefused("upload_beyond_length", "Upload-Offset", offset + len(block), length=length)
        offset = place.append(token, offset, block)
    return offset


def _blocks(stream: Stream) -> Iterator[bytes]:
    """Blocks as large as may be; what came before a break is given before the break is raised."""
    held = bytearray()
    while True:
        try:
            data = stream.read(READ)
        except Exception:
            if held:
                yield bytes(held)
            raise
        held += data
        if held and (not data or len(held) >= BLOCK):
            yield bytes(held)
            held.clear()
        if not data:
            return


class _Reading:
    def __init__(self, file: IO[bytes]) -> None:
        self.file = file

    def read(self, size: int, /) -> bytes:
        return self.file.read(size)
