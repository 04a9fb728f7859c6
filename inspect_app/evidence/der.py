"""DER, the one way to write an ASN.1 value (ITU-T X.690, 10): definite, shortest lengths and nothing left over."""

INTEGER, BOOLEAN, NULL = 0x02, 0x01, 0x05
CONSTRUCTED, MULTIBYTE = 0x20, 0x1F
DEEPEST = 40


def der_length(raw: bytes) -> int | None:
    """How many bytes the DER sequence at the start takes, None when there is none that fits."""
    end = _end(raw, 0) if raw[:1] == b"\x30" else None
    return end[1] if end else None


def canonical(der: bytes) -> bool:
    """Whether these bytes are whole DER values, as far as lengths, integers, booleans and nulls go. Strings are
    not looked into: they are values, not form."""
    return _values(der, 0, len(der), 0)


def _values(der: bytes, at: int, end: int, depth: int) -> bool:
    while at < end:
        found = _end(der, at)
        if found is None or found[1] > end or depth > DEEPEST:
            return False
        start, stop = found
        tag = der[at]
        if tag & CONSTRUCTED:
            if not _values(der, start, stop, depth + 1):
                return False
        elif not _plain(tag, der[start:stop]):
            return False
        at = stop
    return at == end


def _plain(tag: int, value: bytes) -> bool:
    if tag == INTEGER:
        shortest = len(value) == 1 or (len(value) > 1 and not (value[0] == 0 and value[1] < 0x80))
        return shortest and not (len(value) > 1 and value[0] == 0xFF and value[1] >= 0x80)
    if tag == BOOLEAN:
        return value in (b"\x00", b"\xff")
    return not value if tag == NULL else True


def _end(der: bytes, at: int) -> tuple[int, int] | None:
    """Where the content of the value at ``at`` begins and ends."""
    # Tag 0 is no value: a length grown into the zeros behind a container would swallow them as empty ones.
    if at + 2 > len(der) or der[at] == 0 or der[at] & MULTIBYTE == MULTIBYTE:
        return None
    first, start = der[at + 1], at + 2
    if first < 0x80:
        length = first
    else:
        count = first & 0x7F
        start += count
        if not 1 <= count <= 4 or start > len(der) or der[at + 2] == 0:
            return None
        length = int.from_bytes(der[at + 2 : start], "big")
        if length < 0x80:
            return None  # the short form fits
    return (start, start + length) if start + length <= len(der) else None
