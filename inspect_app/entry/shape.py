"""Named checks of one value: each takes ``(value, field)`` and returns nothing or raises Refused.

They check form, never sense: whether a slope is too low is a question for the rules, and a clock that is
wrong by years is evidence, not an error.
"""

import re
from collections.abc import Callable, Mapping
from datetime import date

from inspect_app.entry.base64url import names_sha256
from inspect_app.entry.refusal import Refused

Check = Callable[[object, str], None]

_DECIMAL = re.compile(r"-?[0-9]{1,30}(\.[0-9]{1,30})?([eE][+-]?[0-9]{1,2})?\Z", re.ASCII)
_SHA256 = re.compile(r"[0-9a-f]{64}\Z", re.ASCII)


def text(value: object, field: str) -> None:
    """Any text, empty too: an unnamed thing is better kept than lost."""
    _require(isinstance(value, str), value, field)


def name(value: object, field: str) -> None:
    """Text that identifies something: 1 to 200 characters."""
    _require(isinstance(value, str) and 0 < len(value) <= 200, value, field)


def integer(value: object, field: str) -> None:
    """A whole number; true and false are not numbers, though Python thinks so."""
    _require(type(value) is int, value, field)


def count(value: object, field: str) -> None:
    """A whole number from 0."""
    _require(type(value) is int and value >= 0, value, field)


def positive(value: object, field: str) -> None:
    """A whole number from 1."""
    _require(type(value) is int and value > 0, value, field)


def label(value: object, field: str) -> None:
    """Text or a whole number: a gauge is written both ways."""
    _require(isinstance(value, str) or type(value) is int, value, field)


def boolean(value: object, field: str) -> None:
    _require(isinstance(value, bool), value, field)


def decimal(value: object, field: str) -> None:
    """A number as text: ``-12.5`` or ``6.5e-6``."""
    _require(isinstance(value, str) and _DECIMAL.match(value) is not None, value, field)


def day(value: object, field: str) -> None:
    """A date of the calendar as ISO 8601 writes it: ``2026-11-25``."""
    try:
        _require(isinstance(value, str) and date.fromisoformat(value).isoformat() == value, value, field)
    except ValueError:
        raise Refused("bad_field", field, value) from None


def digest(value: object, field: str) -> None:
    """An entry's digest: base64url SHA-256, 43 characters."""
    _require(names_sha256(value), value, field)


def sha256(value: object, field: str) -> None:
    """A photo's name: lower-case hexadecimal SHA-256, 64 characters."""
    _require(isinstance(value, str) and _SHA256.match(value) is not None, value, field)


def mapping(value: object, field: str) -> None:
    """Any object; what is inside belongs to others."""
    _require(isinstance(value, dict), value, field)


def choice(*allowed: str) -> Check:
    def check(value: object, field: str) -> None:
        _require(isinstance(value, str) and value in allowed, value, field)

    return check


def nullable(inner: Check) -> Check:
    def check(value: object, field: str) -> None:
        if value is not None:
            inner(value, field)

    return check


def list_of(inner: Check) -> Check:
    def check(value: object, field: str) -> None:
        if not isinstance(value, list):
            raise Refused("bad_field", field, value)
        for index, item in enumerate(value):
            inner(item, f"{field}[{index}]")

    return check


def map_of(inner: Check) -> Check:
    def check(value: object, field: str) -> None:
        if not isinstance(value, dict):
            raise Refused("bad_field", field, value)
        for key, item in value.items():
            inner(item, f"{field}.{key}")

    return check


def record(required: Mapping[str, Check], optional: Mapping[str, Check] | None = None) -> Check:
    """An object with these members. Others are kept and ignored; an optional member may be absent or null."""

    def check(value: object, field: str) -> None:
        if not isinstance(value, dict):
            raise Refused("bad_field", field, value)
        for member, inner in required.items():
            if member not in value:
                raise Refused("missing_field", f"{field}.{member}")
            inner(value[member], f"{field}.{member}")
        for member, inner in (optional or {}).items():
            if value.get(member) is not None:
                inner(value[member], f"{field}.{member}")

    return check


def _require(good: bool, value: object, field: str) -> None:
    if not good:
        raise Refused("bad_field", field, value)
