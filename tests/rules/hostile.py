"""Inputs that nobody should send, for every rule: each known good case with one input spoiled."""

import json
from typing import Any

SPOILED: list[Any] = [
    None, True, False, 0, -1, 7, 2**40, 1.5, "", "x", "nan", "é" * 200, [], [1], [[]], {}, {"value": "1"},
    {"unit": "in"},
    *[{"value": value, "unit": "in"} for value in (
        "nan", "inf", "-inf", "1_000", "1,5", ".5", "5.", "+", "-", "", " 1", "1 ", "0x10", "1e400", "1e-99", "1e99",
        "9" * 40, "9" * 41, "-1", "-0", "00", "1e", "e5", "1.2.3", "１", "٣", "−1", 1, 1.5, None, [], True)],
    *[{"value": "1", "unit": unit} for unit in ("", "IN", "inch", "F", "dF", "/F", "/12", "deg", "%", "psf", None, 1)],
    *[{"value": value, "unit": unit} for value, unit in (
        ("1e9", "m"), ("-500", "F"), ("500", "C"), ("90", "deg"), ("91", "deg"), ("270", "deg"), ("-3", "/12"),
        ("6.5", "/F"), ("0", "/F"), ("1e6", "dF"), ("85", "deg"), ("0", "in"), ("100000", "%"))],
    {"ridge_end": [0, 0], "eave_end": [0, 0], "screw": [0, 0]},
    {"ridge_end": [0, 0], "eave_end": [0, 500], "screw": [2**40, 0]},
    {"ridge_end": ["a", 0], "eave_end": [0], "screw": None},
    {"ridge_end": ["0.5", "1e3"], "eave_end": [0, 500.5], "screw": [1, 2]},
]  # fmt: skip


def spoiled(vectors: list[dict[str, Any]]) -> list[tuple[str, dict[str, Any]]]:
    """``(rule, inputs)`` for each rule's fullest case, with each of its inputs spoiled in each way."""
    fullest: dict[str, dict[str, Any]] = {}
    for vector in vectors:
        if not vector["refused"] and len(vector["inputs"]) > len(fullest.get(vector["rule"], {})):
            fullest[vector["rule"]] = vector["inputs"]
    cases = []
    for rule, inputs in sorted(fullest.items()):
        for name in inputs:
            cases += [(rule, {**inputs, name: junk}) for junk in SPOILED]
    # Seen only as JSON, as both interpreters get them.
    return [(rule, json.loads(json.dumps(inputs))) for rule, inputs in cases]
