"""One cell of a card: where a screw or a tab belongs at one distance and one temperature, seen toward the ridge."""

from inspect_app.record.card_mark import mark_near
from inspect_app.rules.answer import measured
from inspect_app.rules.compare import at_most
from inspect_app.rules.quantity import convert
from inspect_app.rules.rulebook import judge


def judged(kind: str, inputs: dict, error: dict, unit: str) -> dict:
    """The rulebook's answer: whether any place holds the crew's ``error`` (a quantity). For a tab, whether one set at
    the aim does, the error its uncertainty."""
    units = "US" if unit == "in" else "SI"
    asked = dict(inputs)
    if kind == "slot":
        asked["placing_error"] = error
        return judge("window@1", asked, units)
    found = judge("clip@1", asked, units)
    if found["verdict"] is not None:
        return found
    asked["tab"] = {"value": str(found["values"]["aim"]["value"]), "unit": unit}
    asked["uncertainty"] = error
    return judge("clip@1", asked, units)


def cell(found: dict, side: str, reach: "tuple[float, float]", error: dict, unit: str) -> dict:
    """``{"verdict", "reason", "low", "high", "aim", "third", "mark"}`` of the rulebook's answer ``found``.

    Offsets are toward the ridge; the rules count toward the free end. ``reach``: the offsets (eave end, ridge end)
    between which the screw's or the tab's middle can lie; a third is one of those, as a reading by thirds takes it.
    ``third`` and ``mark`` only where the crew's error goes in: an aim that cannot be hit is no place to show."""
    values, turn = found["values"], 1.0 if side == "ridge" else -1.0
    ends = [turn * values["low"]["value"], turn * values["high"]["value"]]
    low, high = min(ends), max(ends)
    if values["low"]["value"] > values["high"]["value"]:  # no window: the ends have crossed, and stay crossed
        low, high = high, low
    aim = turn * values["aim"]["value"] + 0.0
    told = {
        "verdict": found["verdict"], "reason": found["reason"], "low": measured(low, unit),
        "high": measured(high, unit), "aim": measured(aim, unit), "third": None, "mark": None,
    }  # fmt: skip
    if found["verdict"] == "pass":
        room = convert(error, unit, "placing_error")
        told["third"] = _third(aim, reach)
        told["mark"] = mark_near(aim, low + room, high - room, unit)
    return told


def _third(at: float, reach: "tuple[float, float]") -> str:
    """The middle third has its ends, so that a screw in the very middle of a tight slot is nowhere else."""
    eave, ridge = reach
    span = ridge - eave
    if not at_most(at, ridge - span / 3.0, span):
        return "toward_ridge"
    return "middle" if at_most(eave + span / 3.0, at, span) else "toward_eave"
