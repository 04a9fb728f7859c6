"""The one stretch of a signed PDF that its signature cannot cover: the signature itself.

A PDF signature covers two byte ranges; between them stands ``<`` hexadecimal digits ``>`` with the container,
padded with zeros. Nothing covers that stretch, so a changed zero, or a digit in the other case, goes unseen
by a
reader that only computes the digest. Here only one form is taken: digits with all their letters in one
case, the
DER container, and nothing but zeros after it.
"""

import re
from collections.abc import Sequence

HEXADECIMAL = re.compile(rb"[0-9a-f]*|[0-9A-F]*")


def hole(data: bytes, ranges: Sequence[int]) -> tuple[bytes | None, str | None]:
    """``(container as DER, None)``, or ``(None, reason)``: ``bad_ranges``, ``not_hexadecimal``,
    ``bad_container``, ``padding_not_zero``. ``ranges``: the four numbers of ``/ByteRange``."""
    if len(ranges) != 4 or any(
        isinstance(one, bool) or not isinstance(one, int) or one < 0 for one in ranges
    ):
        return None, "bad_ranges"
    start, first, second, rest = ranges
    if start != 0 or not first < second <= second + rest <= len(data):
        return None, "bad_ranges"
    text = data[first:second]
    if (
        len(text) < 4
        or len(text) % 2
        or text[:1] != b"<"
        or text[-1:] != b">"
        or not HEXADECIMAL.fullmatch(text[1:-1])
    ):
        return None, "not_hexadecimal"
    raw = bytes.fromhex(text[1:-1].decode("ascii"))
    length = der_length(raw)
    if length is None:
        return None, "bad_container"
    if any(raw[length:]):
        return None, "padding_not_zero"
    return raw[:length], None


def der_length(raw: bytes) -> int | None:
    """How many bytes the DER sequence at the start takes, None when there is none that fits."""
    if len(raw) < 2 or raw[0] != 0x30:
        return None
    first = raw[1]
    if first < 0x80:
        end = 2 + first
    else:
        count = first & 0x7F
        if not 1 <= count <= 4 or len(raw) < 2 + count or raw[2] == 0:
            return None
        end = 2 + count + int.from_bytes(raw[2 : 2 + count], "big")
        if int.from_bytes(raw[2 : 2 + count], "big") < 0x80:
            return None  # DER: the short form where it fits
    return end if end <= len(raw) else None
