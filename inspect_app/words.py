"""Texts for people, by key and language: every ``static/words/*.json``, ``{key: {"en", "es"}}``."""

import json
import re
from collections.abc import Mapping
from pathlib import Path

LANGUAGES = ("en", "es")
_FACT = re.compile(r"\{([a-z_]+)\}")


def spoken(environ: Mapping[str, str]) -> str:
    """The language in which a command speaks: ``es`` where the machine's locale is Spanish, else ``en``."""
    return "es" if environ.get("LC_ALL", environ.get("LANG", "")).startswith("es") else "en"


class Words:
    """All texts of one folder, read once."""

    def __init__(self, folder: Path) -> None:
        self._texts: dict[str, dict[str, str]] = {}
        for file in sorted(folder.glob("*.json")):
            self._texts.update(json.loads(file.read_text("utf-8")))

    def __contains__(self, key: str) -> bool:
        return key in self._texts

    def say(self, key: str, language: str = "en", facts: Mapping[str, object] | None = None) -> str:
        """The text, with ``{name}`` replaced from ``facts``. ``RuntimeError`` for a key without texts."""
        if key not in self._texts:
            raise RuntimeError(f"no text for {key!r}")
        texts = self._texts[key]
        given = facts or {}
        return _FACT.sub(lambda m: str(given.get(m[1], m[0])), texts.get(language) or texts["en"])
