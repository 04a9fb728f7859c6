"""``limit@1``: a reading against a plain limit of the approved assembly: at least, at most, or exactly."""

from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.compare import at_most, distance_to_limit, settle
from inspect_app.rules.inputs import read_quantity, wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import SYSTEMS, change_unit

INPUTS = {
    "reading": wanted("any"),
    "at_least": wanted("any", required=False),
    "at_most": wanted("any", required=False),
    "equal": wanted("any", required=False),
    "uncertainty": wanted("any", required=False),
}
DIFFERENCE_OF = {"F": "dF", "C": "K"}
ORDER = ("reading", "at_least", "at_most", "equal")


def judge(given: dict, system: str) -> dict:
    """``reading``, the limits given, and ``margin``: how far inside (positive) or outside the nearer limit.
    All are quantities of one dimension, or bare counts; the uncertainty of a temperature is a difference, never
    met by the offset of 32. ``equal`` stands for both limits. Slopes and percents stay in the reading's unit."""
    values, reading, bound, low, high = compared(given, system)
    return told(values, settle(reading - bound, reading + bound, low, high), reading, low)


def compared(given: dict, system: str) -> tuple:
    """``(values, reading, uncertainty, low, high)``, None for no limit on that side. Raises Refused ``missing``
    without any limit, ``limits_reversed``, ``negative`` for the uncertainty and ``wrong_dimension``."""
    _, unit, kind = read_quantity(given["reading"], "reading")
    if kind not in ("count", "slope"):
        unit = SYSTEMS[system][kind]
    numbers, units = {}, {}
    for name in sorted(INPUTS):
        if given[name] is not None:
            numbers[name], units[name] = number_of(given[name], name, kind, unit)
    low, high = numbers.get("at_least"), numbers.get("at_most")
    if "equal" in numbers:
        low = high = numbers["equal"]
    if low is None and high is None:
        raise Refused("missing", "at_least")
    if low is not None and high is not None and not at_most(low, high):
        raise Refused("limits_reversed", "at_most")
    values = {name: measured(numbers[name], units[name]) for name in numbers}
    reading = numbers["reading"]
    # A margin between two temperatures is a difference.
    values["margin"] = measured(distance_to_limit(reading, low, high), difference_of(unit))
    bound = numbers.get("uncertainty", 0.0)
    if bound < 0.0:
        raise Refused("negative", "uncertainty")
    return values, reading, bound, low, high


def told(values: dict, verdict: str, reading: float, low: "float | None") -> dict:
    """The answer of a verdict, with the side on which the reading failed."""
    code = "below_limit" if low is not None and reading < low else "above_limit"
    why = {"pass": None, "fail": reason(code), "too_close": reason("limit_too_close")}[verdict]
    return answer(values, verdict, why)


def difference_of(unit: str) -> str:
    """The unit of what lies between two readings: of two temperatures a difference."""
    return DIFFERENCE_OF.get(unit, unit)


def number_of(raw: object, name: str, kind: str, unit: str) -> tuple[float, str]:
    """``(number, unit)`` of a quantity that must be of ``kind``, in ``unit``; an ``uncertainty`` of a temperature
    is a difference. Raises Refused ``wrong_dimension``."""
    number, given, dimension = read_quantity(raw, name)
    if name == "uncertainty" and kind == "temperature":
        kind, unit = "difference", DIFFERENCE_OF[unit]
    if dimension != kind:
        raise Refused("wrong_dimension", name)
    if kind == "count":
        return number, ""
    return change_unit(number, given, unit), unit
