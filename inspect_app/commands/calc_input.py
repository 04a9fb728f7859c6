"""Read what a person types into a shell (``40 ft``, ``7ft6in``, ``1-1/2in``, ``3:12``, ``80F``) as quantities.

Text in, a rule's inputs out. What cannot be read raises ``BadInput`` with the field and the value; what can be
read but not judged is the rulebook's to refuse.
"""

import re
from decimal import Decimal
from typing import Any

from inspect_app.errors import BadInput

NUMBER = r"[+-]?(?:\d+[- ]\d+/\d+|\d+/\d+|(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?)"
ONE = re.compile(rf"({NUMBER})\s*(\D.*)?", re.ASCII)
FEET_AND_INCHES = re.compile(rf"(\d+)\s*(?:ft|feet|foot|')\s*-?\s*({NUMBER})\s*(?:in|inch|inches|\")", re.ASCII)
RISE = re.compile(rf"({NUMBER})\s*(?::|in|/)\s*(12(?:\.0+)?)|({NUMBER})\s*:\s*(\d+(?:\.\d+)?)", re.ASCII)
LONGEST = 100
TYPED = str.maketrans({"−": "-", "–": "-", "′": "'", "’": "'", "″": '"', "”": '"', "\u00a0": " "})
SPOKEN = {
    "'": "ft", '"': "in", "feet": "ft", "foot": "ft", "inch": "in", "inches": "in", "°f": "F", "°c": "C", "f": "F",
    "c": "C", "k": "K", "df": "dF", "dc": "dC", "/°f": "/F", "/°c": "/C", "per f": "/F", "per c": "/C",
    "per k": "/K", "per °f": "/F", "per °c": "/C", "°": "deg", "degree": "deg", "degrees": "deg", "percent": "%",
    "/f": "/F", "/c": "/C", "/k": "/K", "kpa": "kPa", "ft": "ft", "in": "in", "mm": "mm", "cm": "cm", "m": "m",
    "lb": "lbf", "lbs": "lbf", "lbf": "lbf", "n": "N", "kn": "kN", "psi": "psi", "ksi": "ksi", "mpa": "MPa",
    "lb/in": "lbf/in", "lbf/in": "lbf/in", "n/mm": "N/mm", "psf": "psf",
}  # fmt: skip
DIFFERENCE = {"F": "dF", "C": "dC", "K": "K"}
YES_NO = {"yes": True, "true": True, "no": False, "false": False, "sí": True, "si": True}


def read(text: str, name: str, description: dict[str, Any]) -> Any:
    """One input as its rule wants it, by the ``dimension`` of its ``description``."""
    dimension = description["dimension"]
    if dimension == "choice":
        said = text.strip()
        return {one.lower(): one for one in description["choices"]}.get(said.lower(), said)
    if dimension == "number":
        return _bare_number(text.strip())
    if dimension in ("text", "hex", "letters"):
        return text.strip()
    if dimension == "choices":
        return [part.strip() for part in text.split(",")]
    if dimension == "boolean":
        return YES_NO.get(text.strip().lower(), text)
    if dimension in ("integer", "pixels"):
        return int(text) if re.fullmatch(r"-?\d{1,7}", text.strip(), re.ASCII) else text
    if dimension == "points":
        return [[quantity(one, f"{name}[{at}]", of) for one, of in zip(pair, ("length", "pressure"), strict=True)]
                for at, pair in enumerate(_pairs(text, name))]  # fmt: skip
    if dimension == "lengths":
        return [quantity(part, f"{name}[{at}]", "length") for at, part in enumerate(text.split(","))]
    if dimension == "slopes":
        return [quantity(part, f"{name}[{at}]", "slope") for at, part in enumerate(text.split(","))]
    if dimension in ("taps", "card"):
        points = _pixels(text)
        if dimension == "card":
            return points or text
        return dict(zip(("ridge_end", "eave_end", "screw"), points, strict=True)) if len(points) == 3 else text
    return quantity(text, name, dimension)


def quantity(text: str, name: str, dimension: str) -> dict[str, str] | int:
    """``40 ft`` → ``{"value": "40", "unit": "ft"}``; a bare whole number is a count where any will do.

    Feet with inches become inches, fractions their decimals, ``3:12`` a rise in 12; with a difference wanted,
    ``80F`` is a difference. A slope ``1/4`` is not read as 3:12: it may be a quarter inch in the foot. Raises
    ``BadInput`` ``calc_unreadable`` and ``calc_no_unit``.
    """
    if len(text) > LONGEST:  # Python itself takes no whole number of thousands of digits
        raise BadInput("calc_unreadable", field=name, value=text[:LONGEST])
    plain = text.translate(TYPED).strip()
    both = FEET_AND_INCHES.fullmatch(plain)
    if both:
        return {"value": _decimal(float(both[1]) * 12 + _number(both[2], name, text)), "unit": "in"}
    rise = RISE.fullmatch(plain) if dimension in ("slope", "any") else None
    if rise and float(rise[2] or rise[4]) > 0:
        in_twelve = _number(rise[1] or rise[3], name, text) * 12 / float(rise[2] or rise[4])
        return {"value": _decimal(in_twelve), "unit": "/12"}
    one = ONE.fullmatch(plain)
    if not one:
        raise BadInput("calc_unreadable", field=name, value=text)
    said = (one[2] or "").strip()
    unit = SPOKEN.get(said.lower(), said)
    if unit == "":
        if dimension == "any" and re.fullmatch(r"\d{1,7}", plain):
            return int(plain)
        raise BadInput("calc_no_unit", field=name, value=text)
    if dimension == "difference":
        unit = DIFFERENCE.get(unit, unit)
    digits = _decimal(_number(one[1], name, text)) if "/" in one[1] else one[1]
    return {"value": re.sub(r"^([+-]?)\.", r"\g<1>0.", digits).lstrip("+"), "unit": unit}


def _bare_number(text: str) -> str:
    """``95%`` as 0.95, ``.95`` as 0.95, to the last digit; what is neither stays, for the rule to take or refuse."""
    percent = re.fullmatch(r"(\d{1,9}(?:\.\d{1,9})?|\.\d{1,9})\s*%", text, re.ASCII)
    if percent:
        return f"{Decimal(percent[1]) / 100:f}"
    return f"0{text}" if text.startswith(".") else text


def _pairs(text: str, name: str) -> list[list[str]]:
    """``24in:60psf,12in:110psf``: spacing and the pressure it was tested to."""
    pairs = [part.split(":") for part in text.split(",")]
    if any(len(pair) != 2 for pair in pairs):
        raise BadInput("calc_unreadable", field=name, value=text)
    return pairs


def _pixels(text: str) -> list[list[str]]:
    """``0,100;1000,100`` as points; none where it is no list of points."""
    points = [[number.strip() for number in part.split(",")] for part in text.split(";")]
    whole = all(len(point) == 2 and re.fullmatch(r"-?\d{1,7}(\.\d{1,4})?", number, re.ASCII)
                for point in points for number in point)  # fmt: skip
    return points if whole else []


def _number(digits: str, name: str, text: str) -> float:
    """A whole, decimal or fractional number: ``1-1/2`` is 1.5. Over nothing raises ``BadInput``."""
    mixed = re.fullmatch(r"([+-]?)(?:(\d+)[- ])?(\d+)/(\d+)", digits)
    if not mixed:
        return float(digits)
    if int(mixed[4]) == 0:
        raise BadInput("calc_unreadable", field=name, value=text)
    size = float(mixed[2] or 0) + int(mixed[3]) / int(mixed[4])
    return -size if mixed[1] == "-" else size


def _decimal(number: float) -> str:
    return repr(number)
