"""Parts are built and joined in ``application.py`` and nowhere else, and nothing connects when it is imported."""

import ast

import pytest

from tests.architecture.tree import files, source

ROOT = "inspect_app/application.py"
OURS = [name for name in files() if name.startswith("inspect_app/") and name.endswith(".py") and name != ROOT]
VALUES = {"inspect_app.errors.BadInput", "inspect_app.words.Words"}  # an error and its texts, needed without an app too
OUTSIDE = {"create_engine", "connect", "create_server", "Flask"}


def taken(tree: ast.AST) -> dict[str, str]:
    """Local name -> full name of what is imported from our own modules."""
    return {
        alias.asname or alias.name: f"{node.module}.{alias.name}"
        for node in ast.walk(tree) if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("inspect_app")
        for alias in node.names
    }  # fmt: skip


def built(text: str) -> dict[str, str]:
    """Local name -> full name of every class of ours that ``text`` makes an object of."""
    tree = ast.parse(text)
    names = taken(tree)
    called = {node.func.id for node in ast.walk(tree) if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)}
    return {name: names[name] for name in called & set(names) if name[0].isupper()}


def test_what_the_root_builds_is_built_nowhere_else() -> None:
    parts = set(built(source(ROOT)).values()) - VALUES
    assert len(parts) > 20
    again = {(name, local) for name in OURS for local, full in built(source(name)).items() if full in parts}
    assert again == set()


def test_a_planted_second_vault_is_seen() -> None:
    planted = "from inspect_app.store.vault import Vault as Safe\ndef f(folder):\n    return Safe(folder)"
    assert built(planted) == {"Safe": "inspect_app.store.vault.Vault"}
    assert "inspect_app.store.vault.Vault" in built(source(ROOT)).values()


def connecting(text: str) -> list[str]:
    """What a module calls of ``OUTSIDE`` while it is imported: outside every function and method."""
    found, waiting = [], list(ast.parse(text).body)
    while waiting:
        node = waiting.pop()
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda):
            continue
        if isinstance(node, ast.Call):
            found.append(getattr(node.func, "attr", getattr(node.func, "id", "")))
        waiting.extend(ast.iter_child_nodes(node))
    return [name for name in found if name in OUTSIDE or name in {"create_app", "create_serving_app", "build"}]


@pytest.mark.parametrize("planted", ["engine = create_engine('x')", "class A:\n    db = sqlite3.connect('x')"])
def test_a_planted_connection_at_import_is_seen(planted: str) -> None:
    assert connecting(planted) and not connecting(f"def f():\n    return {planted.split('= ')[1]}")


def test_nothing_connects_when_it_is_imported() -> None:
    assert {name: found for name in [*OURS, ROOT] if (found := connecting(source(name)))} == {}
