"""Check a page against the schema, and say each fault with its line."""

import difflib
from collections.abc import Iterator
from typing import Any

from inspect_app.checklist.page import Page, Path
from inspect_app.checklist.problem import Problem, spell
from inspect_app.checklist.schema import Applies, Cause, Definition, Item, Rule, Sampling, Text, Units

SHAPES = (Definition, Item, Rule, Sampling, Applies, Units, Text, Cause)
KNOWN = sorted({name for shape in SHAPES for name in shape().fields})


def shape_problems(page: Page) -> list[Problem]:
    """Everything that has the wrong shape, each fault once."""
    return [_problem(page, path, told) for path, told in _flat(Definition().validate(page.data), ())]


def _flat(errors: Any, path: Path) -> Iterator[tuple[Path, str]]:
    if isinstance(errors, dict):
        for step, inner in errors.items():
            yield from _flat(inner, path if step == "_schema" else (*path, step))
    elif isinstance(errors, list):
        for one in errors:
            yield from _flat(one, path)
    else:
        yield path, str(errors)


def _problem(page: Page, path: Path, told: str) -> Problem:
    code, _, allowed = told.partition("|")
    value = _at(page.data, path)
    facts: dict[str, object] = {"allowed": allowed} if allowed else {}
    if code == "required":
        facts["name"] = path[-1]
        code = "missing_language" if path[-1] in ("en", "es") else code
        value = None
    if code == "unknown_field":
        near = difflib.get_close_matches(str(path[-1]), KNOWN, 1)
        code, facts = ("misspelt_field", {"near": near[0]}) if near else (code, {})
        value = path[-1]
    if code == "wrong_type":
        code = f"not_{allowed}"
    return Problem(page.line(path), spell(path), value, code, facts)


def _at(data: Any, path: Path) -> Any:
    for step in path:
        if isinstance(data, dict):
            data = data.get(step)
        elif isinstance(data, list) and isinstance(step, int) and step < len(data):
            data = data[step]
        else:
            return None
    return data
