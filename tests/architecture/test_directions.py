"""Parts import in the directions of one table, in both languages; DEVELOPERS.md prints the same table."""

from collections.abc import Mapping
from graphlib import CycleError, TopologicalSorter

import pytest

from tests.architecture.directions import JAVASCRIPT, PYTHON, printed
from tests.architecture.tree import javascript, python, source

Imports = Mapping[str, set[str]]


def python_part(module: str) -> str | None:
    """``inspect_app.web.report`` -> ``web``; None for what is not ours, and for the empty package itself."""
    names = module.split(".")
    return names[1] if names[0] == "inspect_app" and len(names) > 1 else None


def javascript_part(file: str) -> str:
    """``walk/item.js`` -> ``walk``, ``main.js`` -> ``main``."""
    return file.split("/")[0].removesuffix(".js")


LANGUAGES = {
    "Python": (PYTHON, python, python_part),
    "JavaScript": (JAVASCRIPT, javascript, javascript_part),
}
both = pytest.mark.parametrize("language", LANGUAGES)


def between(imports: Imports, part_of) -> dict[tuple[str, str], list[str]]:
    """(from, to) -> the imports that go that way, between different parts."""
    ways: dict[tuple[str, str], list[str]] = {}
    for one, others in imports.items():
        for other in others:
            ends = part_of(one), part_of(other)
            if all(ends) and ends[0] != ends[1]:
                ways.setdefault(ends, []).append(f"{one} imports {other}")
    return ways


def cycle(imports: Mapping[str, object]) -> list[str] | None:
    try:
        TopologicalSorter(imports).prepare()
    except CycleError as found:
        return found.args[1]
    return None


@both
def test_parts_import_only_in_the_directions_of_the_table(language: str) -> None:
    table, imports, part_of = LANGUAGES[language]
    ways = between(imports(), part_of)
    assert len(ways) > 50
    assert {way: names for way, names in ways.items() if way[1] not in table.get(way[0], ())} == {}


@both
def test_the_table_allows_nothing_that_nobody_needs_and_knows_every_part(language: str) -> None:
    table, imports, part_of = LANGUAGES[language]
    allowed = {(one, other) for one, others in table.items() for other in others}
    assert allowed - set(between(imports(), part_of)) == set()
    assert {part_of(one) for one in imports()} - {None} | {"vendor"} == set(table) | {"vendor"}


@both
def test_the_table_and_the_files_themselves_have_no_cycle(language: str) -> None:
    table, imports, _ = LANGUAGES[language]
    assert cycle(table) is None
    assert cycle(imports()) is None


@both
def test_developers_md_prints_the_table_that_is_held(language: str) -> None:
    lines = source("DEVELOPERS.md").splitlines()
    wanted = printed(language, LANGUAGES[language][0])
    at = lines.index(wanted[0]) if wanted[0] in lines else len(lines)
    shown = lines[at : lines.index("", at)] if at < len(lines) else []
    assert shown == wanted, "print it again: python -m tests.architecture"


def test_a_planted_way_back_and_a_planted_cycle_are_seen() -> None:
    planted = {"inspect_app.store.log": {"inspect_app.web.parts"}, "inspect_app.web.parts": {"inspect_app.store.log"}}
    assert set(between(planted, python_part)) == {("store", "web"), ("web", "store")}
    assert cycle(planted)
    assert cycle({"a": {"b"}, "b": {"c"}, "c": set()}) is None
