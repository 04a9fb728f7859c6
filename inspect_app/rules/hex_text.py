"""Read bytes written in hexadecimal digits, the same on both interpreters."""

from inspect_app.rules.refused import Refused

DIGITS = "0123456789abcdef"
CAPITALS = "0123456789ABCDEF"
LONGEST = 128  # digits: 64 bytes, twice a SHA-256


def read_hex(text: object, field: str) -> bytes:
    """The bytes in ``text``: two digits each, small or capital, nothing between. Raises Refused ``not_hex``."""
    if not isinstance(text, str) or not 0 < len(text) <= LONGEST or len(text) % 2:
        raise Refused("not_hex", field, text[:60] if isinstance(text, str) else None)
    numbers = [max(DIGITS.find(one), CAPITALS.find(one)) for one in text]
    if min(numbers) < 0:
        raise Refused("not_hex", field, text[:60])
    return bytes([numbers[at] * 16 + numbers[at + 1] for at in range(0, len(numbers), 2)])
