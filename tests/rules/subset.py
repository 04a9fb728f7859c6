"""What CPython and MicroPython 1.27 share, as a reader of syntax trees: everything else is named with its line.

Each rule stands for something that the phone's interpreter lacks or does differently: dicts without order, no
``typing`` or ``dataclasses``, ``lower`` that leaves ``Ä`` alone, ``round`` and formatting with other last digits.
"""

import ast

IMPORTS = {"math", "hashlib", "json", "collections"}
OWN = ("inspect_app.rules", "inspect_app.record")
ATTRIBUTES = {
    "math": ["comb", "dist", "fsum", "gcd", "hypot", "lcm", "perm", "prod", "nextafter", "ulp", "isqrt", "lgamma"],
    "lacking": ["bit_length", "hexdigest", "_replace", "_asdict", "_fields", "removeprefix", "removesuffix"],
    "text case": ["lower", "upper", "title", "casefold", "capitalize", "swapcase", "islower", "isupper"],
    "kinds of characters": ["isdigit", "isdecimal", "isnumeric", "isalpha", "isalnum", "isspace"],
    "formatting": ["format", "format_map", "zfill", "ljust", "rjust", "center"],
}
NAMES = {"round": "rounding", "format": "formatting", "repr": "formatting", "open": "files", "eval": "code from text",
         "exec": "code from text", "__import__": "imports"}  # fmt: skip
NODES = {
    ast.JoinedStr: "formatting (f-string)", ast.Match: "match statement", ast.AsyncFunctionDef: "async",
    ast.Await: "async", ast.TryStar: "exception groups", ast.MatMult: "matrix product",
}  # fmt: skip


def violations(source: str) -> list[tuple[int, str]]:
    """``(line, what)`` for everything in ``source`` that the two interpreters do not share."""
    found = []
    for node in ast.walk(ast.parse(source)):
        what = _said(node)
        if what:
            found.append((getattr(node, "lineno", 0), what))
    return sorted(found)


def _unpacked(node: ast.List | ast.Tuple | ast.Set) -> bool:
    """``[*x]``, which is not ``[a, *b] = x``."""
    written = isinstance(node, ast.Set) or isinstance(node.ctx, ast.Load)
    return written and any(isinstance(one, ast.Starred) for one in node.elts)


def _said(node: ast.AST) -> str | None:
    if isinstance(node, ast.Import):
        return next((f"import {name.name}" for name in node.names if name.name not in IMPORTS), None)
    if isinstance(node, ast.ImportFrom):
        own = node.level == 0 and f"{node.module}.".startswith(tuple(f"{one}." for one in OWN))
        return None if own or (node.module in IMPORTS and node.level == 0) else f"import {node.module}"
    if isinstance(node, ast.Attribute):
        return next((f"{why}: {node.attr}" for why, names in ATTRIBUTES.items() if node.attr in names), None)
    if isinstance(node, ast.Name):
        return NAMES.get(node.id)
    if isinstance(node, ast.Dict) and None in node.keys:
        return "unpacking into a dict display"
    if isinstance(node, (ast.List, ast.Tuple, ast.Set)) and _unpacked(node):
        return "unpacking into a display"
    if isinstance(node, ast.arguments) and node.posonlyargs:
        return "positional-only arguments"
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Mod) and isinstance(node.left, ast.Constant):
        return "formatting (%)" if isinstance(node.left.value, str) else None
    if isinstance(node, ast.ClassDef) and (node.decorator_list or node.keywords):
        return "class decorators and keywords"
    if isinstance(node, ast.Constant) and type(node.value) is int and abs(node.value) >= 2**53:
        return "an integer beyond a double"
    return next((why for kind, why in NODES.items() if isinstance(node, kind)), None)
