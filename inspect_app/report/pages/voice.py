"""How a report speaks: words of its language, quantities of its units, times with their zone."""

from datetime import datetime
from typing import Any, Protocol

from inspect_app.report.number import number
from inspect_app.report.pages.text import line
from inspect_app.rules.unit import change_unit, system_of

LANGUAGES = ("en", "es")
OTHER = {
    "US": {
        "mm": "in",
        "cm": "in",
        "m": "ft",
        "C": "F",
        "dC": "dF",
        "K": "dF",
        "/C": "/F",
        "/K": "/F",
        "kPa": "psf",
    },
    "SI": {"in": "mm", "ft": "m", "F": "C", "dF": "K", "/F": "/K", "psf": "kPa"},
}


class Texts(Protocol):
    """Where words come from: ``inspect_app.words.Words``."""

    def __contains__(self, key: str) -> bool: ...
    def say(self, key: str, language: str, facts: dict[str, Any] | None = None) -> str: ...


class Voice:
    """Words and numbers for one report."""

    def __init__(self, texts: Texts, language: str, units: str) -> None:
        self.texts = texts
        self.language = language if language in LANGUAGES else "en"
        self.units = units if units in OTHER else "US"

    def knows(self, key: str) -> bool:
        """Whether there is a text of that key."""
        return key in self.texts

    def say(self, key: str, /, **facts: Any) -> str:
        """The text of ``report.KEY``, else the phone's of ``KEY``; ``KEY.one`` where ``count`` is 1. A word
        without a text stands for itself."""
        full = key if key.startswith(("rule.", "reason.")) else f"report.{key}"
        if full not in self.texts and key in self.texts:
            full = key
        if facts.get("count") == 1 and f"{full}.one" in self.texts:
            full = f"{full}.one"
        if full not in self.texts:
            return line(key.rsplit(".", 1)[-1].replace("_", " "))
        return self.texts.say(full, self.language, {name: str(value) for name, value in facts.items()})

    def language_of(self, key: str, text: Any) -> str | None:
        """The language in which the words of ``key`` read as ``text``; None for any other text."""
        if key not in self.texts:
            return None
        return next((one for one in LANGUAGES if self.texts.say(key, one) == text), None)

    def both(self, texts: Any, otherwise: str = "—") -> str:
        """The right one of ``{"en", "es"}``, as definitions carry them."""
        if isinstance(texts, dict):
            return str(texts.get(self.language) or texts.get("en") or otherwise)
        return otherwise

    def quantity(self, value: Any, places: int | None = None) -> str:
        """A quantity in the report's units; as recorded in brackets where those differ. Plain text
        otherwise."""
        if not isinstance(value, dict) or "value" not in value:
            return line(value)
        if isinstance(value["value"], str) and self.knows(f"said.{value['value']}"):
            return self.say(f"said.{value['value']}")
        moved = self.converted(value)
        if moved is None:
            return line(number(value["value"], str(value.get("unit", "")), places))
        recorded = number(value["value"], str(value.get("unit", "")), _as_fine(places, value))
        return line(f"{number(*moved, _fine(moved, places))} ({recorded})")

    def short(self, value: Any, places: int | None = None) -> str:
        """A quantity in the report's units alone, for a figure."""
        if not isinstance(value, dict) or "value" not in value:
            return "—"
        moved = self.converted(value)
        if moved is None:
            return number(value["value"], str(value.get("unit", "")), places)
        return number(*moved, _fine(moved, places))

    def converted(self, value: dict[str, Any]) -> tuple[float, str] | None:
        """``(number, unit)`` in the report's system; None where it is in it already or cannot be read."""
        unit = value.get("unit")
        target = OTHER[self.units].get(str(unit))
        if target is None or system_of(str(unit)) == self.units:
            return None
        try:
            return change_unit(float(value["value"]), str(unit), target), target
        except (TypeError, ValueError):
            return None

    def day(self, iso: Any) -> str:
        """``25 November 2026``; what is no date stands for itself."""
        try:
            when = datetime.fromisoformat(str(iso))
        except ValueError:
            return line(iso)
        return self.say("date", day=when.day, month=self.say(f"month.{when.month}"), year=when.year)

    def moment(self, iso: Any) -> str:
        """``25 November 2026, 16:20:05 (UTC−05:00)``."""
        try:
            when = datetime.fromisoformat(str(iso))
        except ValueError:
            return line(iso)
        offset = when.strftime("%z")
        zone = f" (UTC{offset[0].replace('-', '−')}{offset[1:3]}:{offset[3:5]})" if offset else ""
        return f"{self.day(iso)}, {when:%H:%M:%S}{zone}"

    def person(self, who: dict[str, Any] | None) -> str:
        """Name and role; an unknown person by their id, said so."""
        if not who or not who.get("name"):
            return self.say("person_unknown", id=line((who or {}).get("id"), 40))
        role = who.get("role")
        return line(who["name"], 80) + (f", {self.say(f'role.{role}')}" if role else "")

    def result(self, result: Any) -> str:
        """The word for a result."""
        return self.say(f"result.{result}") if result else self.say("result.none")


def _as_fine(places: int | None, value: dict[str, Any]) -> int | None:
    """The places of what was recorded, where it has more than are asked for in the report's unit: as fine as those are,
    since 0.01 mm is about 0.001 in."""
    unit, decimals = value.get("unit"), len(str(value["value"]).partition(".")[2])
    if places is None or unit not in ("in", "mm") or decimals <= places:
        return places
    return max(places + (1 if unit == "in" else -1), 0)


def _fine(moved: tuple[float, str], places: int | None) -> int | None:
    """More places for what the usual ones would turn into next to nothing: 0.001 in is 0.025 mm, not 0 mm."""
    size = abs(moved[0])
    if places is not None or moved[1] != "mm" or not 0 < size < 1:
        return places
    return 3 if size < 0.1 else 2
