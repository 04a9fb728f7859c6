"""The one comparison that every limit goes through.

Decimal inputs do not fall on binary numbers, so a reading that stands exactly at its limit may come out a last bit
beyond it. Within one part in 10⁹ a reading is at the limit, and a reading at the limit passes.

A reading with an uncertainty is an interval, and so is "in the ridge third": the same function settles both. It is
the guard band w = U of ILAC-G8:09/2019, 4.2: pass only if the whole interval is inside, fail only if the whole
interval is outside, else too close to call. With no uncertainty it is simple acceptance.
"""

TOLERANCE = 1e-9


def at_most(value: float, limit: float, scale: float = 0.0) -> bool:
    """Whether ``value`` ≤ ``limit``, or at it. ``scale`` is the size of what the two were subtracted from,
    for a limit that may be zero."""
    return value - limit <= TOLERANCE * max(abs(value), abs(limit), scale)


def settle(
    least: float, most: float, low: "float | None", high: "float | None", scale: float = 0.0
) -> str:
    """``pass``, ``fail`` or ``too_close`` for the interval ``least``..``most`` against ``low``..``high``
    (None: no limit on that side)."""
    above = high is not None and not at_most(most, high, scale)
    below = low is not None and not at_most(low, least, scale)
    if not above and not below:
        return "pass"
    if high is not None and not at_most(least, high, scale):
        return "fail"
    if low is not None and not at_most(low, most, scale):
        return "fail"
    return "too_close"


def distance_to_limit(value: float, low: "float | None", high: "float | None") -> float:
    """How far inside (positive) or outside (negative) the nearer limit ``value`` stands.
    At least one limit is given."""
    if low is None:
        assert high is not None
        return high - value
    if high is None:
        return value - low
    return min(high - value, value - low)
