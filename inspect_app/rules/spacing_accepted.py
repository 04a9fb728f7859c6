"""``spacing@2``: ``spacing@1`` with the tape's uncertainty and the acceptance said: simple unless ``guarded``.

The approved spacing is the target that a crew is told to keep, so a reading at it is a good one: simple acceptance by
default, with its risk. The uncertainty is that of one gap; a mean over many gaps has its share of it. The widest gap
and the mean are each held against the limit, and the worse of the two stands. A widest gap below its own mean, by more
than both doubts and 2 in 100 (common practice, no source), was not the widest: that decides nothing.
"""

from inspect_app.rules.acceptance import ACCEPTANCE, accept, simply
from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.inputs import wanted
from inspect_app.rules.spacing import INPUTS as BEFORE
from inspect_app.rules.spacing import ORDER as ORDER
from inspect_app.rules.spacing import told
from inspect_app.rules.unit import SYSTEMS

INPUTS = dict(BEFORE, uncertainty=wanted("length", required=False, most_mm=50.0), acceptance=ACCEPTANCE)
ROUNDED = 0.02  # of the mean: what a count and a tape read in passing may differ by
RANK = {"pass": 0, "too_close": 1, "fail": 2}


def judge(given: dict, system: str) -> dict:
    """``longest mean limit`` as ``spacing@1``; with an ``uncertainty`` its ``bound``, and by simple acceptance
    ``risk``. A good count alone still decides nothing."""
    values, _ = told(given, system)
    bound, counted = given["uncertainty"] or 0.0, given["count"] is not None
    widest, mean = given["gaps"] and max(given["gaps"]), values["mean"]["value"]
    seen = []  # each by its own doubt, so that a count beside it never makes a widest gap more certain
    if widest is not None:
        seen.append(_held(given, widest, bound, "gap_too_wide"))
    if counted:
        seen.append(_held(given, mean, bound / (given["count"] - 1.0), "mean_too_wide"))
    worst = max(seen, key=lambda one: one["weighs"])
    spare = max(bound + bound / (given["count"] - 1.0), ROUNDED * mean) if len(seen) > 1 else mean
    if worst["verdict"] != "fail" and widest is not None and not at_most(mean - spare, widest):
        return answer(values, "not_determinable", reason("widest_below_mean"))
    if worst["bound"] > 0.0:
        values["bound"] = measured(worst["bound"], SYSTEMS[system]["length"])
    verdict = worst["verdict"]
    if verdict != "fail" and given["gaps"] is None:
        return answer(values, "not_determinable", reason("widest_gap_needed"))
    values.update(worst["risk"])
    if verdict == "fail":
        return answer(values, "fail", reason(worst["code"]))
    return answer(values, verdict, reason("spacing_too_close") if verdict == "too_close" else None)


def _held(given: dict, length: float, bound: float, code: str) -> dict:
    risk: dict = {}
    verdict = accept(length, length, bound, (None, given["limit"]), simply(given, "simple"), risk)
    weighs = (RANK[verdict], risk["risk"]["value"] if risk else 0.0, length + bound)
    return {"verdict": verdict, "bound": bound, "weighs": weighs, "risk": risk, "code": code}
