"""The files of the project, as git lists them, and what their parts import."""

import subprocess
from functools import cache
from pathlib import Path

import pytest

from tests.architecture import javascript_imports, python_imports

ROOT = Path(__file__).parents[2]


@cache
def files() -> tuple[str, ...]:
    """Paths of all files that git keeps and that are there."""
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True)
    if listed.returncode:
        pytest.skip(f"git does not list the files: {listed.stderr.strip()}", allow_module_level=True)
    return tuple(name for name in listed.stdout.split("\0") if name and (ROOT / name).is_file())


def text(name: str) -> str | None:
    """What a file says; None for one that is no text."""
    try:
        return (ROOT / name).read_text("utf-8")
    except UnicodeDecodeError:
        return None


def source(name: str) -> str:
    return (ROOT / name).read_text("utf-8")


@cache
def python() -> dict[str, set[str]]:
    """Module -> full names of what it imports, for ``inspect_app/``."""
    ours = {_module(name): name for name in files() if name.startswith("inspect_app/") and name.endswith(".py")}
    return {module: python_imports.imported(source(name), module, ours) for module, name in ours.items()}


@cache
def javascript() -> dict[str, set[str]]:
    """Path in ``static/`` -> paths of what it imports; the libraries of ``vendor/`` are not read."""
    ours = [name.removeprefix("static/") for name in files() if name.startswith("static/") and name.endswith(".js")]
    return {
        name: javascript_imports.imported(source(f"static/{name}"), name)
        for name in ours if not name.startswith("vendor/")
    }  # fmt: skip


def _module(name: str) -> str:
    return name.removesuffix(".py").removesuffix("/__init__").replace("/", ".")
