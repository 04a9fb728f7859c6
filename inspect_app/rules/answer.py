"""The shape in which every rule answers."""

from inspect_app.rules.refused import Refused


def measured(value: float, unit: str) -> dict:
    """A number with its unit: ``{"value": 0.3432, "unit": "in"}``. A NaN or an infinity is never passed on:
    Refused ``not_finite``."""
    if value != value or value - value != 0.0:
        raise Refused("not_finite", unit)
    return {"value": value, "unit": unit}


def all_measured(values: dict, unit: str) -> dict:
    """``values`` (name → number) with one unit for all."""
    return {name: measured(values[name], unit) for name in values}


def said(text: str) -> dict:
    """A word as a value, in the shape of a number: ``{"value": "tightened", "unit": ""}``."""
    return {"value": text, "unit": ""}


def listed(numbers: list) -> dict:
    """Whole numbers in order as a value: ``{"value": [3, 0, 7], "unit": ""}``."""
    return {"value": numbers, "unit": ""}


def reason(code: str, facts: "dict | None" = None) -> dict:
    """Why the verdict is what it is: ``{"code", "facts"}``; the words are ``reason.CODE`` in
    ``static/words/rules.json``. Facts are measured numbers, text or integers."""
    return {"code": code, "facts": facts or {}}


def answer(
    values: dict, verdict: "str | None" = None, why: "dict | None" = None, understood: "dict | None" = None
) -> dict:
    """What a rule found. ``understood`` adds what the rule took for granted or worked out on the way."""
    return {"verdict": verdict, "reason": why, "values": values, "understood": understood or {}}
