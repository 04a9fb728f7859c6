"""Where a picture's own bytes end, read from its structure without decoding.

A truncated picture has no end; a ZIP glued behind it lies after the end. Many phones append data of their own
(a second view, a short film), so bytes after the end are a fact to show, never a reason to refuse.
"""

import re

# In JPEG scan data 0xFF is followed by 0x00, or by a restart marker; anything else is the next segment.
NEXT_MARKER = re.compile(rb"\xff[^\x00\xd0-\xd7\xff]", re.DOTALL)
ALONE = {0x01, *range(0xD0, 0xD8)}


def picture_end(data: bytes, kind: str) -> int | None:
    """Offset just after the picture, or None when it stops before its end. ``kind`` is ``image/jpeg``,
    ``image/png``, ``image/webp`` or ``image/heic``. Structures: ITU-T T.81 B.1, PNG (ISO/IEC 15948) 5.3,
    RIFF of WebP (RFC 9649) 2.4, ISO/IEC 14496-12 boxes."""
    return {"image/jpeg": _jpeg, "image/png": _png, "image/webp": _webp, "image/heic": _heic}[kind](data)


def _jpeg(data: bytes) -> int | None:
    at = 2
    while at + 2 <= len(data):
        if data[at] != 0xFF:
            return None
        marker = data[at + 1]
        if marker == 0xFF:  # a fill byte
            at += 1
        elif marker == 0xD9:
            return at + 2
        elif marker in ALONE:
            at += 2
        else:
            at += 2 + max(2, int.from_bytes(data[at + 2 : at + 4], "big"))
            if marker == 0xDA:
                found = NEXT_MARKER.search(data, at)
                if found is None:
                    return None
                at = found.start()
    return None


def _png(data: bytes) -> int | None:
    at = 8
    while at + 12 <= len(data):
        after = at + 12 + int.from_bytes(data[at : at + 4], "big")
        if data[at + 4 : at + 8] == b"IEND":
            return after if after <= len(data) else None
        at = after
    return None


def _webp(data: bytes) -> int | None:
    size = int.from_bytes(data[4:8], "little")
    after = 8 + size + size % 2
    return after if after <= len(data) else None


def _heic(data: bytes) -> int | None:
    at = 0
    while at + 8 <= len(data):
        size, name = int.from_bytes(data[at : at + 4], "big"), data[at + 4 : at + 8]
        if not re.fullmatch(rb"[ -~]{4}", name):
            break  # what follows is not a box: the picture ended here
        if size == 1:
            size = int.from_bytes(data[at + 8 : at + 16], "big")
        elif size == 0:
            return len(data)
        if size < 8:
            break
        if at + size > len(data):
            return None
        at += size
    return at
