"""The tree stays readable: small files, names of the field, a top level that fits on one line."""

import re
from pathlib import Path
from statistics import median

ROOT = Path(__file__).parents[2]
FOLDERS = ("inspect_app", "static", "tests")
TOP = {
    "README.md", "DEVELOPERS.md", "pyproject.toml", "Makefile", "package.json", "package-lock.json", "hatch_build.py",
}  # fmt: skip
EMPTY_NAMES = re.compile(r"(^|_)(utils?|helpers?|commons?|misc|managers?|base)(_|$)")
OURS = [
    file for folder in FOLDERS for file in sorted((ROOT / folder).rglob("*"))
    if file.suffix in {".py", ".js", ".mjs", ".css"} and "vendor" not in file.parts and "node_modules" not in file.parts
]  # fmt: skip


def test_no_file_is_over_300_lines_and_half_are_under_80() -> None:
    lengths = {str(file.relative_to(ROOT)): len(file.read_text("utf-8").splitlines()) for file in OURS}
    assert {name: length for name, length in lengths.items() if length > 300} == {}
    assert median(lengths.values()) < 80


def test_no_file_has_a_name_that_says_nothing() -> None:
    assert [file.name for file in OURS if EMPTY_NAMES.search(file.stem)] == []


def test_the_top_level_holds_only_what_it_should() -> None:
    files = {file.name for file in ROOT.iterdir() if file.is_file() and not file.name.startswith(".")}
    assert files - TOP == set()
