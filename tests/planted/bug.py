"""The planted bugs as values, read from ``bugs.yaml``."""

from pathlib import Path
from typing import NamedTuple

from inspect_app.intake.job_file import read_yaml

ROOT = Path(__file__).parents[2]
FILE = Path(__file__).with_name("bugs.yaml")


class Bug(NamedTuple):
    """``what`` it does, in words; in ``file`` the text ``now`` becomes ``then``; ``caught_by`` names a test,
    ``tests/…/test_x.py::test_y``."""

    what: str
    file: str
    now: str
    then: str
    caught_by: str

    @property
    def test_file(self) -> str:
        return self.caught_by.partition("::")[0]

    @property
    def test_name(self) -> str:
        return self.caught_by.partition("::")[2].partition("[")[0]

    def planted(self, source: str) -> str:
        """The file's text with the bug in it. ``ValueError`` unless ``now`` stands there exactly once."""
        if (times := source.count(self.now)) != 1:
            raise ValueError(f"{self.file} holds {self.now!r} {times} times")
        return source.replace(self.now, self.then)


def bugs() -> list[Bug]:
    """All of them, in the order of the table."""
    return [Bug(**row) for row in read_yaml(FILE.read_text("utf-8"))["bugs"]]


def table() -> str:
    """A Markdown table of them for the documentation."""
    rows = [f"| {one.what} | `{one.file}` | `{one.test_file}`: {_said(one.test_name)} |" for one in bugs()]
    return "\n".join(["| Planted bug | Where | Caught by |", "|---|---|---|", *rows])


def _said(name: str) -> str:
    return name.removeprefix("test_").replace("_", " ")
