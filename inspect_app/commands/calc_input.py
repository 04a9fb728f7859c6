"""Read what a person types into a shell (``40 ft``, ``7ft6in``, ``1-1/2in``, ``3:12``, ``80F``) as quantities.

Text in, a rule's inputs out. What cannot be read raises ``BadInput`` with the field and the value; what can be
read but not judged is the rulebook's to refuse.
"""

import re
from typing import Any

from inspect_app.errors import BadInput

NUMBER = r"[+-]?(?:\d+-\d+/\d+|\d+/\d+|\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)"
ONE = re.compile(rf"^({NUMBER})\s*(.*)$")
FEET_AND_INCHES = re.compile(rf"^(\d+)\s*(?:ft|')\s*-?\s*({NUMBER})\s*(?:in|\")$")
RISE = re.compile(r"^(\d+(?:\.\d+)?)\s*[:/]\s*(\d+(?:\.\d+)?)$")
SPOKEN = {
    "'": "ft", '"': "in", "feet": "ft", "foot": "ft", "inch": "in", "inches": "in", "°f": "F", "°c": "C", "f": "F",
    "c": "C", "k": "K", "/°f": "/F", "/°c": "/C", "per f": "/F", "per k": "/K", "°": "deg", "degrees": "deg",
    "percent": "%", ":12": "/12", "in 12": "/12", "/f": "/F", "/c": "/C", "/k": "/K", "kpa": "kPa",
}  # fmt: skip
DIFFERENCE = {"F": "dF", "C": "dC", "K": "K"}
YES_NO = {"yes": True, "true": True, "no": False, "false": False, "sí": True, "si": True}


def read(text: str, name: str, description: dict[str, Any]) -> Any:
    """One input as its rule wants it, by the ``dimension`` of its ``description``."""
    dimension = description["dimension"]
    if dimension in ("choice", "text"):
        return text.strip()
    if dimension == "boolean":
        return YES_NO.get(text.strip().lower(), text)
    if dimension in ("integer", "pixels"):
        return int(text) if re.fullmatch(r"-?\d{1,7}", text.strip()) else text
    if dimension == "lengths":
        return [quantity(part, name, "length") for part in text.split(",") if part.strip()]
    if dimension == "taps":
        points = [[int(number) for number in part.split(",")] for part in text.split(";")] if _taps(text) else []
        return dict(zip(("ridge_end", "eave_end", "screw"), points, strict=True)) if points else text
    return quantity(text, name, dimension)


def quantity(text: str, name: str, dimension: str) -> dict[str, str] | int:
    """``40 ft`` → ``{"value": "40", "unit": "ft"}``; a bare whole number is a count where any will do.

    Feet with inches become inches, fractions their decimals, ``3:12`` a rise in 12; with a difference wanted,
    ``80F`` is a difference. Raises ``BadInput`` ``calc_unreadable``.
    """
    text = text.strip().replace("−", "-")
    both = FEET_AND_INCHES.match(text)
    if both:
        return {"value": _decimal(float(both[1]) * 12 + _number(both[2])), "unit": "in"}
    rise = RISE.match(text)
    if dimension == "slope" and rise and float(rise[2]) > 0:
        return {"value": _decimal(float(rise[1]) * 12 / float(rise[2])), "unit": "/12"}
    one = ONE.match(text)
    if not one:
        raise BadInput("calc_unreadable", field=name, value=text)
    unit = SPOKEN.get(one[2].strip().lower(), one[2].strip())
    if dimension == "any" and unit == "":
        return int(one[1]) if one[1].isdigit() else {"value": one[1], "unit": ""}
    if dimension == "difference":
        unit = DIFFERENCE.get(unit, unit)
    plain = one[1] if "/" not in one[1] else _decimal(_number(one[1]))
    return {"value": plain.lstrip("+"), "unit": unit}


def _taps(text: str) -> bool:
    return re.fullmatch(r"-?\d+,-?\d+;-?\d+,-?\d+;-?\d+,-?\d+", text.strip()) is not None


def _number(text: str) -> float:
    """A whole, decimal or fractional number: ``1-1/2`` is 1.5. A fraction over nothing raises ``BadInput``."""
    mixed = re.fullmatch(r"([+-]?)(?:(\d+)-)?(\d+)/(\d+)", text)
    if not mixed:
        return float(text)
    if int(mixed[4]) == 0:
        raise BadInput("calc_unreadable", field="fraction", value=text)
    size = float(mixed[2] or 0) + int(mixed[3]) / int(mixed[4])
    return -size if mixed[1] == "-" else size


def _decimal(number: float) -> str:
    return repr(number)
