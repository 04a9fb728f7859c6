"""What a look at trends is narrowed to: values by name, and days."""

from inspect_app.record.crew import crew_of
from inspect_app.rules.day_number import day_number
from inspect_app.rules.refused import Refused

NAMES = ("area", "zone", "crew", "firm", "assembly", "severity", "item")


class Filter:
    """Wanted values by name; a name without any takes all. ``""`` stands for what nobody told.

    ``asked``: ``{name of NAMES: [text]}``, ``from`` and ``to`` a day (``2026-11-25``), both inclusive; all optional.
    Raises Refused ``unknown_filter``, ``not_texts``, ``not_date`` and ``days_reversed``.
    """

    def __init__(self, asked: "dict | None") -> None:
        asked = asked or {}
        for name in sorted(asked):
            if name not in NAMES and name not in ("from", "to"):
                raise Refused("unknown_filter", name, None)
        self.wanted: dict = {}
        for name in NAMES:
            values = asked.get(name) or []
            if not isinstance(values, list) or [1 for one in values if not isinstance(one, str)]:
                raise Refused("not_texts", name, None)
            if values:
                self.wanted[name] = sorted({crew_key(one) if name == "crew" else one: True for one in values})
        self.first, self.last = _day(asked, "from"), _day(asked, "to")
        if self.first and self.last and self.first > self.last:
            raise Refused("days_reversed", "to", self.last)

    def takes(self, name: str, value: "str | None") -> bool:
        return name not in self.wanted or (value or "") in self.wanted[name]

    def in_days(self, day: str) -> bool:
        return (not self.first or day >= self.first) and (not self.last or day <= self.last)

    def told(self) -> dict:
        """As it was understood."""
        told: dict = dict(self.wanted)
        told.update({"from": self.first, "to": self.last})
        return told


def crew_key(name: "str | None") -> str:
    """A crew's name with its capitals and blanks put aside."""
    return crew_of({"crew": name or ""})


def _day(asked: dict, name: str) -> "str | None":
    day: str | None = asked.get(name) or None
    if day is not None:
        if not isinstance(day, str):
            raise Refused("not_date", name, None)
        day_number(day, name)
    return day
