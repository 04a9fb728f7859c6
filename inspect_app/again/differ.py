"""Where two JSON values differ, by path."""

import json
from collections.abc import Iterable, Iterator
from itertools import islice, zip_longest
from typing import Any, NamedTuple

SHOWN, COUNTED = 20, 10_000  # paths told of one fact; how far they are counted: nobody looks at so many
LONGEST = 100
ABSENT = object()
SPELLED = json.JSONEncoder(ensure_ascii=False, sort_keys=True)
Pair = tuple[str, Any, Any]  # a path, and what stands there in each


class Difference(NamedTuple):
    """``path`` as ``answers[3].note``, ``stated`` and ``found`` there: values, ``ABSENT`` where there is nothing."""

    path: str
    stated: Any
    found: Any

    def plain(self) -> dict[str, str]:
        """For people: values as short JSON."""
        return {"path": self.path, "stated": shortened(self.stated), "found": shortened(self.found)}


def differences(stated: Any, found: Any) -> Iterator[Difference]:
    """Every innermost place at which they differ, in the order of names; of lists index by index. One at a time, and
    each short: what is compared may be anybody's, with millions of members or a name of megabytes."""
    waiting = [iter([("", stated, found)])]
    while waiting:
        path, one, other = next(waiting[-1], (None, None, None))
        if path is None:
            waiting.pop()
        elif isinstance(one, dict) and isinstance(other, dict):
            waiting.append(_named(path, one, other))
        elif isinstance(one, list) and isinstance(other, list):
            waiting.append(_numbered(path, one, other))
        elif type(one) is not type(other) or one != other:
            yield Difference(path, one, other)


def about(found: Iterable[Difference]) -> dict[str, Any] | None:
    """The facts of a fact: the first of them by name, the first ``SHOWN`` as a list, and how many there are; None where
    there is none."""
    every = iter(found)
    shown = [one.plain() for one in islice(every, SHOWN)]
    more = sum(1 for _ in islice(every, COUNTED - SHOWN))
    return shown[0] | {"faults": len(shown) + more, "differ": shown} if shown else None


def _named(path: str, one: dict[str, Any], other: dict[str, Any]) -> Iterator[Pair]:
    for name in sorted(one.keys() | other.keys()):
        under = _cut(f"{path}.{name}" if path else name)
        yield under, one.get(name, ABSENT), other.get(name, ABSENT)


def _numbered(path: str, one: list[Any], other: list[Any]) -> Iterator[Pair]:
    for at, (first, second) in enumerate(zip_longest(one, other, fillvalue=ABSENT)):
        yield _cut(f"{path}[{at}]"), first, second


def shortened(value: Any) -> str:
    """As JSON, as far as it is shown; ``""`` for ``ABSENT``."""
    if value is ABSENT:
        return ""
    text = ""
    for piece in SPELLED.iterencode(value):  # no more of it than is shown
        text += piece
        if len(text) > LONGEST:
            break
    return _cut(text)


def _cut(text: str) -> str:
    return text if len(text) <= LONGEST else f"{text[:LONGEST]}…"
