"""What somebody wants a report to be: what it speaks of, and in which form."""

import json
from decimal import Decimal, InvalidOperation
from typing import Any, NamedTuple

from inspect_app.record.scope import WHOLE

LENGTHS = {"in": "25.4", "ft": "304.8", "mm": "1", "cm": "10", "m": "1000"}  # in mm, exact: as of ``rules/unit.py``


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

    @property
    def meaning(self) -> str:
        """As ``text``, however the lengths of its scope are written."""
        return sorted_json(self._asdict() | {"scope": meaning_of(self.scope)})


def read_asked(text: str) -> Asked:
    """What ``text`` gave."""
    return Asked(**json.loads(text))


def meaning_of(scope: dict[str, Any]) -> str:
    """One text for all scopes that speak of the same: ``90 in`` along a panel is where ``7.50 ft`` is."""
    return sorted_json({name: _meant(value) for name, value in scope.items()})


def _meant(value: Any) -> Any:
    try:
        size = LENGTHS[value["unit"]]
        length = Decimal(value["value"]) * Decimal(size)
        return format(length.normalize(), "f") if abs(length.adjusted()) < 40 else value
    except (KeyError, TypeError, ValueError, InvalidOperation):  # no length, or none that anybody takes
        return value


def sorted_json(value: Any) -> str:
    """One text for one value."""
    return json.dumps(value, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
