"""Imports point one way, as the flow table in DEVELOPERS.md says."""

import ast
from pathlib import Path

import pytest

import inspect_app

ROOT = Path(inspect_app.__file__).parent
PURE = {"rules": set(), "record": {"rules"}, "entry": set()}
NEVER = {
    "checklist": {"store", "people", "intake", "report", "web", "commands", "demo"},
    "evidence": {"store", "intake", "web", "commands", "demo"},
    "store": {"intake", "report", "evidence", "web", "commands", "demo"},
    "people": {"intake", "report", "evidence", "web", "commands", "demo"},
    "intake": {"web", "commands", "demo"},
    "report": {"web", "commands", "demo"},
    "web": {"commands", "demo"},
}
WORLD = {"flask", "flask_sqlalchemy", "sqlalchemy", "os", "pathlib", "time", "socket", "sqlite3", "subprocess"}


def _imported(source: str) -> set[str]:
    found = set()
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found.add(node.module)
    return found


def _of_package(package: str) -> dict[str, set[str]]:
    files = sorted((ROOT / package).rglob("*.py"))
    assert files
    return {str(file.relative_to(ROOT)): _imported(file.read_text("utf-8")) for file in files}


def _stages(names: set[str]) -> set[str]:
    return {name.split(".")[1] for name in names if name.startswith("inspect_app.")}


@pytest.mark.parametrize("package", PURE)
def test_the_core_knows_only_itself_and_what_lies_below_it(package: str) -> None:
    beyond = {name: _stages(found) - {package} - PURE[package] for name, found in _of_package(package).items()}
    assert {name: stages for name, stages in beyond.items() if stages} == {}


@pytest.mark.parametrize("package", PURE)
def test_the_core_touches_no_files_clock_web_or_database(package: str) -> None:
    touched = {name: {one.split(".")[0] for one in found} & WORLD for name, found in _of_package(package).items()}
    assert {name: modules for name, modules in touched.items() if modules} == {}


@pytest.mark.parametrize("package", NEVER)
def test_nothing_flows_back(package: str) -> None:
    back = {name: _stages(found) & NEVER[package] for name, found in _of_package(package).items()}
    assert {name: stages for name, stages in back.items() if stages} == {}


def test_an_import_is_seen_in_each_of_its_forms() -> None:
    assert _imported("import os.path\nfrom inspect_app.web import app\ndef f():\n    import time") == {
        "os.path", "inspect_app.web", "time",
    }  # fmt: skip
