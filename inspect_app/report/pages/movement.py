"""What the slot and clip figures share: numbers of a verdict, and which way the free end lies."""

from typing import Any

from inspect_app.report.pages.voice import Voice
from inspect_app.rules.unit import change_unit


def length(value: Any, unit: str) -> float | None:
    """A recorded length in ``unit``, None where there is none or it is no number."""
    try:
        found = change_unit(float(value["value"]), value["unit"], unit)
    except (TypeError, KeyError, ValueError):
        return None
    return found if abs(found) < 1e4 else None


def toward_ridge(inputs: dict[str, Any]) -> int:
    """The rules count toward the free end. +1 where that is toward the ridge, -1 toward the eave. With an
    unknown fixed line they count toward the ridge."""
    station, fixed = length(inputs.get("station"), "ft"), length(inputs.get("fixed_line"), "ft")
    if station is None or fixed is None:
        return 1
    return 1 if station >= fixed else -1


def place(value: Any, inputs: dict[str, Any], voice: Voice) -> str:
    """``0.287 in toward the ridge``: no reader has to know which sign is which."""
    if not isinstance(value, dict):
        return "—"
    try:
        size = float(value["value"])
    except (TypeError, KeyError, ValueError):
        return voice.short(value)
    shown = voice.short(value | {"value": repr(abs(size))}, 2 if voice.units == "SI" else 3)
    return side(size * toward_ridge(inputs), shown, voice)


def side(ridgeward: float, shown: str, voice: Voice) -> str:
    """The size ``shown`` with the end that it is toward: positive is the ridge."""
    if ridgeward == 0:
        return voice.say("at_middle", amount=shown)
    return voice.say("toward_ridge" if ridgeward > 0 else "toward_eave", amount=shown)
