"""``penetration@1``: how far a fastener reaches into what holds it, against the least that was approved.

The fastener's length less everything between its seat and what holds it, counted to the tip (arithmetic). The least
is the approval's; whether the tip counts is the approval's too.
"""

from inspect_app.rules.answer import all_measured, answer, reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.inputs import wanted
from inspect_app.rules.unit import SYSTEMS

INPUTS = {
    "fastener": wanted("length", most_mm=1000.0, above_zero=True),
    "build_up": wanted("length", most_mm=1000.0),
    "least": wanted("length", most_mm=1000.0),
}
ORDER = ("least", "fastener", "build_up")


def judge(given: dict, system: str) -> dict:
    """``penetration least margin``; a penetration below zero is what is missing to reach at all."""
    reached, least = given["fastener"] - given["build_up"], given["least"]
    length = SYSTEMS[system]["length"]
    values = all_measured({"penetration": reached, "least": least, "margin": reached - least}, length)
    if at_most(least, reached, given["fastener"]):
        return answer(values, "pass")
    return answer(values, "fail", reason("fastener_too_short"))
