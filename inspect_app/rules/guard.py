"""``guard@1``: whether a reading with a stated uncertainty decides against a limit, and what accepting it risks.

Guarded acceptance (ILAC-G8:09/2019 4.2, w = U): pass or fail only when the reading is on that side by at least its
uncertainty, which leaves at most 2.5 % to chance; between, too close to call. Simple acceptance takes the reading as
it stands and may be wrong half of the time at the limit. The risk is that of a normal error of U/2 (JCGM 106:2012,
7.3): the chance that what is measured lies beyond the limit.
"""

import math

from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.compare import settle
from inspect_app.rules.inputs import read_quantity, wanted
from inspect_app.rules.limit import difference_of, number_of
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import SYSTEMS

INPUTS = {
    "reading": wanted("any"),
    "at_least": wanted("any", required=False),
    "at_most": wanted("any", required=False),
    "uncertainty": wanted("any"),
    "rule": wanted("choice", required=False, choices=("guarded", "simple")),
}
ORDER = ("reading", "at_least", "at_most")
COVERAGE = 2.0  # U is two standard uncertainties, 95 % of a normal error


def judge(given: dict, system: str) -> dict:
    """``risk`` (0 to 1) of a false accept, ``margin`` (inside positive) and a verdict; ``rule`` is ``guarded``
    unless said. Raises Refused ``one_of`` for two limits and ``missing`` for none."""
    low, high = given["at_least"], given["at_most"]
    if (low is None) == (high is None):
        raise Refused("missing" if low is None else "one_of", "at_least")
    _, unit, kind = read_quantity(given["reading"], "reading")
    if kind not in ("count", "slope"):
        unit = SYSTEMS[system][kind]
    reading, unit = number_of(given["reading"], "reading", kind, unit)
    limit, _ = number_of(high if low is None else low, "at_most" if low is None else "at_least", kind, unit)
    bound, _ = number_of(given["uncertainty"], "uncertainty", kind, unit)
    margin = limit - reading if low is None else reading - limit
    bound = abs(bound)
    values = {"margin": measured(margin, difference_of(unit)), "risk": measured(chance_beyond(margin, bound), "")}
    used = 0.0 if given["rule"] == "simple" else bound
    verdict = settle(margin - used, margin + used, 0.0, None, abs(limit))
    code = "above_limit" if low is None else "below_limit"
    why = {"pass": None, "fail": reason(code), "too_close": reason("limit_too_close")}[verdict]
    return answer(values, verdict, why)


def chance_beyond(margin: float, bound: float) -> float:
    """The chance that what was read with ``margin`` to spare (negative beyond the limit) lies beyond the limit."""
    if bound == 0.0:
        return 0.0 if margin >= 0.0 else 1.0
    return 0.5 * math.erfc(margin * COVERAGE / bound / math.sqrt(2.0))
