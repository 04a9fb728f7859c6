"""Every word a screen asks for stands in the word files, in both languages."""

import json
import re
from pathlib import Path

import pytest

STATIC = Path(__file__).parents[2] / "static"
COMMENT = re.compile(r"(?m)^\s*(?://|/?\*).*$")
ASKED = re.compile(r"""(?<![\w.])say\(\s*(['"])([\w.-]+)\1""")
PLACE = re.compile(r"\{(\w+)\}")


def asked_in(source: str) -> set[str]:
    return {match[2] for match in ASKED.finditer(COMMENT.sub("", source))}


def all_words() -> dict[str, dict[str, str]]:
    words: dict[str, dict[str, str]] = {}
    for file in sorted((STATIC / "words").glob("*.json")):
        words.update(json.loads(file.read_text("utf-8")))
    return words


SCREENS = [file for file in sorted(STATIC.rglob("*.js")) if asked_in(file.read_text("utf-8"))]


def test_the_search_finds_what_screens_ask_and_passes_over_comments():
    assert asked_in("say('a.b') + say(\"c\", { n: 1 })\n// say('d')\nessay('e')") == {"a.b", "c"}
    assert len(SCREENS) > 20


@pytest.mark.parametrize("screen", SCREENS, ids=lambda file: file.relative_to(STATIC).as_posix())
def test_every_word_a_screen_asks_for_stands_in_both_languages(screen):
    words = all_words()
    missing = {
        f"{key} ({language})"
        for key in asked_in(screen.read_text("utf-8"))
        for language in ("en", "es")
        if not words.get(key, {}).get(language, "").strip()
    }
    assert missing == set()


@pytest.mark.parametrize(
    "file",
    [
        "screens.json", "instruments.json", "card.json", "draw.json", "plan.json", "day.json", "lots.json",
        "finding.json", "office.json", "passkeys.json", "verify_page.json",
    ],
)  # fmt: skip
def test_both_languages_of_a_word_leave_place_for_the_same_facts(file):
    words = json.loads((STATIC / "words" / file).read_text("utf-8"))
    uneven = {key for key, text in words.items() if set(PLACE.findall(text["en"])) != set(PLACE.findall(text["es"]))}
    assert uneven == set()
