"""The tree stays readable: small files, names of the field, a top level that fits on one line."""

import re
from pathlib import PurePosixPath
from statistics import median

import pytest

from tests.architecture.tree import files, source

TOP = {
    ".gitattributes", ".gitignore", ".npmrc", "README.md", "DEVELOPERS.md", "pyproject.toml", "Makefile",
    "package.json", "package-lock.json", "hatch_build.py",
}  # fmt: skip
FOLDERS = {".ci", "checklists", "inspect_app", "static", "tests"}
CODE = (".py", ".js", ".mjs", ".css", ".html")
EMPTY_NAMES = re.compile(r"(^|[_.-])(utils?|helpers?|commons?|misc|managers?|base|lib|stuff)([_.-]|$)")


def code() -> list[str]:
    return [name for name in files() if name.endswith(CODE) and not name.startswith("static/vendor/")]


def saying_nothing(name: str) -> list[str]:
    """The parts of a path, folders too, that are named after nothing."""
    path = PurePosixPath(name)
    return [part for part in (*path.parts[:-1], path.stem) if EMPTY_NAMES.search(part)]


def test_no_file_is_over_300_lines_and_half_are_under_80() -> None:
    lengths = {name: len(source(name).splitlines()) for name in code()}
    assert len(lengths) > 300
    assert {name: length for name, length in lengths.items() if length > 300} == {}
    assert median(lengths.values()) < 80


def test_no_file_and_no_folder_has_a_name_that_says_nothing() -> None:
    assert {name: parts for name in files() if (parts := saying_nothing(name))} == {}


@pytest.mark.parametrize("name", ["inspect_app/utils/roof.py", "static/walk/helpers.js", "tests/test_misc.py"])
def test_a_planted_name_that_says_nothing_is_seen(name: str) -> None:
    assert saying_nothing(name)


def test_the_top_level_holds_only_what_it_should() -> None:
    tops = {(name.split("/")[0], "/" in name) for name in files()}
    assert {name for name, folder in tops if not folder} - TOP == set()
    assert {name for name, folder in tops if folder} == FOLDERS


def test_a_test_file_says_what_it_tests() -> None:
    tests = [name for name in files() if re.search(r"^tests/.*/test_.*\.py$", name)]
    assert [name for name in tests if not source(name).startswith('"""')] == []
