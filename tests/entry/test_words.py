"""Every refusal has words in both languages, and every word a refusal."""

import json
import re
from pathlib import Path

from .known import ENTRIES

ROOT = Path(__file__).parents[2]
WORDS = json.loads((ROOT / "static/words/entry.json").read_text(encoding="utf-8"))
CODES = {key.split(".")[1] for key in WORDS if key.startswith("refusal.")}


def raised() -> set[str]:
    """The codes that the sources raise, Python and JavaScript, and that a batch is answered with."""
    sources = [*(ROOT / "inspect_app/entry").glob("*.py"), *(ROOT / "static/entry").glob("*.js"),
               ROOT / "inspect_app/intake/batch.py"]  # fmt: skip
    said = r"(?:Refused\(|Quarantined\(entry,)\s*[\"'](\w+)[\"']"
    return {code for path in sources for code in re.findall(said, path.read_text(encoding="utf-8"))}


def test_every_code_that_is_raised_has_a_message_and_a_way_out() -> None:
    assert raised() == CODES
    assert {row["code"] for row in ENTRIES["bad_tokens"] + ENTRIES["bad_payloads"]} <= CODES
    for code in CODES:
        assert f"refusal.{code}.message" in WORDS and f"refusal.{code}.way_out" in WORDS


def test_every_text_is_there_in_both_languages_and_they_differ() -> None:
    for key, texts in WORDS.items():
        assert set(texts) == {"en", "es"}, key
        assert texts["en"].strip() and texts["es"].strip() and texts["en"] != texts["es"], key
