"""Everything the rulebook can say has words in both languages."""

import ast
import json
import re
from pathlib import Path

from inspect_app.rules.rulebook import RELEASED, describe, judge

ROOT = Path(__file__).parents[2]
WORDS = json.loads((ROOT / "static" / "words" / "rules.json").read_text("utf-8"))
SOURCES = [*(ROOT / "inspect_app" / "rules").glob("*.py"), *(ROOT / "inspect_app" / "record").glob("*.py")]


def _first_words(*callees: str) -> set[str]:
    """Literal first arguments of calls to these names in the rulebook's sources."""
    found = set()
    for source in SOURCES:
        for node in ast.walk(ast.parse(source.read_text("utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in callees:
                found |= {arg.value for arg in node.args[:1] if isinstance(arg, ast.Constant)}
    return found


def test_every_refusal_and_reason_has_words_and_a_way_out() -> None:
    refusals, reasons = _first_words("Refused"), _first_words("reason")
    assert len(refusals) > 15 and len(reasons) > 15  # the scan sees them
    for code in refusals:
        assert f"refused.{code}" in WORDS and f"refused.{code}.way_out" in WORDS, code
    for code in reasons:
        assert f"reason.{code}" in WORDS, code


DO = re.compile(
    r"(?:^|[:,.;] |\b(?:and|or|it) )(?:ask|read|measure|take|tap|lay|look|set|move|open|close|correct|replace|stop|say|"
    r"add|give|get|cut|record|enter|find|check|compare|draw|plan|fold|mark|turn|count|use|write|name|reload|units|choose)\b",
    re.IGNORECASE,
)


def test_every_reason_says_what_to_do() -> None:
    """By its shape: a word of command at a beginning, after a stop, or after "and" and "or"."""
    nothing_wrong = {"reason.recorded", "reason.one_piece_clip", "reason.wear_as_computed"}
    silent = {key for key, text in WORDS.items() if key.startswith("reason.") and not DO.search(text["en"])}
    assert silent == nothing_wrong
    assert not DO.search("The slope is below the minimum of this seam.")


def test_every_rule_says_its_formula_and_its_source() -> None:
    for name, versions in RELEASED.items():
        for version in versions:
            for part in ("name", "formula", "source"):
                assert f"rule.{name}@{version}.{part}" in WORDS


def test_every_input_has_a_name() -> None:
    for name, versions in RELEASED.items():
        for version in versions:
            for field in describe(f"{name}@{version}"):
                assert f"input.{field}" in WORDS, field


def test_every_text_stands_in_both_languages_with_the_same_facts() -> None:
    for key, texts in WORDS.items():
        assert set(texts) == {"en", "es"} and all(texts.values()), key
        facts = [sorted(re.findall(r"\{(\w+)\}", text)) for text in texts.values()]
        assert facts[0] == facts[1], key


def test_units_are_answered_in_the_system_asked_for() -> None:
    inputs = {"distance": {"value": "100", "unit": "ft"}, "expansion": {"value": "6.5e-6", "unit": "/F"},
              "change": {"value": "80", "unit": "dF"}}  # fmt: skip
    found = judge("movement", inputs, "SI")["values"]["movement"]
    assert found["unit"] == "mm" and abs(found["value"] - 0.624 * 25.4) < 1e-9
