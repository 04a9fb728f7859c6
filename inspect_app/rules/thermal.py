"""Movement of a metal panel with its temperature: ΔL = α·d·ΔT, d from the fixed line. First principles;
handbook coefficients and ranges are the job's, each with its source."""

from inspect_app.rules.compare import at_most


def movement_of(expansion: float, distance: float, change: float) -> float:
    """ΔL in the unit of ``distance``, for a temperature difference in the unit of ``expansion``."""
    return expansion * distance * change


def grow_and_shrink(given: dict, distance: float) -> tuple[float, float]:
    """``(grow, shrink)``: what the panel still grows to ``metal_high`` and shrinks to ``metal_low`` from
    ``metal_now``, at ``distance`` from the fixed line."""
    grow = movement_of(given["expansion"], distance, given["metal_high"] - given["metal_now"])
    shrink = movement_of(given["expansion"], distance, given["metal_now"] - given["metal_low"])
    return grow, shrink


def outside_range(given: dict) -> bool:
    """Whether the metal is outside the range the job was designed for, so that no window of it can hold."""
    low, now, high = given["metal_low"], given["metal_now"], given["metal_high"]
    return not (at_most(low, now, high - low) and at_most(now, high, high - low))
