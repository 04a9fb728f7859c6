"""What all wire schemas have in common, and the few kinds of field they are made of."""

from collections.abc import Callable
from typing import Any

from marshmallow import EXCLUDE, Schema, ValidationError, fields, post_dump, validate


class Wire(Schema):
    """Unknown members are ignored, so that an older server understands a newer phone."""

    class Meta:
        unknown = EXCLUDE


class Sparse(Wire):
    """Members without a value are left out of the answer."""

    @post_dump
    def _leave_out(self, data: dict[str, Any], **_: object) -> dict[str, Any]:
        return {name: value for name, value in data.items() if value is not None}


def _plain(text: str) -> None:
    if "\0" in text or any(0xD800 <= ord(sign) < 0xE000 for sign in text):
        raise ValidationError("NUL or half a character")


def text(longest: int, **options: Any) -> fields.String:
    """Text that every database can keep."""
    checks: list[Callable[[str], Any]] = [validate.Length(max=longest), _plain]
    return fields.String(validate=checks, **options)


def uuid(**options: Any) -> fields.String:
    # The API's document takes the pattern over: spelled as ECMA-262 does. ``$`` alone would let a line end pass.
    pattern = "^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$"
    return fields.String(validate=[validate.Regexp(pattern), validate.Length(equal=36)], **options)


def token(**options: Any) -> fields.String:
    """A JWS; what is in it is checked where it is taken."""
    return text(64 * 1024, metadata={"format": "jws"}, **options)


class JwkSchema(Wire):
    """A public P-256 key (RFC 7517)."""

    kty = text(10, required=True)
    crv = text(10, required=True)
    x = text(60, required=True)
    y = text(60, required=True)
    d = text(60, load_only=True, metadata={"description": "never sent; a key that carries it is refused"})


class KeySchema(Wire):
    """A key and its name."""

    kid = text(43)
    jwk = fields.Nested(JwkSchema)


class PersonSchema(Wire):
    """A person."""

    id = fields.String()
    name = fields.String()
    role = fields.String()
