"""The two numbers of a line of a fit check, side by side, and what is to spare between them."""

from inspect_app.record.paths import follow
from inspect_app.rules.quantity import parse
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import change_unit, dimension_of

# line: (sense, (value or None, path) of the limit, (value or None, path) of what this roof has)
PAIRS = {
    "slope_drawn": ("at_least", ("minimum", "assembly.minimum_slope"), ("rise", "area.slope")),
    "slope_found": ("at_least", ("minimum", "assembly.minimum_slope"), ("rise", "found.slope")),
    "longest_panel": ("at_most", ("at_most", "assembly.longest_run"), ("reading", "area.panel_length")),
    "run": ("at_most", ("aimed", "area.run"), ("run", "area.run")),
    "fixed_clip_run": ("at_most", ("at_most", "assembly.fixed_clip_run"), ("reading", "area.run")),
    "fold_return": ("at_least", ("needed", "assembly.fold_return"), ("return", "assembly.fold_return")),
    "fold_gap": ("between", ("low", "assembly.fold_return"), ("gap", "found.fold_gap")),
    "clearance": ("at_least", ("needed", "found.clearance"), ("clearance", "found.clearance")),
    "zone": ("at_most", ("spacing", ""), ("reached", "")),
    "thickness": ("at_least", ("tested_minimum", ""), ("minimum", "")),
    "penetration": ("at_least", ("least", "assembly.penetration"), ("penetration", "assembly.penetration")),
}
COMPUTED = ("aimed", "needed", "low", "penetration")  # never read from a path: that one only lends its unit


def pair(line: str, answer: dict, context: dict) -> dict:
    """``{"sense", "limit"?, "upper"?, "found"?, "margin"?, "other"?}`` of one line's answer, or of the verdict that
    was recorded for it.

    ``sense``: ``at_least``, ``at_most``, ``between`` (``limit`` to ``upper``), ``equal``, ``until`` (dates), ``named``
    (``limit`` a list of words), ``as`` (words). Quantities are ``{"value": number, "unit"}`` in the unit that the
    limit was entered in; ``margin`` is positive inside. ``other``: of a run, the length that holds without any aim.
    """
    kind = line.split(":")[0]
    if kind not in PAIRS:
        return _plain(kind, answer, context)
    sense, limit, found = PAIRS[kind]
    values = answer["values"]
    unit = _unit(limit[1], context) or _unit(found[1], context)
    told = {"sense": sense, "limit": _number(values, limit, unit, context),
            "found": _number(values, found, unit, context)}  # fmt: skip
    if sense == "between":
        told["upper"] = _number(values, ("high", ""), unit, context)
    if kind == "run":
        told["other"] = _number(values, ("centred", ""), unit, context)
    told["margin"] = _margin(told)
    return {name: told[name] for name in told if told[name] is not None}


def _plain(kind: str, answer: dict, context: dict) -> dict:
    """Lines whose two sides are a date, a count or words."""
    told: dict = {"sense": "as", "limit": None, "found": None, "margin": None}
    if kind == "approval":
        told = {"sense": "until", "limit": _words("assembly.approval.expires", context),
                "found": _words("found.day", context), "margin": _float(answer["values"].get("days_left"))}  # fmt: skip
    elif kind == "fixed_count":
        found = follow("found.fixed_lines", context)
        told = {"sense": "equal", "limit": {"value": 1, "unit": ""},
                "found": {"value": found, "unit": ""} if isinstance(found, int) else None,
                "margin": _float(answer["values"].get("margin"))}  # fmt: skip
    elif kind == "clip_seam":
        seams = follow("assembly.clip_seams", context)
        told = {"sense": "named", "limit": seams if isinstance(seams, list) else None,
                "found": _words("assembly.seam", context)}  # fmt: skip
    elif kind in ("deck", "underlayment"):
        told = {"sense": "as", "limit": _words("assembly." + kind, context), "found": _words("found." + kind, context)}
    elif kind == "fixed_place":
        told = {"sense": "as", "found": _read(follow("area.fixed_line.from_low_end", context))}
    return {name: told[name] for name in told if told[name] is not None}


def _number(values: dict, where: tuple, unit: "str | None", context: dict) -> "dict | None":
    """The value that the rule gave, else what stands at the path, in ``unit``; None where neither can be read."""
    name, path = where
    quantity = _float(values.get(name)) if name in values else None
    if quantity is None and path and name not in COMPUTED:
        quantity = _read(follow(path, context))
    if quantity is None or unit is None or dimension_of(unit) != dimension_of(quantity["unit"]):
        return quantity
    return {"value": change_unit(quantity["value"], quantity["unit"], unit), "unit": unit}


def _float(quantity: object) -> "dict | None":
    """As a number, whether the rule gave it or an entry carries it as text."""
    if not isinstance(quantity, dict):
        return None
    try:
        number = float(quantity["value"])
    except (KeyError, TypeError, ValueError):
        return None
    return {"value": number, "unit": quantity.get("unit")} if number - number == 0.0 else None


def _read(quantity: object) -> "dict | None":
    try:
        number, unit, _ = parse(quantity, "")
    except Refused:
        return None
    return {"value": number, "unit": unit}


def _words(path: str, context: dict) -> "str | None":
    said = follow(path, context)
    return said if isinstance(said, str) and said else None


def _unit(path: str, context: dict) -> "str | None":
    read = _read(follow(path, context)) if path else None
    return None if read is None else read["unit"]


def _margin(told: dict) -> "dict | None":
    limit, found = told["limit"], told["found"]
    if limit is None or found is None or limit["unit"] != found["unit"]:
        return None
    inside = found["value"] - limit["value"]
    if told["sense"] == "at_most":
        inside = limit["value"] - found["value"]
    elif told["sense"] == "between" and told["upper"] is not None:
        inside = min(inside, told["upper"]["value"] - found["value"])
    return {"value": inside, "unit": limit["unit"]}
