"""``clip_seam@1``: whether the approval names this clip for this seam. What was approved for one seam says nothing of
another (approved assembly)."""

from inspect_app.rules.answer import answer, measured, reason
from inspect_app.rules.inputs import wanted

SEAMS = ("snap_lock", "single_lock", "double_lock")
INPUTS = {
    "seam": wanted("choice", choices=SEAMS),
    "seams": wanted("choices", choices=SEAMS),
}
ORDER = ()


def judge(given: dict, system: str) -> dict:
    """``seams_named``: for how many seams the approval names the clip."""
    values = {"seams_named": measured(float(len(given["seams"])), "")}
    if given["seam"] in given["seams"]:
        return answer(values, "pass")
    return answer(values, "fail", reason("seam_not_named"))
