"""``longest_run@2``: as ``longest_run@1``, with the ``run`` and its ``margin`` to the longest aimed run beside it.

A run that only the day's aim makes hold passes with ``aim_needed``: then where each screw or tab stands is part of what
was agreed, and the morning card says it.
"""

from inspect_app.rules import longest_run
from inspect_app.rules.answer import all_measured, reason
from inspect_app.rules.unit import SYSTEMS

INPUTS = longest_run.INPUTS
ORDER = longest_run.ORDER


def judge(given: dict, system: str) -> dict:
    """``aimed centred`` and, with a ``run``, ``run margin`` and the verdict. Raises as ``longest_run@1``."""
    found = longest_run.judge(given, system)
    run = given["run"]
    if run is None:
        return found
    margin = found["values"]["aimed"]["value"] - run
    found["values"].update(all_measured({"run": run, "margin": margin}, SYSTEMS[system]["length"]))
    if found["reason"] is not None and found["reason"]["code"] == "set_at_aim":
        found["reason"] = reason("aim_needed")
    return found
