"""Shares and confidences as inputs: numbers from 0 to 1."""

from inspect_app.rules.compare import at_most
from inspect_app.rules.refused import Refused


def share_of(number: float, field: str) -> float:
    """A share, 0 and 1 with it. Raises Refused ``share_outside``."""
    if not 0.0 <= number <= 1.0:
        raise Refused("share_outside", field)
    return number


def confidence_of(number: float) -> float:
    """A confidence, neither 0 nor 1: nothing but looking at all is certain. Raises Refused ``confidence_outside``."""
    if not 0.0 < number < 1.0:
        raise Refused("confidence_outside", "confidence")
    return number


def bad_in(lot: int, share: float) -> int:
    """The least whole number of a ``lot`` that is no smaller ``share`` of it."""
    exact = share * lot
    whole = int(exact)
    return whole if at_most(exact, float(whole)) else whole + 1
