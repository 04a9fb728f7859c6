"""The one number formatter of screen and report; ``static/words/number.js`` is its twin.

Both work on decimal digits only, never on binary fractions, so that the two agree to the last character:
``tests/vectors/numbers.json`` holds what both must give. Halves round away from zero, as on a tape.
"""

import re

DECIMAL = re.compile(r"([+-]?)([0-9]+)(?:\.([0-9]+))?(?:[eE]([+-]?[0-9]{1,3}))?")
LONGEST = 40
MINUS, GAP, TIMES = "−", "\u00a0", "×"
RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")

# unit: (what is printed after the number, decimal places at most)
UNITS = {
    "in": (GAP + "in", 3), "ft": (GAP + "ft", 2), "mm": (GAP + "mm", 1), "cm": (GAP + "cm", 2),
    "m": (GAP + "m", 3), "F": (GAP + "°F", 1), "C": (GAP + "°C", 1), "dF": (GAP + "°F", 1),
    "dC": (GAP + "°C", 1), "K": (GAP + "K", 1), "/F": ("/°F", 3), "/C": ("/°C", 3), "/K": ("/K", 3),
    "/12": (":12", 3), "deg": ("°", 1), "%": (GAP + "%", 1), "psf": (GAP + "psf", 1), "kPa": (GAP + "kPa", 2),
    "px": (GAP + "px", 1), "lbf": (GAP + "lb", 0), "N": (GAP + "N", 0), "kN": (GAP + "kN", 2),
    "psi": (GAP + "psi", 0), "ksi": (GAP + "ksi", 1), "MPa": (GAP + "MPa", 1), "lbf/in": (GAP + "lb/in", 1),
    "N/mm": (GAP + "N/mm", 2), "": ("", 3),
}  # fmt: skip


def number(value: object, unit: str = "", places: int | None = None) -> str:
    """``value`` (a decimal string, an integer or a float) with its unit: ``number("40", "ft")`` is ``40 ft``.

    Without ``places``: as many decimals as the unit is worth, zeros at the end dropped. With ``places``:
    exactly so many. Expansions come as ``6.5 × 10⁻⁶/°F``. A list is told one by one. What is no decimal is returned
    as it is, nothing as a dash: a page never stays blank and never breaks.
    """
    if isinstance(value, list):
        return ", ".join(number(one, unit, places) for one in value) or "—"
    after, most = UNITS.get(unit, (GAP + unit, 3))
    if value is None:
        return "—"
    text = str(value)
    found = DECIMAL.fullmatch(text) if len(text) <= LONGEST else None
    if found is None:
        return text + after
    whole, fraction = found[2], found[3] or ""
    digits = (whole + fraction).lstrip("0")
    point = len(digits) - len(fraction) + int(found[4] or "0")
    sign = MINUS if found[1] == "-" else ""
    if unit in ("/F", "/C", "/K"):
        return _scientific(sign, digits, point, most if places is None else places, places is None) + after
    digits, point = _rounded(digits, point, most if places is None else places)
    if not digits.strip("0"):
        sign = ""
    return sign + _plain(digits, point, most if places is None else places, places is None) + after


def _rounded(digits: str, point: int, places: int) -> tuple[str, int]:
    """Digits with the point before index ``point``, cut to ``places`` after it, halves away from zero."""
    keep = point + places
    if keep >= len(digits):
        return digits, point
    if keep < 0:
        return "", point
    up = digits[keep] >= "5"
    kept = digits[:keep]
    if not up:
        return kept, point
    raised = str(int(kept or "0") + 1).rjust(len(kept), "0")
    return raised, point + len(raised) - len(kept)


def _plain(digits: str, point: int, places: int, trim: bool) -> str:
    if point <= 0:
        digits, point = "0" * (1 - point) + digits, 1
    if len(digits) < point:
        digits = digits + "0" * (point - len(digits))
    whole, fraction = digits[:point].lstrip("0") or "0", digits[point : point + places]
    fraction = fraction.rstrip("0") if trim else fraction.ljust(places, "0")
    return whole + ("." + fraction if fraction else "")


def _scientific(sign: str, digits: str, point: int, places: int, trim: bool) -> str:
    if not digits:
        return "0"
    rounded, at = _rounded(digits, 1, places)
    exponent = point - 1 + (at - 1)
    text = sign + _plain(rounded, 1, places, trim)
    return text if exponent == 0 else text + GAP + TIMES + GAP + "10" + str(exponent).translate(RAISED)
