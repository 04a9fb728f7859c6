"""``count@1``: how many of the things looked at were found bad, against what may be.

The share says nothing of what was not looked at; what a sample can tell is the sampling's to say.
"""

from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused

INPUTS = {
    "count": wanted("integer"),
    "of": wanted("integer"),
    "at_most": wanted("integer", required=False),
}
ORDER = ("count", "of")


def judge(given: dict, system: str) -> dict:
    """``count of share`` (0 to 1); a verdict only against ``at_most``. None looked at is ``not_determinable``.
    Raises Refused ``more_than_looked_at``."""
    count, looked_at, most = given["count"], given["of"], given["at_most"]
    if count > looked_at:
        raise Refused("more_than_looked_at", "count", None)
    values = {"count": measured(count, ""), "of": measured(looked_at, "")}
    if not looked_at > 0.0:
        return answer(values, "not_determinable", reason("none_looked_at"))
    values["share"] = measured(count / looked_at, "")
    if most is None:
        return answer(values)
    values["at_most"] = measured(most, "")
    if at_most(count, most):
        return answer(values, "pass")
    return answer(values, "fail", reason("too_many_bad"))
