"""The core takes values and returns values: it imports what computes, and names nothing that reaches the world."""

import ast
from collections.abc import Iterator

import pytest

from tests.architecture.tree import files, python, source

COMPUTING = {
    "rules": {"collections", "hashlib", "math"},
    "record": {"hashlib", "json", "math"},
    "entry": {"base64", "collections", "cryptography", "dataclasses", "datetime", "hashlib", "json", "re", "typing",
              "uuid"},
    "checklist": {"apispec", "base64", "collections", "dataclasses", "difflib", "hashlib", "json", "marshmallow", "re",
                  "ruamel", "typing"},
    "evidence": {"asn1crypto", "collections", "cryptography", "datetime", "functools", "hashlib", "io", "json",
                 "pyhanko", "pyhanko_certvalidator", "re", "typing", "zlib"},
}  # fmt: skip
AT_THE_EDGE = {"inspect_app.checklist.load": {"functools", "pathlib"}}  # reads the shipped definitions, each once
BUILT_IN = {"open", "input", "print", "breakpoint", "eval", "exec", "compile"}
REACHING = {
    *BUILT_IN, "now", "utcnow", "today", "fromtimestamp", "uuid1", "uuid4", "urandom", "getrandbits", "token_bytes",
    "read_text", "read_bytes", "write_text", "write_bytes", "generate_private_key",
}  # fmt: skip
MEANT = {("inspect_app/checklist/load.py", "read_bytes"), ("inspect_app/checklist/load.py", "read_text")}


def reaching(text: str) -> Iterator[str]:
    """Names in ``text`` that reach a file, a clock, a person or chance."""
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.Name) and node.id in BUILT_IN:
            yield node.id
        elif isinstance(node, ast.Attribute) and node.attr in REACHING and not _of_re(node):
            yield node.attr
        elif isinstance(node, ast.ImportFrom):
            yield from (alias.name for alias in node.names if alias.name in REACHING)


def _of_re(node: ast.Attribute) -> bool:
    return node.attr == "compile" and isinstance(node.value, ast.Name) and node.value.id == "re"


@pytest.mark.parametrize("package", COMPUTING)
def test_the_core_imports_only_what_computes(package: str) -> None:
    inside = {name: found for name, found in python().items() if name.startswith(f"inspect_app.{package}.")}
    assert inside
    beyond = {
        name: {one.split(".")[0] for one in found} - COMPUTING[package] - AT_THE_EDGE.get(name, set()) - {"inspect_app"}
        for name, found in inside.items()
    }
    assert {name: modules for name, modules in beyond.items() if modules} == {}


@pytest.mark.parametrize("package", COMPUTING)
def test_the_core_opens_no_file_reads_no_clock_and_draws_no_lot(package: str) -> None:
    inside = [name for name in files() if name.startswith(f"inspect_app/{package}/") and name.endswith(".py")]
    found = {(name, word) for name in inside for word in reaching(source(name))}
    assert inside and found - MEANT == set()


@pytest.mark.parametrize("planted", [
    "from datetime import datetime\nx = datetime.now()", "x = open('a')", "Path('a').read_text()", "exec('import os')",
    "import uuid\nx = uuid.uuid4()", "from uuid import uuid4 as made", "def f(clock=open): pass", "builtins.open('a')",
])  # fmt: skip
def test_a_planted_reach_into_the_world_is_seen(planted: str) -> None:
    assert list(reaching(planted))


def test_reading_a_time_that_was_given_is_no_clock() -> None:
    assert list(reaching("import re\nx = re.compile('a')\ny = datetime.fromisoformat(text)\nnow = y")) == []
