"""The records of a zip file that holds its members as they are (PKWARE APPNOTE 6.3.10, method 0, Zip64 where needed).

A member's CRC-32 is not known before its bytes have been read once, so it stands behind them in a data descriptor
(general purpose bit 3, section 4.4.4), and in the central directory, where readers look for it.
"""

import struct
from datetime import UTC, datetime
from typing import NamedTuple

MOST = 0xFFFFFFFF  # of a 32-bit field; the value itself says "look into the Zip64 field"
MOST_MEMBERS = 0xFFFF
STORED, ZIP64 = 20, 45  # version needed to extract: 2.0, 4.5
UNIX = 3 << 8
MODE = 0o100644 << 16  # a plain file, read by all, written by its owner
AFTER = 1 << 3  # CRC-32 and sizes follow the bytes


class Entry(NamedTuple):
    """One member: ``name`` in ASCII, ``size`` of its bytes, ``at`` the offset of its local header."""

    name: bytes
    size: int
    at: int

    @property
    def wide(self) -> bool:
        """Whether its size wants Zip64."""
        return self.size >= MOST


def local_header(one: Entry, moment: bytes) -> bytes:
    """What stands before a member's bytes (4.3.7). ``moment``: of ``dos_time``."""
    sizes, extra = (MOST, struct.pack("<HHQQ", 1, 16, 0, 0)) if one.wide else (0, b"")
    fixed = struct.pack("<4sHHH4sLLLHH", b"PK\3\4", ZIP64 if one.wide else STORED, AFTER, 0, moment, 0,
                        sizes, sizes, len(one.name), len(extra))  # fmt: skip
    return fixed + one.name + extra


def descriptor(one: Entry, crc: int) -> bytes:
    """What stands behind them (4.3.9)."""
    return struct.pack("<4sLQQ" if one.wide else "<4sLLL", b"PK\7\x08", crc, one.size, one.size)


def central_header(one: Entry, crc: int, moment: bytes) -> bytes:
    """A member's line in the central directory (4.3.12); what wants Zip64 stands in its field (4.5.3)."""
    wide = ([one.size, one.size] if one.wide else []) + ([one.at] if one.at >= MOST else [])
    extra = struct.pack(f"<HH{len(wide)}Q", 1, 8 * len(wide), *wide) if wide else b""
    size, version = min(one.size, MOST), ZIP64 if wide else STORED
    fixed = struct.pack("<4sHHHH4sLLLHHHHHLL", b"PK\1\2", UNIX | ZIP64, version, AFTER, 0, moment, crc, size, size,
                        len(one.name), len(extra), 0, 0, 0, MODE, min(one.at, MOST))  # fmt: skip
    return fixed + one.name + extra


def end(count: int, size: int, at: int) -> bytes:
    """The end of a central directory of so many members, of ``size`` bytes, at ``at`` (4.3.14 to 4.3.16)."""
    wide = b""
    if count >= MOST_MEMBERS or size >= MOST or at >= MOST:
        wide = struct.pack("<4sQHHLLQQQQ", b"PK\6\6", 44, UNIX | ZIP64, ZIP64, 0, 0, count, count, size, at)
        wide += struct.pack("<4sLQL", b"PK\6\7", 0, at + size, 1)
    few = min(count, MOST_MEMBERS)
    return wide + struct.pack("<4sHHHHLLH", b"PK\5\6", 0, 0, few, few, min(size, MOST), min(at, MOST), 0)


def dos_time(moment: datetime) -> bytes:
    """Time and date as MS-DOS has them (4.4.6), here in UTC, from 1980 to 2107, to two seconds."""
    utc = moment.astimezone(UTC)
    year = min(max(utc.year - 1980, 0), 127)
    return struct.pack("<HH", utc.hour << 11 | utc.minute << 5 | utc.second // 2, year << 9 | utc.month << 5 | utc.day)
