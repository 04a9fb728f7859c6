"""Load a folder of released definitions. What does not compile is left out and kept as problems."""

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any, NamedTuple

from inspect_app.checklist.compile import Compiled, compile_text
from inspect_app.checklist.problem import Problem
from inspect_app.checklist.rule_use import Rules
from inspect_app.rules import rulebook


class Definitions(NamedTuple):
    """``by_digest`` {digest: Compiled}; ``by_version`` {(id, version): digest}; ``problems`` {file: […]}."""

    by_digest: Mapping[str, Compiled]
    by_version: Mapping[tuple[str, int], str]
    problems: Mapping[str, list[Problem]]

    def listing(self) -> list[dict[str, Any]]:
        """``[{"id", "version", "digest"}]`` by id, then version."""
        order = sorted(self.by_version)
        return [{"id": name, "version": n, "digest": self.by_version[name, n]} for name, n in order]

    def newest(self) -> dict[str, str]:
        """``{id: digest}`` of each definition's highest version: what a new job pins."""
        return {name: self.by_version[name, n] for name, n in sorted(self.by_version)}


def rulebook_rules() -> Rules:
    """Every released rule, by full name, with the description of its inputs."""
    return {
        f"{name}@{version}": rulebook.describe(f"{name}@{version}")
        for name, versions in rulebook.RELEASED.items()
        for version in versions
    }


def load_all(folder: Path, rules: Rules | None = None) -> Definitions:
    """Every ``*.yaml`` of the folder. Raises ``OSError`` when a file cannot be read."""
    by_digest: dict[str, Compiled] = {}
    by_version: dict[tuple[str, int], str] = {}
    problems: dict[str, list[Problem]] = {}
    for file in sorted(folder.glob("*.yaml")):
        found = check_file(file, rules)
        if isinstance(found, Compiled):
            by_digest[found.digest] = found
            by_version[found.definition["id"], found.definition["version"]] = found.digest
        else:
            problems[file.name] = found
    return Definitions(by_digest, by_version, problems)


@lru_cache(maxsize=256)
def _released(text: str) -> Compiled | list[Problem]:
    """Against the rulebook as it is. The same text gives the same definition, and reading YAML with its line numbers
    takes a tenth of a second a file."""
    return compile_text(text, rulebook_rules())


def check_file(file: Path, rules: Rules | None = None) -> Compiled | list[Problem]:
    """Compile one file; it must be named ``ID-VERSION.yaml``, so that a version can only lie in one place."""
    try:
        text = file.read_bytes().decode()
    except UnicodeDecodeError as error:
        line = error.object.count(b"\n", 0, error.start) + 1
        return [Problem(line, "file", f"0x{error.object[error.start]:02X}", "not_utf8")]
    found = _released(text) if rules is None else compile_text(text, rules)
    if isinstance(found, Compiled):
        wanted = f"{found.definition['id']}-{found.definition['version']}.yaml"
        if file.name != wanted:
            return [Problem(1, "file", file.name, "file_name", {"wanted": wanted})]
    return found
