"""The rulebook and the record keep to what both interpreters have."""

from pathlib import Path

import pytest

from tests.rules.subset import violations

PACKAGE = Path(__file__).parents[2] / "inspect_app"
FILES = sorted([*(PACKAGE / "rules").rglob("*.py"), *(PACKAGE / "record").rglob("*.py")])
PLANTED = [
    "import typing", "from dataclasses import dataclass", "from decimal import Decimal", "import enum",
    "from inspect_app.entry.strict_json import parse", "from . import unit", "import re", "import time",
    "from inspect_app.rules_of_thumb import x",
    "x = math.fsum(y)", "x = math.hypot(1, 2)", "x = math.comb(3, 2)", "x = (5).bit_length()",
    "x = h.hexdigest()", "x = t._replace(a=1)", "x = t._asdict()", "x = {**y}", "x = {'a': 1, **y}",
    "x = [*y, 1]", "x = (*y, 1)",
    "x = f'{y}'", "x = '%s' % y", "x = '{}'.format(y)", "x = round(y, 2)", "x = y.lower()", "x = y.isdigit()",
    "def f(a, /): pass", "match x:\n  case 1: pass", "async def f(): pass", "@total\nclass A: pass",
    "x = open('a')", "x = 9007199254740993",
]  # fmt: skip


@pytest.mark.parametrize("file", FILES, ids=lambda file: f"{file.parent.name}/{file.name}")
def test_a_shared_file_uses_only_what_both_interpreters_have(file: Path) -> None:
    assert violations(file.read_text("utf-8")) == []


@pytest.mark.parametrize("planted", PLANTED)
def test_what_the_phone_lacks_is_named(planted: str) -> None:
    assert violations(planted), planted


def test_what_both_have_is_let_through() -> None:
    shared = (
        "import math, json, hashlib\nfrom collections import namedtuple\nfrom inspect_app.rules.unit import UNITS\n"
        "Place = namedtuple('Place', ('x', 'y'))\nx = math.sqrt(7 % 4)\ny = {k: v for k, v in z}\n"
        "def f(a: 'int | None' = None) -> dict:\n    return {'a': 'b'.split(',')}\n"
    )
    assert violations(shared) == []


def test_the_package_itself_holds_no_code_that_the_phone_would_not_get() -> None:
    assert (PACKAGE / "__init__.py").read_text("utf-8") == ""
    assert len(FILES) > 30
