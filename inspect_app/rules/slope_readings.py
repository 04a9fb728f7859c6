"""``slope@2``: ``slope@1``, also from a phone laid on the slope and turned end for end, and with the acceptance said.

The median of at least 20 readings stands. Turned end for end on one line an instrument's own error changes its side:
the mean of both ways is free of it, half of their difference is that error, and half of the stated uncertainty is left
for the rest (our choice, no source). ``spread`` is two deviations of the readings, from their median deviation (1.4826
of it is one of a normal error), and goes with the uncertainty as independent errors do.
"""

import math

from inspect_app.rules.acceptance import ACCEPTANCE, simply
from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.compare import settle
from inspect_app.rules.guard import chance_beyond
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.slope import INPUTS as BEFORE
from inspect_app.rules.unit import from_rise, to_rise

LEAST = 20  # readings
UNSTEADY = 1.0  # degrees of spread beyond which the phone did not lie still (our choice)
MOST_OFFSET = 3.0  # degrees: no phone is that far off, it was turned on another line (our choice)
TWO_DEVIATIONS = 2.0 * 1.4826
INPUTS = dict(
    BEFORE,
    slope=wanted("slope", required=False),
    readings=wanted("slopes", required=False),
    reversed=wanted("slopes", required=False),
    acceptance=ACCEPTANCE,
)
ORDER = ("slope", "minimum")


def judge(given: dict, system: str) -> dict:
    """``rise degrees percent`` and ``minimum`` as ``slope@1``; of ``readings`` also their ``spread``, with
    ``reversed`` the instrument's ``own_error``; ``bound`` in degrees, and by simple acceptance ``risk``. Raises Refused
    ``missing`` without a slope and ``one_of`` for a slope beside readings."""
    if given["slope"] is not None and given["readings"] is not None:
        raise Refused("one_of", "readings", None)
    if given["slope"] is None and given["readings"] is None:
        raise Refused("missing", "slope")
    seen = _typed(given) if given["slope"] is not None else _felt(given)
    if seen["reason"] is not None:
        return answer(seen["values"], "not_determinable", seen["reason"])
    degrees, bound, rise = seen["degrees"], seen["bound"], seen["rise"]
    values = {
        "rise": measured(rise, "/12"),
        "degrees": measured(degrees, "deg"),
        "percent": measured(from_rise(rise, "%"), "%"),
    }
    values.update(seen["values"])
    if bound > 0.0:
        values["bound"] = measured(bound, "deg")
    minimum = given["minimum"]
    if minimum is None:
        return answer(values)
    values["minimum"] = measured(minimum, "/12")
    least = most = rise
    if simply(given):
        if bound > 0.0:
            values["risk"] = measured(chance_beyond(degrees - from_rise(minimum, "deg"), bound), "")
    elif bound > 0.0:
        least = to_rise(max(degrees - bound, 0.0), "deg")
        most = to_rise(min(degrees + bound, 89.0), "deg")
    verdict = settle(least, most, minimum, None)
    why = {"pass": None, "fail": reason("slope_too_low"), "too_close": reason("slope_too_close")}[verdict]
    return answer(values, verdict, why)


def _typed(given: dict) -> dict:
    if given["reversed"] is not None:
        raise Refused("missing", "readings")
    rise = given["slope"]
    return {"rise": rise, "degrees": from_rise(rise, "deg"), "bound": _uncertainty(given), "values": {}, "reason": None}


def _felt(given: dict) -> dict:
    """From the readings of one way round, or of both."""
    ways = [given["readings"]] if given["reversed"] is None else [given["readings"], given["reversed"]]
    values: dict = {}
    seen: dict = {"values": values, "reason": None}
    fewest = min([len(way) for way in ways])
    if fewest < LEAST:
        facts = {"count": measured(fewest, ""), "least": measured(LEAST, "")}
        seen["reason"] = reason("too_few_readings", facts)
        return seen
    medians = [_median(way) for way in ways]
    spread = max([_spread(way, _median(way)) for way in ways])
    values["spread"] = measured(spread, "deg")
    degrees, uncertain = medians[0], _uncertainty(given)
    if len(ways) == 2:
        degrees = (medians[0] + medians[1]) / 2.0
        offset = (medians[0] - medians[1]) / 2.0
        values["own_error"] = measured(offset, "deg")
        uncertain = uncertain / 2.0
        if abs(offset) > MOST_OFFSET:
            seen["reason"] = reason("phone_turned_elsewhere", {"offset": measured(abs(offset), "deg")})
    if spread > UNSTEADY:
        seen["reason"] = reason("phone_unsteady", {"spread": measured(spread, "deg")})
    seen["degrees"] = max(degrees, 0.0)
    seen["rise"] = to_rise(seen["degrees"], "deg")
    seen["bound"] = math.sqrt(uncertain * uncertain + spread * spread)
    return seen


def _uncertainty(given: dict) -> float:
    return from_rise(given["uncertainty"], "deg") if given["uncertainty"] else 0.0


def _median(numbers: list) -> float:
    ordered = sorted(numbers)
    middle = len(ordered) // 2
    return float(ordered[middle] if len(ordered) % 2 else (ordered[middle - 1] + ordered[middle]) / 2.0)


def _spread(numbers: list, median: float) -> float:
    return TWO_DEVIATIONS * _median([abs(number - median) for number in numbers])
