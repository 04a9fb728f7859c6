"""Compile the text of a definition: ``Compiled``, or every problem it has. Pure."""

import base64
import hashlib
import json
from typing import Any, NamedTuple

from inspect_app.checklist.meaning import definition_faults, item_faults
from inspect_app.checklist.page import Page, read
from inspect_app.checklist.problem import Problem, in_order, spell
from inspect_app.checklist.rule_use import Fault, Rules
from inspect_app.checklist.schema import Definition, Item
from inspect_app.checklist.shape import shape_problems


class Compiled(NamedTuple):
    """``definition``: as the format says; ``data``: its JSON, the bytes served; ``digest`` of them."""

    definition: dict[str, Any]
    data: bytes
    digest: str


def compile_text(text: str, rules: Rules) -> Compiled | list[Problem]:
    """``rules``: ``{"slot@1": description of its inputs}`` as ``rulebook.describe`` gives it. Nothing is
    raised: whatever is wrong with the text comes back as problems, by line."""
    page = read(text)
    if page.data is None and page.problems:
        return in_order(page.problems)
    shape = shape_problems(page)
    problems = page.problems + [one for one in shape if not _told(one, page.problems)]
    problems += _meaning(page, shape, rules)
    return in_order(problems) if problems else _compiled(page.data)


def _told(problem: Problem, already: list[Problem]) -> bool:
    """An alias leaves nothing behind: that the place is empty need not be said as well."""
    return any(one.line == problem.line and one.field == problem.field for one in already)


def _meaning(page: Page, shape: list[Problem], rules: Rules) -> list[Problem]:
    """Faults of meaning in every item whose own shape is sound, however broken the others are."""
    data: dict[str, Any] = page.data if isinstance(page.data, dict) else {}
    items: list[Any] = data["items"] if isinstance(data.get("items"), list) else []
    per = data["per"] if data.get("per") in ("walk", "area") else "station"
    found: list[Problem] = []
    sound = 0
    for n, item in enumerate(items):
        if any(one.field == f"items[{n}]" or one.field.startswith(f"items[{n}].") for one in shape):
            continue
        sound += 1
        loaded = Item().load(item)
        found += [_placed(page, ("items", n), fault) for fault in item_faults(loaded, per, rules)]
    if not shape and sound == len(items):
        found += [_placed(page, (), fault) for fault in definition_faults(Definition().load(data))]
    return found


def _placed(page: Page, before: tuple[object, ...], fault: Fault) -> Problem:
    path, value, code, facts = fault
    whole = (*before, *path)
    return Problem(page.line(whole), spell(whole), value, code, facts)


def _compiled(data: Any) -> Compiled:
    definition = Definition().load(data)
    text = json.dumps(definition, sort_keys=True, separators=(",", ":"), ensure_ascii=False, allow_nan=False)
    encoded = text.encode()
    return Compiled(json.loads(encoded), encoded, digest_of(encoded))


def digest_of(data: bytes) -> str:
    """base64url SHA-256, 43 characters: the name of a compiled definition."""
    return base64.urlsafe_b64encode(hashlib.sha256(data).digest()).decode().rstrip("=")
