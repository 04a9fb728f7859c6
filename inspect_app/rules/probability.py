"""Shares and confidences as inputs: numbers from 0 to 1."""

from inspect_app.rules.refused import Refused


def whole_share(number: float, field: str) -> float:
    """A share, 0 and 1 with it. Raises Refused ``out_of_range``."""
    if not 0.0 <= number <= 1.0:
        raise Refused("out_of_range", field, None, (0.0, 1.0))
    return number


def confidence_of(number: float) -> float:
    """A confidence, neither 0 nor 1: nothing but looking at all is certain. Raises Refused ``confidence_outside``."""
    if not 0.0 < number < 1.0:
        raise Refused("confidence_outside", "confidence")
    return number
