"""The two numbers of a recorded line of a fit check, and what is to be got where it stands open."""

from typing import Any

from inspect_app.record.fit import GET
from inspect_app.record.fit_lines import lines, zone_line
from inspect_app.record.fit_pair import pair

# What no rule settles: where its inputs stand in the record.
SAID = {
    "fixed_place": {"fixed_line": "area.fixed_line.from_low_end"},
    "deck": {"approved": "assembly.deck", "deck": "found.deck"},
    "underlayment": {"approved": "assembly.underlayment", "underlayment": "found.underlayment"},
}


def pair_of(line: str, verdict: dict[str, Any], bodies: dict[str, Any]) -> dict[str, Any]:
    """``record.fit_pair.pair`` of a recorded verdict, its numbers as text. What the line was judged from comes from
    the line; the record as it stands now (``bodies``: ``job``, ``assembly``, ``area``, ``found``) tells the rest."""
    context = dict(bodies) | {"zone": {}}
    for name, path in _paths(line, bodies).items():
        value = (verdict.get("inputs") or {}).get(name)
        if value is not None and isinstance(path, str) and path.split(".")[0] in bodies:
            context = _put(context, path.split("."), value)
    try:
        told = pair(line, {"values": verdict.get("values") or {}}, context)
    except Exception:  # recorded values are anybody's data: a pair that cannot be read is not printed
        return {"sense": "as"}
    return {name: _text(value) for name, value in told.items()}


def to_get(line: str, verdict: dict[str, Any], bodies: dict[str, Any]) -> str | None:
    """What to get, ``root.field``, as ``record.fit.fit`` says it; None where nothing is asked for."""
    reason = verdict.get("reason") or {}
    code, facts = reason.get("code"), reason.get("facts") or {}
    if isinstance(code, str) and code in GET:
        return str(GET[code])
    facts = facts if isinstance(facts, dict) else {}
    path = facts.get("path") or _paths(line, bodies).get(str(facts.get("field") or facts.get("input")).split("[")[0])
    return ".".join(path.split(".")[:2]) if isinstance(path, str) and "." in path else None


def _paths(line: str, bodies: dict[str, Any]) -> dict[str, Any]:
    if line.startswith("zone:"):
        found: dict[str, Any] = zone_line(line[5:], None, bodies["assembly"].get("attachment"))["inputs"]
        return found | {"spacing": "assembly.zones"}
    for one in lines(bodies["assembly"], bodies["found"]):
        if one["line"] == line:
            return dict(one["inputs"])
    return SAID.get(line, {})


def _put(body: Any, steps: list[str], value: Any) -> Any:
    """A copy with ``value`` at the steps."""
    if not steps:
        return value
    own = dict(body) if isinstance(body, dict) else {}
    return own | {steps[0]: _put(own.get(steps[0]), steps[1:], value)}


def _text(value: Any) -> Any:
    if isinstance(value, dict):
        return {name: repr(one) if isinstance(one, float) else one for name, one in value.items()}
    return value
