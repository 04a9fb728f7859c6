"""What a Python file imports, in whatever form it says so."""

import ast
from collections.abc import Collection, Iterator

DYNAMIC = {"import_module", "__import__"}


def imported(source: str, module: str, modules: Collection[str]) -> set[str]:
    """Full names of all that the file of ``module`` imports, at its top or inside: submodules by their own name,
    relative imports resolved. ``modules``: every module of ours; a package is known by what lies in it. A name
    that is computed counts as far as it is written; raises ``ValueError`` where nothing of it is."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(source)):
        found.update(_named(node, module, modules))
    return found


def _named(node: ast.AST, module: str, modules: Collection[str]) -> Iterator[str]:
    if isinstance(node, ast.Import):
        yield from (alias.name for alias in node.names)
    elif isinstance(node, ast.ImportFrom):
        base = _base(node, module, modules)
        for alias in node.names:
            yield f"{base}.{alias.name}" if f"{base}.{alias.name}" in modules else base
    elif isinstance(node, ast.Call) and getattr(node.func, "attr", getattr(node.func, "id", "")) in DYNAMIC:
        yield _written(node, module)


def _base(node: ast.ImportFrom, module: str, modules: Collection[str]) -> str:
    if not node.level:
        return node.module or ""
    package = any(one.startswith(f"{module}.") for one in modules)
    parts = module.split(".") if package else module.split(".")[:-1]
    parts = parts[: len(parts) - node.level + 1]
    return ".".join([*parts, node.module] if node.module else parts)


def _written(node: ast.Call, module: str) -> str:
    first = node.args[0] if node.args else None
    if isinstance(first, ast.JoinedStr):
        first = first.values[0]
    if not isinstance(first, ast.Constant) or not isinstance(first.value, str):
        raise ValueError(f"{module}, line {node.lineno}: an import whose name cannot be read")
    return first.value.rstrip(".")
