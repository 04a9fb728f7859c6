"""The fit check: every limit of the approved assembly against one roof area, before work starts.

Each line stands for itself: an input that is missing or cannot be read leaves its own line open, says what to get, and
hides no other. It replaces no engineer, tested assembly, code or licence; it says what the papers and this roof say.
"""

from inspect_app.record.fit_lines import lines, zone_line
from inspect_app.record.fit_pair import pair
from inspect_app.record.instruments import instruments
from inspect_app.record.judge import judge_item
from inspect_app.record.paths import ROOTS, follow
from inspect_app.rules.answer import reason
from inspect_app.rules.compare import at_most
from inspect_app.rules.quantity import convert
from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import judge

GET = {"expiry_unknown": "assembly.approval", "metal_needed": "found.metal_now"}  # by the rule's own reason


def fit(job: object, assembly: object, area: object, found: object, day: object) -> list:
    """``[{"line", "rule", "verdict", "reason", "values", "inputs", "pair", "get"?}]`` in a fixed order.

    ``job``, ``assembly``, ``area``: as the fold gives them. ``found``: what was found on this roof, all of it
    optional (the body of a ``fit`` entry). ``day``: ``2026-11-25``. ``rule`` is None where a person says or the record
    itself shows what holds. ``pair``: see ``fit_pair``. ``get``: what to get, ``root.field``; its words are
    ``fit.get.ROOT.FIELD``. Never raises for what it is given.
    """
    context = {"job": _dict(job), "assembly": _dict(assembly), "area": _dict(area), "found": _dict(found), "zone": {}}
    context["job"]["instruments"] = instruments(_told(context["job"]))
    context["found"]["day"] = day
    told: list = []
    for line in lines(context["assembly"], context["found"]):
        if line["line"] == "fixed_count":
            told.append(_fixed_place(context))
        if line["line"] == "thickness":
            told.extend(_zones(context))
        told.append(_ruled(line, context))
    told.extend([_as_approved(name, context) for name in ("deck", "underlayment")])
    for answer in told:
        answer["pair"] = pair(answer["line"], answer, context)
    return told


def _ruled(line: dict, context: dict) -> dict:
    inputs = line["inputs"]
    for name in line["wanted"]:
        if follow(inputs[name], context) is None:
            known = {one: follow(inputs[one], context) for one in inputs}
            known = {one: known[one] for one in known if known[one] is not None}
            return _open(line["line"], line["rule"], name, _path(inputs, name), known)
    answer = judge_item({"rule": {"name": line["rule"], "inputs": inputs}}, context)
    why = answer["reason"] or {"code": "", "facts": {}}
    field = why["facts"].get("field") or why["facts"].get("input")
    told = {"line": line["line"], "rule": answer["rule"], "verdict": answer["verdict"], "reason": answer["reason"],
            "values": answer["values"], "inputs": answer["inputs"]}  # fmt: skip
    if why["code"] in GET:
        told["get"] = GET[why["code"]]
    elif isinstance(field, str):
        told["get"] = _short(_path(inputs, field.split("[")[0].split(".")[0]))
    return told


def _path(inputs: dict, name: str) -> str:
    """Where an input comes from; a zone's spacing, given as it stands, comes from the approval's zones."""
    path = inputs.get(name)
    return path if isinstance(path, str) and path.split(".")[0] in ROOTS and "." in path else "assembly.zones"


def _open(line: str, rule: "str | None", name: str, path: str, known: dict) -> dict:
    """Not determinable, because something is not known. What is recorded beside it must not judge to anything else
    later: inputs that the rule takes without the missing one are left out."""
    if rule is not None:
        try:
            judge(rule, known)
            known = {}
        except Refused:
            pass
    return {"line": line, "rule": rule, "verdict": "not_determinable", "values": {}, "inputs": known,
            "reason": reason("missing_input", {"input": name, "path": path}), "get": _short(path)}  # fmt: skip


def _fixed_place(context: dict) -> dict:
    """Whether the record says where the panels of this area are held; how many places hold one is a line of its own."""
    line = context["area"].get("fixed_line")
    try:
        at = convert(follow("area.fixed_line.from_low_end", context), "m", "fixed_line")
        long = convert(follow("area.panel_length", context), "m", "length")
    except Refused as refused:
        where = "area.fixed_line" if refused.field == "fixed_line" else "area.panel_length"
        return _open("fixed_place", None, refused.field, where, {})
    if not (at_most(0.0, at, long) and at_most(at, long)):  # held by nothing that is on this roof
        return {"line": "fixed_place", "rule": None, "verdict": "not_determinable", "values": {}, "inputs": {},
                "reason": reason("beyond_panel", {"field": "fixed_line"}), "get": "area.fixed_line"}  # fmt: skip
    return _said("fixed_place", "pass", None, {"fixed_line": line["from_low_end"]})


def _zones(context: dict) -> list:
    """One line for each zone that the area has; one that asks for the zones where it has none."""
    named: list = []
    for name in _list(context["area"].get("zones")):
        if isinstance(name, str) and name and name not in named:
            named.append(name)
    if not named:
        return [_open("zones", None, "zones", "area.zones", {})]
    attachment = context["assembly"].get("attachment")
    return [_ruled(zone_line(name, _spacing(name, context["assembly"]), attachment), context) for name in named]


def _spacing(name: str, assembly: dict) -> object:
    for zone in _list(assembly.get("zones")):
        if isinstance(zone, dict) and zone.get("name") == name:
            return zone.get("spacing")
    return None


def _as_approved(name: str, context: dict) -> dict:
    """What only a person can say: whether the deck or the underlayment is the approved one."""
    approved, choice = context["assembly"].get(name), context["found"].get(name)
    if not isinstance(approved, str) or not approved:
        return _open(name, None, name, "assembly." + name, {})
    if choice not in ("as_approved", "other"):
        return _open(name, None, name, "found." + name, {"approved": approved})
    inputs = {"approved": approved, name: choice}
    if choice == "other":
        return _said(name, "fail", reason("not_as_approved"), inputs)
    return _said(name, "pass", None, inputs)


def _said(line: str, verdict: str, why: "dict | None", inputs: dict) -> dict:
    return {"line": line, "rule": None, "verdict": verdict, "reason": why, "values": {}, "inputs": inputs}


def _short(path: str) -> str:
    return ".".join(path.split(".")[:2])


def _told(job: dict) -> dict:
    """The job's own instruments that have the form of one: what cannot be read is as if it were not told."""
    own = _dict(job.get("instruments"))
    return {"instruments": {name: own[name] for name in own if isinstance(own[name], dict)}}


def _dict(value: object) -> dict:
    return dict(value) if isinstance(value, dict) else {}


def _list(value: object) -> list:
    return list(value) if isinstance(value, (list, tuple)) else []
