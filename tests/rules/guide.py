"""The table of rules in DEVELOPERS.md: ``python -m tests.rules.guide`` prints it anew.

Inputs as each rule describes them (``?``: optional), values as it answers its vectors.
"""

import json
from pathlib import Path
from typing import Any

from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import RELEASED, judge

ROOT = Path(__file__).parents[2]
HEAD = ["| Rule | Inputs (`?`: optional; dimension where the name does not tell) | Values |", "|---|---|---|"]
TOLD_BY_NAME = ("length", "temperature", "expansion", "choice", "text", "any")


def rows() -> list[str]:
    given: dict[str, set[str]] = {}
    for one in json.loads((ROOT / "tests" / "vectors" / "rules.json").read_text("utf-8")):
        try:
            given.setdefault(one["rule"], set()).update(judge(one["rule"], one["inputs"])["values"])
        except Refused:
            continue
    made = []
    for name in sorted(RELEASED):
        for version in sorted(RELEASED[name], key=int):
            full = f"{name}@{version}"
            inputs = ", ".join(_input(each, known) for each, known in RELEASED[name][version].INPUTS.items())
            values = " ".join(f"`{value}`" for value in sorted(given.get(full, ()))) or "—"
            made.append(f"| `{full}` | {inputs} | {values} |")
    return HEAD + made


def _input(name: str, known: dict[str, Any]) -> str:
    choices = f" ({'/'.join(map(str, known['choices']))})" if known["choices"] else ""
    dimension = "" if known["dimension"] in TOLD_BY_NAME or choices else f" {known['dimension']}"
    return f"`{name}`{dimension}{choices}{'' if known['required'] else '?'}"


if __name__ == "__main__":
    print(*rows(), sep="\n")
