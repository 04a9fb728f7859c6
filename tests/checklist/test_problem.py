"""Every problem can be said in both languages, with field, value and a way out."""

import json
import re
from pathlib import Path

import pytest

from inspect_app.checklist import compile as compiling
from inspect_app.checklist.problem import Problem, short
from inspect_app.settings import shipped
from inspect_app.words import LANGUAGES, Words
from tests.checklist.sample import spoil

WORDS = Words(shipped("static") / "words")
CODE = Path(compiling.__file__).parent


def texts() -> dict[str, dict[str, str]]:
    return json.loads((shipped("static") / "words" / "checklist.json").read_text("utf-8"))


def test_every_code_has_its_sentences_and_every_sentence_its_code():
    source = "".join(file.read_text("utf-8") for file in CODE.glob("*.py"))
    worded = {key.split(".")[2] for key in texts()}
    used = {code for code in worded if re.search(rf'["|]{code}["|]', source)}
    used |= {"not_text", "not_number", "not_flag", "not_list", "not_map"}  # made from what was wanted
    assert worded == used


def test_every_text_stands_in_both_languages_with_the_same_facts():
    for key, both in texts().items():
        assert sorted(both) == ["en", "es"], key
        facts = [sorted(set(re.findall(r"\{([a-z_]+)\}", text))) for text in both.values()]
        assert facts[0] == facts[1], key
        assert both["en"] != both["es"], key


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_sentence_holds_line_field_value_and_way_out(language):
    (one,) = spoil("spacing@1", "spacing@9")
    said = one.sentence(WORDS, language)
    assert said.startswith("30: items[1].rule.name: ")
    assert "(spacing@9) - " in said and "spacing@1" in said
    assert "{" not in said


def test_a_value_is_shown_short_and_without_control_characters():
    assert short("a\nb\x1b[31m" + "x" * 500).isprintable()
    assert len(short("x" * 500)) == 60
    assert short({"a": 1, "b": 2}) == "{a, b}"
    assert short(True) == "true"
    assert "(" not in Problem(1, "file", None, "too_large", {"limit": 1}).sentence(WORDS).split(" - ")[0]
