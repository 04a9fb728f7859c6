"""Whether an item names a rule of the rulebook, and gives it inputs that it can take."""

import difflib
from collections.abc import Iterator, Mapping
from typing import Any

from inspect_app.checklist.paths import ROOTS, dimension, is_path, paths_for
from inspect_app.rules.unit import dimension_of

Rules = Mapping[str, Mapping[str, Any]]
Fault = tuple[tuple[object, ...], object, str, dict[str, object]]  # path in the item, value, code, facts


def rule_faults(item: dict[str, Any], per: str, rules: Rules) -> Iterator[Fault]:
    """Faults of an item's rule. ``rules``: ``{"slot@1": {input: {"dimension", "required"}}}``."""
    name, inputs = item["rule"]["name"], item["rule"]["inputs"]
    if name not in rules:
        same = sorted(rule for rule in rules if rule.split("@")[0] == name.split("@")[0])
        code = "unknown_rule_version" if same else "unknown_rule"
        yield ("rule", "name"), name, code, {"allowed": ", ".join(same or sorted(rules))}
        return
    wants = rules[name]
    for wanted in sorted(wants):
        if wants[wanted]["required"] and wanted not in inputs:
            facts = {"rule": name, "input": wanted, "dimension": wants[wanted]["dimension"]}
            yield ("rule", "inputs"), None, "missing_input", facts
    for given, source in inputs.items():
        here = ("rule", "inputs", given)
        if given not in wants:
            near = difflib.get_close_matches(given, list(wants), 1)
            yield here, given, "unknown_input", {"rule": name, "allowed": ", ".join(near or sorted(wants))}
        else:
            yield from _source_faults(here, source, wants[given], item, per)


def _source_faults(here: tuple[object, ...], source: Any, wants: Mapping[str, Any], item: dict[str, Any],
                   per: str) -> Iterator[Fault]:  # fmt: skip
    wanted = wants["dimension"]
    if isinstance(source, str) and is_path(source):
        unit = (item.get("unit") or {}).get("US")
        found = dimension(source, item["instrument"], dimension_of(unit))
        allowed = paths_for(item["instrument"], per)
        root = source.split(".")[0]
        if root not in ROOTS:
            yield here, source, "unknown_root", {"allowed": ", ".join(ROOTS)}
        elif per != "station" and root in ("station", "zone"):
            yield here, source, "no_station", {"root": root}
        elif source not in allowed:
            near = difflib.get_close_matches(source, allowed, 1, 0.5)
            own = near or [path for path in allowed if path.startswith(root + ".")]
            yield here, source, "unknown_path", {"allowed": ", ".join(own) or "-"}
        elif found is not None and not _suits(found, wanted):
            yield here, source, "wrong_dimension", {"found": found, "wanted": wanted}
        return
    found = _literal(source)
    if found == "bad_quantity":
        yield here, _shown(source), "bad_quantity", {}
    elif found == "word" and wanted == "choice":
        choices = wants.get("choices") or ()
        if choices and source not in choices:
            yield here, source, "choice", {"allowed": ", ".join(map(str, choices))}
    elif not _suits(found, wanted):
        yield here, _shown(source), "wrong_dimension", {"found": found, "wanted": wanted}


def _suits(found: str, wanted: str) -> bool:
    alike = {"integer": ("integer", "count", "pixels", "text"), "word": ("text",)}
    return found == wanted or wanted == "any" or wanted in alike.get(found, ())


def _literal(source: Any) -> str:
    if isinstance(source, bool):
        return "boolean"
    if isinstance(source, int):
        return "integer"
    if isinstance(source, str):
        return "word"
    whole = source["value"].removeprefix("-").replace(".", "", 1)
    found = dimension_of(source["unit"])
    decimal = whole.isascii() and whole.isdigit() and not source["value"].endswith(".")
    return found if found and decimal and not source["value"].startswith((".", "-.")) else "bad_quantity"


def _shown(source: Any) -> object:
    return f"{source['value']} {source['unit']}" if isinstance(source, dict) else source
