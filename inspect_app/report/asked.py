"""What somebody wants a report to be: what it speaks of, and in which form."""

import json
from typing import Any, NamedTuple

from inspect_app.record.scope import WHOLE


class Asked(NamedTuple):
    """``scope`` as in ``record/scope.py``; ``paper``, ``language`` and ``units`` in place of the job's own."""

    scope: dict[str, Any] = WHOLE
    paper: str | None = None
    language: str | None = None
    units: str | None = None

    @property
    def kind(self) -> str:
        return str(self.scope["kind"])

    @property
    def text(self) -> str:
        """As sorted JSON: two that ask for the same have the same text."""
        return sorted_json(self._asdict())


def read_asked(text: str) -> Asked:
    """What ``text`` gave."""
    return Asked(**json.loads(text))


def sorted_json(value: Any) -> str:
    """One text for one value."""
    return json.dumps(value, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
