"""Read a saved copy member by member, as a stream, believing nothing of it.

The file is a POSIX ustar archive (IEEE Std 1003.1-2017, pax, "ustar Interchange Format") of plain files and nothing
else. The standard library's reader follows links, extensions and other dialects, and gives up at the first damaged
header; here a damaged block costs what stands in it and no more: reading goes on at the next block that is a header.
No name ever becomes a path, so that there is nothing to escape from.
"""

import re
from collections.abc import Iterator
from typing import NamedTuple, Protocol

BLOCK = 512
READ = 128 * BLOCK
MAGIC = b"ustar\x0000"
OCTAL = re.compile(rb"([0-7]{11})[\0 ]")
CHECKSUM = re.compile(rb"([0-7]{6})\0 ")
PLAIN = b"0"
KINDS = (  # what a member may be called, and its most bytes
    ("manifest", re.compile(r"manifest\.json"), 8 * 1024 * 1024),
    ("seal", re.compile(r"seals/(?P<name>[A-Za-z0-9_-]{43})"), 64 * 1024),
    ("entry", re.compile(r"entries/(?P<name>[A-Za-z0-9_-]{43})"), 64 * 1024),
    ("photo", re.compile(
        r"photos/(?P<job>[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12})/(?P<name>[0-9a-f]{64})"
    ), 64 * 1024 * 1024),
)  # fmt: skip


class Stream(Protocol):
    """Bytes from beginning to end: at most ``size`` of them, none at the end."""

    def read(self, size: int, /) -> bytes: ...


class Damage(NamedTuple):
    """What is wrong with the file itself, at which byte. ``code``: ``not_a_header``, ``not_ours`` (a link, a folder, a
    name that no copy has, more bytes than such a member may have; ``value`` says which), ``padding``, ``cut``,
    ``twice``, ``after_end``, ``no_end``; found later, with no place: ``list`` (it cannot be read; which field) and
    ``spoiled`` (a photo that the server has already, and has whole)."""

    code: str
    at: int
    value: str = ""


class Member:
    """One file of the archive. ``what``: ``manifest`` ``seal`` ``entry`` ``photo``; ``name`` and ``job`` from its path.
    ``blocks()`` gives its bytes once, while it is the latest one read; after that ``cut`` tells whether the archive
    ended within it."""

    def __init__(self, what: str, name: str, job: str, size: int, source: "_Source") -> None:
        self.what, self.name, self.job, self.size = what, name, job, size
        self.cut, self._left, self._source = False, size, source

    def blocks(self) -> Iterator[bytes]:
        while self._left and not self.cut:
            data = self._source.take(min(self._left, READ))
            self._left -= len(data)
            self.cut = not data
            if data:
                yield data

    def whole(self) -> bytes:
        return b"".join(self.blocks())


class _Source:
    """A stream read in exact amounts; ``at``: the bytes taken so far."""

    def __init__(self, stream: Stream) -> None:
        self.stream, self.at = stream, 0

    def take(self, size: int) -> bytes:
        """So many bytes; fewer only at the end."""
        held = b""
        while len(held) < size and (data := self.stream.read(size - len(held))):
            held += data
        self.at += len(held)
        return held


def members(stream: Stream) -> Iterator[Member | Damage]:
    """Everything in it, in its order; a member that was not read by then is passed over."""
    source, seen = _Source(stream), set()
    zeros, lost = 0, False
    while block := source.take(BLOCK):
        at = source.at - len(block)
        if block == bytes(BLOCK):
            zeros, lost = zeros + 1, False
            continue
        found = _header(block)
        if zeros and not lost:
            yield Damage("after_end", at)
        zeros = 0
        if found is None:
            if not lost:
                yield Damage("not_a_header", at)
            lost = True
            continue
        lost = False
        path, size, plain = found
        member = _member(path, size, source) if plain else None
        if member is None:
            yield Damage("not_ours", at, path[:120])  # its bytes, if there are any, are looked at as headers are
            continue
        if path in seen:
            yield Damage("twice", at, path)
        else:
            seen.add(path)
            yield member
        yield from _rest(member, source)
    if zeros < 2:
        yield Damage("no_end", source.at)


def _rest(member: Member, source: _Source) -> Iterator[Damage]:
    for _ in member.blocks():
        pass
    padding = source.take(-member.size % BLOCK)
    if member.cut or len(padding) < -member.size % BLOCK:
        yield Damage("cut", source.at, member.name)
    elif padding.strip(b"\0"):
        yield Damage("padding", source.at - len(padding), member.name)


def _header(block: bytes) -> tuple[str, int, bool] | None:
    """``(path, size, whether it is a plain file)`` of a sound header; None for any other block."""
    if len(block) < BLOCK or block[257:265] != MAGIC:
        return None
    told, size = CHECKSUM.fullmatch(block[148:156]), OCTAL.fullmatch(block[124:136])
    if told is None or size is None:
        return None
    if sum(block[:148]) + 8 * 32 + sum(block[156:]) != int(told[1], 8):
        return None
    name, prefix = (part.split(b"\0")[0].decode("ascii", "replace") for part in (block[:100], block[345:500]))
    return (f"{prefix}/{name}" if prefix else name), int(size[1], 8), block[156:157] == PLAIN


def _member(path: str, size: int, source: _Source) -> Member | None:
    for what, shape, most in KINDS:
        if found := shape.fullmatch(path):
            parts = found.groupdict()
            return Member(what, parts.get("name", ""), parts.get("job", ""), size, source) if size <= most else None
    return None
