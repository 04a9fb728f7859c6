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

from inspect_app.evidence.der import der_length

HEXADECIMAL = re.compile(rb"[0-9a-f]*|[0-9A-F]*")


def hole(data: bytes, ranges: Sequence[int]) -> tuple[bytes | None, str | None]:
    """``(container as DER, None)``, or ``(None, reason)``: ``bad_ranges``, ``not_hexadecimal``,
    ``bad_container``, ``padding_not_zero``. ``ranges``: the four numbers of ``/ByteRange``."""
    if len(ranges) != 4 or any(isinstance(one, bool) or not isinstance(one, int) or one < 0 for one in ranges):
        return None, "bad_ranges"
    start, first, second, rest = ranges
    if start != 0 or not first < second <= second + rest <= len(data):
        return None, "bad_ranges"
    text = data[first:second]
    if len(text) < 4 or len(text) % 2 or text[:1] != b"<" or text[-1:] != b">" or not HEXADECIMAL.fullmatch(text[1:-1]):
        return None, "not_hexadecimal"
    raw = bytes.fromhex(text[1:-1].decode("ascii"))
    length = der_length(raw)
    if length is None:
        return None, "bad_container"
    if any(raw[length:]):
        return None, "padding_not_zero"
    return raw[:length], None
