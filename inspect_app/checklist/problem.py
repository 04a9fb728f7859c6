"""One thing wrong with a definition, as facts; the sentences lie in ``static/words/checklist.json``."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from dataclasses import field as member
from typing import Protocol

SHOWN = 60  # of a value: enough to find it by


class Speaks(Protocol):
    def say(self, key: str, language: str = "en", facts: Mapping[str, object] | None = None) -> str: ...


@dataclass(frozen=True)
class Problem:
    """``line`` from 1; ``field`` as ``items[3].rule.inputs.slot``; ``value`` what stands there, None when
    nothing does; ``code`` a key under ``checklist.problem``; ``facts`` what its sentence needs."""

    line: int
    field: str
    value: object
    code: str
    facts: Mapping[str, object] = member(default_factory=dict)

    def message(self, words: Speaks, language: str = "en") -> str:
        return words.say(f"checklist.problem.{self.code}.message", language, self.facts)

    def way_out(self, words: Speaks, language: str = "en") -> str:
        return words.say(f"checklist.problem.{self.code}.way_out", language, self.facts)

    def sentence(self, words: Speaks, language: str = "en") -> str:
        """``LINE: field: message (value) - way out``."""
        value = "" if self.value is None else f" ({short(self.value)})"
        told = f"{self.message(words, language)}{value} - {self.way_out(words, language)}"
        return f"{self.line}: {self.field}: {told}"


def short(value: object) -> str:
    """A value in one short line, without control characters."""
    if isinstance(value, dict):
        text = "{" + ", ".join(map(str, value)) + "}"
    elif isinstance(value, bool):
        text = "true" if value else "false"
    else:
        text = str(value)
    text = "".join(letter if letter.isprintable() else " " for letter in text[: SHOWN * 2])
    return text if len(text) <= SHOWN else text[: SHOWN - 1] + "…"


def spell(path: Iterable[object]) -> str:
    """``("items", 3, "why", "es")`` as ``items[3].why.es``."""
    text = ""
    for step in path:
        text += f"[{step}]" if isinstance(step, int) else f".{step}" if text else str(step)
    return text or "file"


def in_order(problems: Iterable[Problem]) -> list[Problem]:
    return sorted(set_aside(problems), key=lambda one: (one.line, one.field, one.code))


def set_aside(problems: Iterable[Problem]) -> list[Problem]:
    """Each problem once: two checks may meet the same fault."""
    seen: set[tuple[int, str, str]] = set()
    kept = []
    for one in problems:
        key = (one.line, one.field, one.code)
        if key not in seen:
            seen.add(key)
            kept.append(one)
    return kept
