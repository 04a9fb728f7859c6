"""Where two JSON values differ, by path."""

import json
from collections.abc import Iterator
from typing import Any, NamedTuple

SHOWN = 20  # paths told of one fact; the count is of all
LONGEST = 100
ABSENT = object()


class Difference(NamedTuple):
    """``path`` as ``answers[3].note``; ``stated`` and ``found`` as short JSON, ``""`` where there is nothing."""

    path: str
    stated: str
    found: str


def differences(stated: Any, found: Any) -> Iterator[Difference]:
    """Every innermost place at which they differ, in the order of names; of lists index by index."""
    waiting = [("", stated, found)]
    while waiting:
        path, one, other = waiting.pop()
        if isinstance(one, dict) and isinstance(other, dict):
            names = sorted(one.keys() | other.keys(), reverse=True)
            under = f"{path}." if path else ""
            waiting += [(under + name, one.get(name, ABSENT), other.get(name, ABSENT)) for name in names]
        elif isinstance(one, list) and isinstance(other, list):
            waiting += [(f"{path}[{at}]", _at(one, at), _at(other, at))
                        for at in reversed(range(max(len(one), len(other))))]  # fmt: skip
        elif type(one) is not type(other) or one != other:
            yield Difference(path, _short(one), _short(other))


def about(found: list[Difference]) -> dict[str, Any]:
    """The facts of a fact: the first of them by name, the first ``SHOWN`` as a list, and how many there are."""
    return found[0]._asdict() | {"faults": len(found), "differ": [one._asdict() for one in found[:SHOWN]]}


def _at(values: list[Any], at: int) -> Any:
    return values[at] if at < len(values) else ABSENT


def _short(value: Any) -> str:
    if value is ABSENT:
        return ""
    text = json.dumps(value, ensure_ascii=False, sort_keys=True)
    return text if len(text) <= LONGEST else f"{text[:LONGEST]}…"
