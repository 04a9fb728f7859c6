"""Read the YAML of a definition as plain data that remembers its lines.

Built from the parser's events, so nothing is ever constructed from a tag: a file is maps, lists, text, whole
numbers, true, false and null by the core schema of YAML 1.2, 10.3. Tags, anchors and aliases, numbers with a
fraction, repeated keys, second documents, deep nesting and large files are problems with their lines. A file
from anyone may be read; it costs little time and memory whatever it holds.
"""

import re
from collections.abc import Iterator
from typing import Any, NamedTuple

from ruamel.yaml import YAML
from ruamel.yaml.error import MarkedYAMLError, YAMLError
from ruamel.yaml.events import (
    AliasEvent,
    DocumentStartEvent,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
)
from ruamel.yaml.reader import ReaderError

from inspect_app.checklist.problem import Problem, spell
from inspect_app.checklist.scalar import plain

LARGEST = 256 * 1024
DEEPEST = 12
MOST_EVENTS = 20_000

Path = tuple[object, ...]


class Page(NamedTuple):
    """``data``: what the file says; ``lines``: path to line, from 1; ``problems``: what was not taken."""

    data: Any
    lines: dict[Path, int]
    problems: list[Problem]

    def line(self, path: Path) -> int:
        """The line of ``path``, or of the nearest thing around it that the file holds."""
        while path and path not in self.lines:
            path = path[:-1]
        return self.lines.get(path, 1)


def read(text: str) -> Page:
    """The page; ``data`` is None where the file cannot be read at all."""
    if len(text.encode("utf-8", "surrogatepass")) > LARGEST:
        return Page(None, {}, [Problem(1, "file", None, "too_large", {"limit": LARGEST // 1024})])
    reading = _Reading()
    try:
        data = reading.document(_events(text))
    except _Stop:
        data = None
    except MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        line = mark.line + 1 if mark else 1
        said = re.sub(r"\s+", " ", str(error.problem or error.context or ""))
        reading.problems.append(Problem(line, "file", said, "not_yaml"))
        data = None
    except ReaderError as error:
        line = text.count("\n", 0, error.position) + 1
        reading.problems.append(Problem(line, "file", _code(error.character), "bad_character"))
        data = None
    except YAMLError as error:
        reading.problems.append(Problem(1, "file", type(error).__name__, "not_yaml"))
        data = None
    return Page(data, reading.lines, reading.problems)


def _events(text: str) -> Iterator[Any]:
    yield from YAML(typ="safe", pure=True).parse(text)


def _code(character: object) -> str:
    number = ord(character) if isinstance(character, str) and len(character) == 1 else character
    return f"U+{number:04X}" if isinstance(number, int) else str(number)


class _Stop(Exception):
    """Enough has been seen: the rest is not worth the reading."""


class _Reading:
    def __init__(self) -> None:
        self.lines: dict[Path, int] = {}
        self.problems: list[Problem] = []
        self.count = 0

    def document(self, events: Iterator[Any]) -> Any:
        data, documents = None, 0
        for event in events:
            if isinstance(event, DocumentStartEvent):
                documents += 1
                if documents > 1:
                    self._problem((), event, None, "second_document")
                    break
                if event.tags or event.version not in (None, (1, 2)):
                    self._problem((), event, None, "directive")
                data = self._value(next(events), events, ())
        return data

    def _value(self, event: Any, events: Iterator[Any], path: Path) -> Any:
        self._note(event, path)
        if isinstance(event, ScalarEvent):
            return self._scalar(event, path)
        if isinstance(event, MappingStartEvent):
            return self._mapping(events, path)
        if isinstance(event, SequenceStartEvent):
            return self._sequence(events, path)
        return None  # an alias, told already

    def _note(self, event: Any, path: Path) -> None:
        self.count += 1
        self.lines.setdefault(path, event.start_mark.line + 1)
        if isinstance(event, AliasEvent):
            self._problem(path, event, f"*{event.anchor}", "alias")
        elif event.anchor is not None:
            self._problem(path, event, f"&{event.anchor}", "anchor")
        if getattr(event, "tag", None) is not None:
            self._problem(path, event, str(event.tag), "tag")
        if len(path) > DEEPEST:
            self._problem(path[:3], event, len(path), "too_deep", limit=DEEPEST)
            raise _Stop
        if self.count > MOST_EVENTS:
            self._problem(path[:3], event, None, "too_many", limit=MOST_EVENTS)
            raise _Stop

    def _mapping(self, events: Iterator[Any], path: Path) -> dict[str, Any]:
        found: dict[str, Any] = {}
        while not isinstance(event := next(events), MappingEndEvent):
            here = (*path, event.value if isinstance(event, ScalarEvent) else "?")
            line = event.start_mark.line + 1
            known = here[-1] in found
            if not isinstance(event, ScalarEvent):
                self._problem(here, event, None, "key_not_text")
                self._value(event, events, here)
                self._value(next(events), events, here)
                continue
            self._note(event, here)
            if known:
                self._problem(here, event, event.value, "repeated_key", first=self.lines[here])
            value = self._value(next(events), events, (*here, "again") if known else here)
            if not known:
                self.lines[here] = line
                found[event.value] = value
        return found

    def _sequence(self, events: Iterator[Any], path: Path) -> list[Any]:
        found: list[Any] = []
        while not isinstance(event := next(events), SequenceEndEvent):
            found.append(self._value(event, events, (*path, len(found))))
        return found

    def _scalar(self, event: Any, path: Path) -> Any:
        if event.style is not None:
            return event.value
        value, fraction = plain(event.value)
        if fraction:
            self._problem(path, event, event.value, "fraction")
        return value

    def _problem(self, path: Path, event: Any, value: object, code: str, **facts: object) -> None:
        self.problems.append(Problem(event.start_mark.line + 1, spell(path), value, code, facts))
