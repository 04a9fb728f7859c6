"""Judge one item of a checklist against the job's record and a reading."""

from inspect_app.record.own_panel import with_own_panel
from inspect_app.record.paths import follow, zone_of
from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import describe, judge

# Rules do without these: then the approved gauge stands for the sheet in hand, and a temperature is exact and fresh.
TOLD = ("reading.value", "reading.metal_temperature", "reading.metal_uncertainty", "reading.metal_age")


def judge_item(item: dict, context: dict) -> dict:
    """The rulebook's answer for ``item`` (a compiled checklist item with a ``rule``).

    ``context``: ``{"job", "assembly", "area", "walk", "station", "zone"?, "reading"}``, each a body or None.
    The answer's ``inputs`` are the values as recorded, so that it can be judged again from the entry alone.
    A missing input, or one the rule refuses, gives ``not_determinable`` with the fact: an unknown is never
    a pass. An item without a rule raises ``ValueError``: that is our misuse, not bad data.
    """
    rule = item.get("rule")
    if not rule:
        raise ValueError("this item is judged by a person, it has no rule")
    if context.get("zone") is None:
        context = dict(context)
        context["zone"] = zone_of(context.get("assembly"), context.get("station"))
    context = with_own_panel(context)
    known = describe(rule["name"])
    inputs = {}
    for name in sorted(rule["inputs"]):
        value = follow(rule["inputs"][name], context)
        if value is not None:
            inputs[name] = value
        elif known.get(name, {}).get("required") or _left_out(rule["inputs"], name, context):
            return _unknown(rule["name"], inputs, "missing_input", {"input": name, "path": rule["inputs"][name]})
    try:
        answer = judge(rule["name"], inputs)
    except Refused as refused:
        if refused.code == "missing":  # needed only beside what else is there: the same want, said the same way
            path = rule["inputs"].get(refused.field, refused.field)
            return _unknown(rule["name"], inputs, "missing_input", {"input": refused.field, "path": path})
        return _unknown(rule["name"], inputs, refused.code, {"field": refused.field, "value": refused.value})
    answer["inputs"] = inputs
    return answer


def _left_out(paths: dict, name: str, context: dict) -> bool:
    """Whether the item asks for it and nobody told: what a person reads, how old and how sure, how good the tool is. A
    slope's readings stand in for its value."""
    path = paths[name]
    if path == "reading.value" and "reading.readings" in paths.values():
        return follow("reading.readings", context) is None
    return path in TOLD or (isinstance(path, str) and path.startswith("job.instruments."))


def _unknown(name: str, inputs: dict, code: str, facts: dict) -> dict:
    """What is recorded must not judge to anything else later: inputs that the rule takes as they are are left out."""
    try:
        judge(name, inputs)
        inputs = {}
    except Refused:
        pass
    return {"rule": name, "verdict": "not_determinable", "reason": {"code": code, "facts": facts},
            "values": {}, "inputs": inputs}
