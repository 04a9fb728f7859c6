"""The archive of a package: a zip whose members are stored, read in the one form in which every reader sees the same.

By PKWARE's application note 6.3.10 (sections 4.3 to 4.5). A common reader goes by the directory at the end and passes
over what stands before, between and inside the members, so that two readers may see two archives. Here the members lie
one after the other from the first byte, nothing stands between them, each header says what the directory says, and only
plain storing is read: nothing can unpack to more than the file itself. Whoever packed a package anew by another program
unpacks it and has the folder verified.
"""

import re
from collections.abc import Callable
from typing import NamedTuple

from inspect_app.evidence.package.names import MOST

Read = Callable[[int, int], bytes]  # (at, size): fewer bytes at the end of the file

LOCAL, CENTRAL, END = b"PK\x03\x04", b"PK\x01\x02", b"PK\x05\x06"
END64, LOCATOR, DESCRIPTOR = b"PK\x06\x06", b"PK\x06\x07", b"PK\x07\x08"
SIZE64, ALL16, ALL32 = 1, 0xFFFF, 0xFFFFFFFF
AFTERWARDS, UTF8 = 1 << 3, 1 << 11  # the CRC follows the bytes; the name is UTF-8
HEADER = "header"
MADE_BY = (45, 3 << 8 | 45)  # whoever writes the 64-bit record has version 4.5; 3 is Unix
LONGEST_LIST = 64 * 1024**2
FOLDER = re.compile(rb"[A-Za-z0-9][A-Za-z0-9._ ()-]{0,199}")  # leads nowhere when it is unpacked


class NoArchive(Exception):
    """It has no directory that reads; ``args[0]``: a code."""


class Member(NamedTuple):
    """``name`` below the archive's one folder; its bytes lie at ``at``, ``size`` of them, with that CRC-32."""

    name: str
    at: int
    size: int
    crc: int


class Row(NamedTuple):
    """A row of the directory."""

    name: bytes
    made_by: int
    needs: int
    flags: int
    method: int
    time: int
    crc: int
    packed: int
    size: int
    attributes: bytes
    offset: int


def read_archive(size: int, read: Read) -> tuple[list[Member], list[tuple[str, str]]]:
    """``(members, [(name, fault)])`` of a file of that size. Faults: ``repeated`` (a name twice), ``packed`` (not
    stored), ``header`` (it says other than the directory), ``between`` (bytes that belong to no member), ``uneven``
    (rows of different makers), ``folder`` (no one folder around all, or one that leads elsewhere). Raises
    ``NoArchive``."""
    start, length, count = _end(size, read)
    rows = _rows(read(start, length), count)
    if not rows:
        raise NoArchive("empty")
    faults: list[tuple[str, str]] = []
    members: dict[str, Member] = {}
    folder = rows[0].name.partition(b"/")[0]
    ends = [*(row.offset for row in rows[1:]), start]
    if not FOLDER.fullmatch(folder):
        faults.append((folder.decode("utf-8", "backslashreplace"), "folder"))
    if rows[0].offset != 0:
        faults.append(("", "between"))
    for row, end in zip(rows, ends, strict=True):
        shown = row.name.decode("utf-8", "backslashreplace")
        name = shown.partition("/")[2]
        if row.name.partition(b"/")[0] != folder or not name:
            faults.append((shown, "folder"))
        elif name in members:
            faults.append((name, "repeated"))
        elif row.method != 0 or row.packed != row.size or row.flags & ~(AFTERWARDS | UTF8):
            faults.append((name, "packed"))
        else:
            at, fault = _place(row, end, read)
            faults += [(name, fault)] if fault else []
            if at is not None:
                members[name] = Member(name, at, row.size, row.crc)
            if (row.made_by, row.attributes) != (rows[0].made_by, rows[0].attributes):
                faults.append((name, "uneven"))
    return list(members.values()), faults


def _int(data: bytes, at: int, size: int) -> int:
    return int.from_bytes(data[at : at + size], "little")


def _end(size: int, read: Read) -> tuple[int, int, int]:
    """``(start, length, count)`` of the directory, which ends where the closing records begin."""
    tail = read(max(0, size - 98), 98)
    last = tail[-22:]
    if len(last) != 22 or last[:4] != END or last[20:] != b"\0\0" or _int(last, 4, 4) != 0:
        raise NoArchive("no_end")
    count, length, start = _int(last, 10, 2), _int(last, 12, 4), _int(last, 16, 4)
    if _int(last, 8, 2) != count:
        raise NoArchive("end_differs")
    closing = size - 22
    if tail[-42:-38] == LOCATOR:
        start, length, count = _end64(tail, size, (start, length, count))
        closing = size - 98
    if start + length != closing or count > MOST or length > LONGEST_LIST:
        raise NoArchive("end_differs")
    return start, length, count


def _end64(tail: bytes, size: int, small: tuple[int, int, int]) -> tuple[int, int, int]:
    record, locator = tail[-98:-42], tail[-42:-22]
    if len(record) != 56 or record[:4] != END64 or _int(record, 4, 8) != 44 or _int(record, 16, 8) != 0:
        raise NoArchive("end_differs")
    if (_int(locator, 4, 4), _int(locator, 8, 8), _int(locator, 16, 4)) != (0, size - 98, 1):
        raise NoArchive("end_differs")
    count, length, start = _int(record, 32, 8), _int(record, 40, 8), _int(record, 48, 8)
    if _int(record, 24, 8) != count or _int(record, 14, 2) != 45 or _int(record, 12, 2) not in MADE_BY:
        raise NoArchive("end_differs")
    for told, true, full in zip(small, (start, length, count), (ALL32, ALL32, ALL16), strict=True):
        if told not in (true, full) or (told == true == full):
            raise NoArchive("end_differs")
    return start, length, count


def _rows(data: bytes, count: int) -> list[Row]:
    rows = []
    at = 0
    for _ in range(count):
        head = data[at : at + 46]
        if len(head) != 46 or head[:4] != CENTRAL or _int(head, 32, 4) != 0:  # no comment, one disk
            raise NoArchive("directory")
        length, further = _int(head, 28, 2), _int(head, 30, 2)
        name, extra = data[at + 46 : at + 46 + length], data[at + 46 + length : at + 46 + length + further]
        if len(name) != length or len(extra) != further:
            raise NoArchive("directory")
        small = [_int(head, 24, 4), _int(head, 20, 4), _int(head, 42, 4)]
        full = _extended(extra, small)
        if full is None:
            raise NoArchive("directory")
        rows.append(Row(name, _int(head, 4, 2), _int(head, 6, 2), _int(head, 8, 2), _int(head, 10, 2),
                        _int(head, 12, 4), _int(head, 16, 4), full[1], full[0], head[36:42], full[2]))  # fmt: skip
        at += 46 + length + further
    if at != len(data):
        raise NoArchive("directory")
    return rows


def _extended(extra: bytes, small: list[int]) -> list[int] | None:
    """The numbers with their 64-bit ones in place of all ones (4.5.3); None for any other extra field."""
    wanted = [at for at, value in enumerate(small) if value == ALL32]
    if not extra and not wanted:
        return small
    if extra[:4] != SIZE64.to_bytes(2, "little") + (8 * len(wanted)).to_bytes(2, "little"):
        return None
    if len(extra) != 4 + 8 * len(wanted):
        return None
    for n, at in enumerate(wanted):
        small[at] = _int(extra, 4 + 8 * n, 8)
    return small


def _place(row: Row, end: int, read: Read) -> tuple[int | None, str | None]:
    """``(where the member's bytes begin, fault)``."""
    if not row.offset < end:
        return None, "between"
    head = read(row.offset, 30)
    if len(head) != 30 or head[:4] != LOCAL:
        return None, HEADER
    length, further = _int(head, 26, 2), _int(head, 28, 2)
    rest = read(row.offset + 30, length + further)
    at = row.offset + 30 + length + further
    later = bool(row.flags & AFTERWARDS)
    small = [_int(head, 22, 4), _int(head, 18, 4)]
    wide = bool(rest[length:])
    sizes = _extended(rest[length:], small)
    told = [0, 0] if later else [row.size, row.packed]
    same = (
        rest[:length] == row.name
        and (_int(head, 6, 2), _int(head, 8, 2)) == (row.flags, row.method)
        and (_int(head, 4, 2), row.needs) in ((20, 20), (45, 45), (20, 45))  # the last: it only lies far out
        and _int(head, 10, 4) == row.time
        and _int(head, 14, 4) == (0 if later else row.crc)
        and sizes in (told, [row.size, row.packed])
    )
    behind = read(at + row.size, end - at - row.size) if 0 <= end - at - row.size <= 24 else b"?" * 25
    if behind != (_descriptor(row, wide) if later else b""):
        return at, HEADER if later and len(behind) <= 24 else "between"
    return at, None if same else HEADER


def _descriptor(row: Row, wide: bool) -> bytes:
    size = 8 if wide else 4
    return (DESCRIPTOR + row.crc.to_bytes(4, "little") + row.packed.to_bytes(size, "little")
            + row.size.to_bytes(size, "little"))  # fmt: skip
