"""What kind of picture bytes are, whatever anybody says of them."""

import re

FIRST = 32  # bytes that tell
# ITU-T T.81 B.1.1.3 with the marker that follows, ISO/IEC 15948 5.2, RFC 9649 2.4, ISO/IEC 23008-12 annex B.
SIGNATURE = re.compile(
    rb"(?P<jpeg>\xff\xd8\xff)|(?P<png>\x89PNG\r\n\x1a\n)|(?P<webp>RIFF....WEBP)"
    rb"|(?P<heic>....ftyp(?:hei[cxms]|hev[cxms]|mif1|msf1))",
    re.DOTALL,
)
ENDINGS = {"image/jpeg": "jpg", "image/png": "png", "image/webp": "webp", "image/heic": "heic"}
OTHERWISE = "bin"


def type_of(data: bytes) -> str | None:
    """The media type by content, from the first bytes; None for what is not on the list."""
    found = SIGNATURE.match(data)
    return None if found is None else f"image/{found.lastgroup}"


def ending_of(data: bytes) -> str:
    """The ending of a file that begins so; ``bin`` for what is not on the list."""
    return ENDINGS.get(type_of(data) or "", OTHERWISE)
