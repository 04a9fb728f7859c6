"""``spacing@2``: ``spacing@1`` with the tape's uncertainty and the acceptance said: simple unless ``guarded``.

The approved spacing is the target that a crew is told to keep, so a reading at it is a good one: simple acceptance by
default, with its risk. The uncertainty is that of one gap; a mean over many gaps has its share of it.
"""

from inspect_app.rules.acceptance import ACCEPTANCE, accept, simply
from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.inputs import wanted
from inspect_app.rules.spacing import INPUTS as BEFORE
from inspect_app.rules.spacing import ORDER as ORDER
from inspect_app.rules.spacing import told
from inspect_app.rules.unit import SYSTEMS

INPUTS = dict(BEFORE, uncertainty=wanted("length", required=False, most_mm=50.0), acceptance=ACCEPTANCE)


def judge(given: dict, system: str) -> dict:
    """``longest mean limit`` as ``spacing@1``; with an ``uncertainty`` its ``bound``, and by simple acceptance
    ``risk``. A good count alone still decides nothing."""
    values, widest = told(given, system)
    bound = given["uncertainty"] or 0.0
    counted = given["count"] is not None
    if counted and (given["gaps"] is None or widest > max(given["gaps"])):  # the mean decides, of so many gaps
        bound = bound / (given["count"] - 1.0)
    if bound > 0.0:
        values["bound"] = measured(bound, SYSTEMS[system]["length"])
    verdict = accept(widest, widest, bound, (None, given["limit"]), simply(given, "simple"), values)
    if verdict == "fail":
        return answer(values, "fail", reason("gap_too_wide"))
    if given["gaps"] is None:
        values.pop("risk", None)  # nothing was accepted
        return answer(values, "not_determinable", reason("widest_gap_needed"))
    return answer(values, verdict, reason("spacing_too_close") if verdict == "too_close" else None)
