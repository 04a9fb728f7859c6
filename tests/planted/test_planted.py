"""Each planted bug is caught by its test. ``make soak`` plants them; the suite only sees that the list still fits."""

import ast

import pytest

from tests.planted.bug import ROOT, Bug, bugs, table
from tests.planted.workshop import Workshop

ALL = bugs()


def named(bug: Bug) -> str:
    return bug.what.replace(" ", "_")


@pytest.fixture(scope="module")
def workshop(tmp_path_factory: pytest.TempPathFactory) -> Workshop:
    return Workshop(tmp_path_factory.mktemp("planted") / "copy")


@pytest.mark.parametrize("bug", ALL, ids=named)
def test_it_can_still_be_planted_and_its_test_is_there(bug: Bug) -> None:
    assert bug.planted((ROOT / bug.file).read_text("utf-8")) != (ROOT / bug.file).read_text("utf-8")
    tree = ast.parse((ROOT / bug.test_file).read_text("utf-8"))
    assert bug.test_name in {node.name for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)}


def test_there_are_twenty_at_least_each_of_its_own() -> None:
    assert len(ALL) >= 20 and len({(bug.file, bug.now, bug.then) for bug in ALL}) == len(ALL)


def test_the_documentation_prints_their_table() -> None:
    assert table() in (ROOT / "DEVELOPERS.md").read_text("utf-8"), "print it with: python -m tests.planted"


@pytest.mark.soak
@pytest.mark.xdist_group("planted")
@pytest.mark.parametrize("bug", ALL, ids=named)
def test_a_planted_bug_is_caught(bug: Bug, workshop: Workshop) -> None:
    caught, told = workshop.catches(bug)
    assert caught, told
    print(f"caught: {bug.what}")
