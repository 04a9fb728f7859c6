"""UUIDs as entries carry them: lower-case text; version 7 (RFC 9562 section 5.7) where time order helps."""

import re
import uuid

from inspect_app.entry.refusal import Refused

_UUID = re.compile(r"[0-9a-f]{8}-[0-9a-f]{4}-([1-8])[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}\Z", re.ASCII)


def uuid7(milliseconds: int, random: bytes) -> str:
    """A version 7 UUID from Unix time in milliseconds and at least 10 random bytes, both given by the
    caller."""
    if len(random) < 10 or not 0 <= milliseconds < 2**48:
        raise RuntimeError("uuid7 needs 10 random bytes and a time that fits 48 bits")
    data = bytearray(milliseconds.to_bytes(6, "big") + random[:10])
    data[6] = 0x70 | data[6] & 0x0F
    data[8] = 0x80 | data[8] & 0x3F
    return str(uuid.UUID(bytes=bytes(data)))


def any_uuid(value: object, field: str) -> None:
    """A lower-case UUID of any version. Raises Refused ``bad_field``."""
    if not isinstance(value, str) or not _UUID.match(value):
        raise Refused("bad_field", field, value)


def version7(value: object, field: str) -> None:
    """A lower-case UUID of version 7. Raises Refused ``bad_field``."""
    match = _UUID.match(value) if isinstance(value, str) else None
    if not match or match.group(1) != "7":
        raise Refused("bad_field", field, value)
