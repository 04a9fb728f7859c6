"""Base64url without padding (RFC 7515 section 2), in its one canonical spelling."""

import base64
import re

from inspect_app.entry.refusal import Refused

_ALPHABET = re.compile(r"[A-Za-z0-9_-]*\Z", re.ASCII)


def encode(data: bytes) -> str:
    """Bytes as base64url text without padding."""
    return base64.urlsafe_b64encode(data).rstrip(b"=").decode("ascii")


def decode(text: str, field: str) -> bytes:
    """The bytes of canonical base64url ``text``.

    Raises Refused ``not_canonical`` for padding, foreign characters, an impossible length, or spare bits that
    are not zero: two spellings of one signature would let the same entry be sent under two names.
    """
    if not _ALPHABET.match(text) or len(text) % 4 == 1:
        raise Refused("not_canonical", field, text)
    data = base64.urlsafe_b64decode(text + "=" * (-len(text) % 4))
    if encode(data) != text:
        raise Refused("not_canonical", field, text)
    return data


def names_sha256(value: object) -> bool:
    """Whether the value is a canonical base64url SHA-256: a digest of an entry or a key's thumbprint."""
    if not isinstance(value, str) or len(value) != 43:
        return False
    try:
        return len(decode(value, "digest")) == 32
    except Refused:
        return False
