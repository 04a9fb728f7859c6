"""Marshmallow fields that answer faults by code, so that a fault can be said in any language.

An error text is ``CODE`` or ``CODE|FACT``, the fact being what is allowed there.
"""

from typing import Any

from marshmallow import Schema, ValidationError, fields, validate


def told(kind: str) -> dict[str, Any]:
    """Error messages of a field that wants ``kind``."""
    wrong = f"wrong_type|{kind}"
    return {
        "required": "required", "null": "empty", "invalid": wrong, "type": wrong, "validator_failed": wrong,
        "invalid_utf8": wrong, "unknown": "unknown_field",
    }  # fmt: skip


class Shape(Schema):
    """A map whose fields are all known. Faults come as codes."""

    error_messages = told("map")


def text(*checks: Any, **options: Any) -> fields.String:
    return fields.String(error_messages=told("text"), validate=list(checks), **({"required": True} | options))


def one_of(*allowed: str, **options: Any) -> fields.String:
    return text(validate.OneOf(allowed, error="choice|" + ", ".join(allowed)), **options)


def many_of(*allowed: str, **options: Any) -> fields.List[Any]:
    check: list[Any] = [validate.Length(min=1, error="empty"), _distinct]
    inner = one_of(*allowed)
    return fields.List(inner, error_messages=told("list"), validate=check, **({"required": True} | options))


def _distinct(given: list[Any]) -> None:
    if len(set(given)) != len(given):
        raise ValidationError("repeated_value")


class Whole(fields.Integer):
    """A whole number; true is none."""

    def _deserialize(self, value: Any, *args: Any, **kwargs: Any) -> int:
        if type(value) is not int:
            raise ValidationError(told("number")["invalid"])
        return value


class Flag(fields.Boolean):
    """true or false, no other word for it."""

    def _deserialize(self, value: Any, *args: Any, **kwargs: Any) -> bool:
        if type(value) is not bool:
            raise ValidationError(told("flag")["invalid"])
        return value


class Inputs(fields.Dict):
    """A rule's inputs: name to path, quantity, whole number, true or false."""

    def _deserialize(self, value: Any, *args: Any, **kwargs: Any) -> dict[str, Any]:
        if not isinstance(value, dict):
            raise ValidationError(told("map")["invalid"])
        wrong = {name: ["input_shape"] for name, one in value.items() if not self.fits(one)}
        if wrong:
            raise ValidationError(wrong)
        return dict(value)

    @staticmethod
    def fits(one: Any) -> bool:
        if isinstance(one, dict):
            return set(one) == {"value", "unit"} and all(isinstance(part, str) for part in one.values())
        return isinstance(one, str | bool | int) and one != ""
