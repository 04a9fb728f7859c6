"""What was put in, parted: what was the same wherever it was asked for is said once, what was one's own beside it."""

from collections.abc import Sequence
from typing import NamedTuple

Named = tuple[str, str]  # how an input is named, and the whole of what is said of it


class Parted(NamedTuple):
    """``alike``: said once, of all; ``own``: of each what is left."""

    alike: list[str]
    own: list[list[str]]


def parted(each: Sequence[tuple[str, Sequence[Named]]]) -> Parted:
    """``each``: ``(rule, inputs)`` of an answer or a line. Said once is what two or more have and what reads the same
    in each that has it; and of one rule all have it or none: whoever does one's sum again finds all that went into it,
    and nothing that did not."""
    said: dict[str, set[str]] = {}
    have: dict[str, list[str]] = {}
    for rule, inputs in each:
        for name, text in inputs:
            said.setdefault(name, set()).add(text)
        for name in {name for name, _ in inputs}:
            have.setdefault(name, []).append(rule)
    rules = [rule for rule, _ in each]
    once = [name for name in said if len(said[name]) == 1 and len(have[name]) > 1
            and all(have[name].count(rule) == rules.count(rule) for rule in have[name])]  # fmt: skip
    return Parted([text for name in once for text in said[name]],
                  [[text for name, text in inputs if name not in once] for _, inputs in each])  # fmt: skip
