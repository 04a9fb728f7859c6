"""``limit@1``: a reading against a plain limit of the approved assembly: at least, at most, or exactly."""

from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.compare import distance_to_limit, settle
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
ORDER = ("reading", "at_least", "at_most", "equal")


def judge(given: dict, system: str) -> dict:
    """``reading``, the limits given, and ``margin``: how far inside (positive) or outside the nearer limit.
    All are quantities of one dimension, or bare counts. ``equal`` stands for both limits."""
    kind = read_quantity(given["reading"], "reading")[2]
    numbers, unit = {}, ""
    for name in INPUTS:
        if given[name] is not None:
            numbers[name], unit = _number(given[name], name, kind, system)
    low, high = numbers.get("at_least"), numbers.get("at_most")
    if "equal" in numbers:
        low = high = numbers["equal"]
    if low is None and high is None:
        raise Refused("missing", "at_least")
    values = {name: measured(numbers[name], unit) for name in sorted(numbers)}
    reading = numbers["reading"]
    values["margin"] = measured(distance_to_limit(reading, low, high), unit)
    bound = abs(numbers.get("uncertainty", 0.0))
    verdict = settle(reading - bound, reading + bound, low, high)
    code = "below_limit" if low is not None and reading < low else "above_limit"
    why = {"pass": None, "fail": reason(code), "too_close": reason("limit_too_close")}[verdict]
    return answer(values, verdict, why)


def _number(raw: object, name: str, kind: str, system: str) -> tuple[float, str]:
    number, given, dimension = read_quantity(raw, name)
    if name == "uncertainty" and kind == "temperature" and dimension == "difference":
        kind = "difference"
    if dimension != kind:
        raise Refused("wrong_dimension", name, None)
    if kind == "count":
        return number, ""
    unit = SYSTEMS[system][dimension]
    return change_unit(number, given, unit), unit
