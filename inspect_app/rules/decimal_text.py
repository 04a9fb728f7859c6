"""Read a decimal string into a number, with the same bits on both interpreters, and write one."""

from inspect_app.rules.refused import Refused

LONGEST = 40  # characters; a 64-bit float prints in at most 24


def read_decimal(text: object, field: str) -> float:
    """The number in ``text``: digits, at most one point between digits, an optional sign and exponent.

    ``-20``, ``0.190`` and ``6.5e-6`` are decimals; ``.5``, ``1_000``, ``1,5``, ``nan``, ``inf`` and digits of
    other scripts are not. Up to 15 significant digits the result is the nearest double: an exact whole number
    scaled once by an exact power of ten. Raises Refused ``not_decimal``.
    """
    if not isinstance(text, str) or not 0 < len(text) <= LONGEST:
        raise Refused("not_decimal", field, text)
    sign, rest = _sign(text)
    mantissa, exponent = _split_exponent(rest)
    whole, point, fraction = mantissa, False, ""
    if "." in mantissa:
        point = True
        whole, fraction = mantissa.split(".", 1)
    if not _digits(whole) or (point and not _digits(fraction)):
        raise Refused("not_decimal", field, text)
    power_sign, power_digits = _sign(exponent)
    if not _digits(power_digits) or len(power_digits) > 2:
        raise Refused("not_decimal", field, text)
    power = power_sign * int(power_digits) - len(fraction)
    return sign * _scale(_whole(whole + fraction), power)


def write_decimal(number: float) -> str:
    """A length worked out, as text that both interpreters write alike: to a millionth, without zeros at the end."""
    grains = int(abs(number) * 1000000.0 + 0.5)
    whole, rest = str(grains // 1000000), str(grains % 1000000 + 1000000)[1:]
    while rest[-1:] == "0":
        rest = rest[:-1]
    return ("-" if number < 0.0 and grains > 0 else "") + whole + ("." + rest if rest else "")


def _split_exponent(text: str) -> tuple[str, str]:
    for mark in ("e", "E"):
        if mark in text:
            mantissa, exponent = text.split(mark, 1)
            return mantissa, exponent
    return text, "0"


def _sign(text: str) -> tuple[int, str]:
    if text and text[0] in "+-":
        return (-1 if text[0] == "-" else 1), text[1:]
    return 1, text


def _digits(text: str) -> bool:
    return text != "" and all("0" <= character <= "9" for character in text)


def _whole(digits: str) -> float:
    number = 0.0
    for digit in digits:
        number = number * 10.0 + float(int(digit))
    return number


def _scale(number: float, power: int) -> float:
    # Powers of ten are exact doubles up to 1e22; beyond, the last bits go, equally on both interpreters.
    factor = 1.0
    for _ in range(abs(power)):
        factor = factor * 10.0
    return number * factor if power > 0 else number / factor
