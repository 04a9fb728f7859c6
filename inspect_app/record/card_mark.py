"""Offsets as a crew reads them: sixteenths of an inch or whole millimetres, never beyond what holds."""

from inspect_app.rules.answer import measured
from inspect_app.rules.compare import at_most

STEPS = {"in": 16, "mm": 1}  # marks on a tape in one unit


def mark_near(aim: float, least: float, most: float, unit: str) -> dict:
    """The tape's mark nearest to ``aim`` that lies between ``least`` and ``most``: ``{"text", "unit", "toward"}``,
    ``toward`` ``ridge``, ``eave`` or ``middle``. Where no mark lies there, ``text`` is None and ``exact`` has the aim
    itself, which then has to be measured."""
    steps = STEPS[unit]
    nearest = _whole(aim * steps)
    for count in (nearest, nearest - 1, nearest + 1):
        at = count / steps
        if at_most(least, at, abs(aim) + 1.0) and at_most(at, most, abs(aim) + 1.0):
            return {"text": tape_text(abs(count), steps), "unit": unit, "toward": _toward(count), "exact": None}
    return {"text": None, "unit": unit, "toward": _toward(aim), "exact": measured(abs(aim), unit)}


def tape_text(count: int, steps: int) -> str:
    """``1 3/16`` for 19 sixteenths."""
    whole, rest, of = count // steps, count % steps, steps
    while rest > 0 and rest % 2 == 0:
        rest, of = rest // 2, of // 2
    fraction = str(rest) + "/" + str(of) if rest else ""
    if whole and fraction:
        return str(whole) + " " + fraction
    return fraction or str(whole)


def exact_text(number: float, unit: str) -> "str | None":
    """``1/8`` for 0.125 in; None for what no mark of a tape says, down to a thirty-second or half a millimetre."""
    steps = STEPS[unit] * 2
    count = _whole(number * steps)
    if count < 0 or not (at_most(count / steps, number) and at_most(number, count / steps)):
        return None
    if unit == "mm":
        return str(count // 2) + (".5" if count % 2 else "")
    return tape_text(count, steps)


def _whole(number: float) -> int:
    """The nearest whole number; a half goes up, also where the last bit says otherwise."""
    return int(number + 0.5 + 1e-9) if number >= 0.0 else -int(-number + 0.5 - 1e-9)


def _toward(offset: float) -> str:
    if offset == 0:
        return "middle"
    return "ridge" if offset > 0 else "eave"
