"""JSON that every reader understands alike (the I-JSON restrictions of RFC 7493, and no fractions).

Two parsers that disagree about one document are a hole: a duplicate key is read first by one and last by the
other, 2^53 + 1 becomes 2^53, a lone surrogate becomes U+FFFD. What could be read in two ways is refused.
"""

import json
import re

from inspect_app.entry.refusal import Refused

LARGEST = 2**53 - 1
DEEPEST = 32

# One that never ends runs to the end of the text: tried again from each of its quotes, 64 KiB would take seconds.
_STRING = re.compile(r'"(?:[^"\\]|\\.)*+(?:"|\\?\Z)', re.DOTALL)
_UNSAFE = re.compile("[\0\ud800-\udfff]")


def parse(data: bytes, field: str) -> dict[str, object]:
    """The JSON object in ``data``. ``field`` names the document (``header``, ``payload``) in refusals.

    Raises Refused: ``bad_text`` (invalid UTF-8, NUL, lone surrogate), ``too_deep`` (over 32),
    ``duplicate_key``, ``bad_number`` (a fraction, an exponent, -0, beyond ±(2^53 - 1)), ``malformed``
    (anything else).
    """
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        raise Refused("bad_text", field, data[error.start : error.end]) from None
    _measure(text, field)
    try:
        value = json.loads(
            text,
            object_pairs_hook=lambda pairs: _object(pairs, field),
            parse_int=lambda digits: _integer(digits, field),
            parse_float=lambda digits: _no_number(digits, field),
            parse_constant=lambda name: _no_json(name, field),
        )
    except json.JSONDecodeError as error:
        raise Refused("malformed", field, text[error.pos : error.pos + 20]) from None
    if not isinstance(value, dict):
        raise Refused("malformed", field, text)
    _check_text(value, field)
    return value


def _measure(text: str, field: str) -> None:
    """Refuse deep nesting before the parser meets it: it recurses, and would run out of stack."""
    depth = 0
    for character in _STRING.sub("", text):
        if character in "[{":
            depth += 1
            if depth > DEEPEST:
                raise Refused("too_deep", field, DEEPEST)
        elif character in "]}":
            depth -= 1


def _object(pairs: list[tuple[str, object]], field: str) -> dict[str, object]:
    result: dict[str, object] = {}
    for key, value in pairs:
        if key in result:
            raise Refused("duplicate_key", f"{field}.{key}" if key.isidentifier() else field, key)
        result[key] = value
    return result


def _integer(digits: str, field: str) -> int:
    # Length first: int() of a very long text is slow, and Python itself refuses it.
    if digits == "-0" or len(digits) > 17 or abs(int(digits)) > LARGEST:
        raise Refused("bad_number", field, digits)
    return int(digits)


def _no_number(digits: str, field: str) -> object:
    raise Refused("bad_number", field, digits)


def _no_json(name: str, field: str) -> object:
    raise Refused("malformed", field, name)  # NaN and Infinity: Python reads them, JSON has no such thing


def _check_text(value: object, path: str) -> None:
    if isinstance(value, str):
        if _UNSAFE.search(value):
            raise Refused("bad_text", path, value)
    elif isinstance(value, list):
        for index, item in enumerate(value):
            _check_text(item, f"{path}[{index}]")
    elif isinstance(value, dict):
        for key, item in value.items():
            _check_text(key, path)
            _check_text(item, f"{path}.{key}")
