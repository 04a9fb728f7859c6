"""The readers of imports see every form in which a file can import, so that the directions cannot be gone around."""

import pytest

from tests.architecture import javascript_imports, python_imports

MODULES = {"inspect_app", "inspect_app.store", "inspect_app.store.log", "inspect_app.web", "inspect_app.web.parts"}


@pytest.mark.parametrize("written, module, meant", [
    ("import os.path", "inspect_app.web.parts", {"os.path"}),
    ("import inspect_app.store.log as log", "inspect_app.web.parts", {"inspect_app.store.log"}),
    ("from inspect_app import store", "inspect_app.web.parts", {"inspect_app.store"}),
    ("from inspect_app.store import log", "inspect_app.web.parts", {"inspect_app.store.log"}),
    ("from inspect_app.store.log import Log", "inspect_app.web.parts", {"inspect_app.store.log"}),
    ("from . import parts", "inspect_app.web", {"inspect_app.web.parts"}),
    ("from .parts import x", "inspect_app.web", {"inspect_app.web.parts"}),
    ("from ..store import log", "inspect_app.web.parts", {"inspect_app.store.log"}),
    ("from .. import store", "inspect_app.web.parts", {"inspect_app.store"}),
    ("def f():\n    import time", "inspect_app.web.parts", {"time"}),
    ("if TYPES:\n    from inspect_app.web.parts import Parts", "inspect_app.store.log", {"inspect_app.web.parts"}),
    ("import_module('inspect_app.web.parts')", "inspect_app.store.log", {"inspect_app.web.parts"}),
    ("importlib.import_module(f'inspect_app.web.{name}')", "inspect_app.store.log", {"inspect_app.web"}),
    ("__import__('os')", "inspect_app.store.log", {"os"}),
])  # fmt: skip
def test_python_imports_are_seen(written: str, module: str, meant: set[str]) -> None:
    assert python_imports.imported(written, module, MODULES) == meant


def test_a_python_import_whose_name_is_computed_is_refused() -> None:
    with pytest.raises(ValueError, match="line 2"):
        python_imports.imported("x = 1\nimport_module(x)", "inspect_app.web.parts", MODULES)


@pytest.mark.parametrize("written, meant", [
    ("import { a } from '../storage/meta.js'", {"storage/meta.js"}),
    ("import {\n  a,\n  b,\n} from \"./item.js\"", {"walk/item.js"}),
    ("import a, * as b from './item.js'", {"walk/item.js"}),
    ("import '../main.js'", {"main.js"}),
    ("export { a } from './item.js'", {"walk/item.js"}),
    ("export * from './item.js'", {"walk/item.js"}),
    ("const a = await import('../rules/ask.js')", {"rules/ask.js"}),
    ("/** @typedef {import('../sync/x.js').A} A */\n// import('./b.js')\nexport const a = 'c.js'", set()),
    ("const a = { accept: 'image/*' }\nimport('./b.js') /* c */", {"walk/b.js"}),
    ("export const a = 1\nconst from = 'x.js'", set()),
])  # fmt: skip
def test_javascript_imports_are_seen(written: str, meant: set[str]) -> None:
    assert javascript_imports.imported(written, "walk/walk.js") == meant


@pytest.mark.parametrize("written", ["import(name)", "import a from 'preact'", "import a from '/static/a.js'"])
def test_a_javascript_import_of_no_file_of_ours_is_refused(written: str) -> None:
    with pytest.raises(ValueError, match=r"walk/walk\.js"):
        javascript_imports.imported(written, "walk/walk.js")
