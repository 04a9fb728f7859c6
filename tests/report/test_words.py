"""Every word a report may say is there, in both languages, in signs its font can draw."""

import json
import re
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

from inspect_app.evidence.package.known import known_from
from inspect_app.evidence.package.verify import Found, verify_package
from inspect_app.evidence.verify import verify
from inspect_app.report.pages.voice import Voice
from inspect_app.rules.rulebook import describe, names
from tests.report.laid_out import FONTS, STATIC, WORDS


def words_of(*files: str) -> dict[str, dict[str, str]]:
    texts: dict[str, dict[str, str]] = {}
    for file in files:
        texts |= json.loads((STATIC / "words" / file).read_text("utf-8"))
    return texts


# What only a report says.
TEXTS = words_of(*(file.name for file in (STATIC / "words").glob("report*.json")), "seal.json", "verify.json",
                 "again.json")  # fmt: skip
# The phone says the same of coverage and lots.
SHARED = set(words_of("coverage.json", "lots.json", "day_record.json", "finding.json", "doubts.json", "survey.json"))
PAGES = Path(__file__).parents[2] / "inspect_app" / "report"
FIELD = re.compile(r"\{(\w+)\}")


def test_every_text_is_in_both_languages_with_the_same_facts():
    def same(both: dict[str, str]) -> bool:
        return set(FIELD.findall(both["en"])) == set(FIELD.findall(both["es"]))

    full = {key: both for key, both in TEXTS.items() if set(both) == {"en", "es"} and all(both.values())}
    assert len(full) == len(TEXTS)
    assert [key for key, both in full.items() if not same(both)] == []


def test_every_fact_has_a_name_that_the_words_can_fill():
    assert [
        key
        for key, both in TEXTS.items()
        if any(not re.fullmatch("[a-z_]+", name) for name in FIELD.findall(both["en"]))
    ] == []


# One Spanish word for each of ours. Who did "the work" did "el trabajo": that is no job.
ONE_WORD = [
    (r"\bjobs?\b", r"\btrabajos?\b", r"\bobras?\b"),
    (r"\bseams?\b", r"\bjuntas?\b", r"\bcosturas?\b"),
    (r"\bentr(y|ies)\b", r"\basientos?\b", r"\bregistros?\b"),
    (r"\bkeys?\b", r"\bllaves?\b(?! de acceso)", r"\bclaves?\b"),  # a passkey is a "llave de acceso" everywhere
    (r"\bpass(es|ed)?\b", r"\bcumpl\w+", r"\bpasa"),
]


@pytest.mark.parametrize(("ours", "other", "right"), ONE_WORD, ids=["obra", "costura", "registro", "clave", "pasa"])
def test_a_thing_has_one_spanish_word_on_every_screen_and_page(ours, other, right):
    said = 0
    for file in sorted((STATIC / "words").glob("*.json")):
        for key, both in json.loads(file.read_text("utf-8")).items():
            if re.search(ours, both["en"], re.I):
                assert not re.search(other, both["es"], re.I), (file.name, key, both["es"])
                said += bool(re.search(right, both["es"], re.I))
    assert said > 7


def test_every_key_written_in_the_code_has_a_text():
    said = re.compile(r"""say\(\s*f?"([a-z_.]+)["]""")
    keys = {
        key for file in PAGES.rglob("*.py") for key in said.findall(file.read_text("utf-8")) if not key.endswith(".")
    }
    assert len(keys) > 100
    assert sorted(key for key in keys if f"report.{key}" not in TEXTS and key not in SHARED | {"fit.line.zone"}) == []


def test_whatever_a_phone_can_choose_for_the_day_has_a_word_of_the_report():
    screen = (STATIC / "walk" / "new_walk.js").read_text("utf-8")
    lists = {"SKY": "sky", "WIND": "wind", "BY": "metal_by"}
    found = {name: re.search(rf"{name} = \[(.*?)\]", screen) for name in lists}
    keys = {f"report.{lists[name]}.{one}" for name in lists for one in re.findall(r"'(\w+)'", found[name][1])}
    assert len(keys) == 9
    assert sorted(keys - set(TEXTS)) == []


def test_every_input_of_every_rule_is_printed_under_a_name_in_the_report_s_language():
    voice = Voice(WORDS, "es", "US")
    inputs = {name for rule in names() for name, one in describe(rule).items() if one["dimension"] != "taps"}
    assert sorted(name for name in inputs if voice.say(f"input.{name}") == name.replace("_", " ")) == []


@pytest.mark.parametrize(
    ("file", "pattern", "prefix"),
    [
        ("not_seen.py", r'_fact\("(\w+)"', "not_seen."),
        ("missing.py", r'_fact\(\s*"(\w+)"', "missing."),
        ("caution.py", r'_fact\("(\w+)"', "caution."),
    ],
)
def test_every_code_that_the_contents_can_hold_has_a_text(file, pattern, prefix):
    codes = set(re.findall(pattern, (PAGES / file).read_text("utf-8")))
    codes |= {"station_unsafe", "station_covered"} if prefix == "not_seen." else set()
    codes |= (
        {"first_principles", "clocks", "personal", "keys", "recomputed_different"} if prefix == "caution." else set()
    )
    codes |= {"photo_missing", "photo_lost", "photo_damaged"} if prefix == "missing." else set()
    assert codes
    assert sorted(code for code in codes if f"report.{prefix}{code}" not in TEXTS) == []


def test_the_font_has_every_sign_of_every_text():
    glyphs = TTFont(FONTS / "DejaVuSans.ttf").getBestCmap()
    extra = "◂▸◆◇○•–·…□″′⅛⅜⅝⅞½¼¾±≤≥×−⁻⁰¹²³⁴⁵⁶⁷⁸⁹"
    letters = set("".join(text for both in TEXTS.values() for text in both.values())) - {"\n"} | set(extra)
    assert sorted(letter for letter in letters if ord(letter) not in glyphs) == []


def test_every_fact_of_verification_and_every_reason_has_a_text():
    code = "".join(file.read_text("utf-8") for file in (PAGES.parent / "evidence").rglob("*.py"))
    reasons = set(re.findall(r'(?:(?:FAILS|UNKNOWN),\s+|None if \w+ else )"(\w+)"', code))
    assert {"no_record", "not_signed", "says_other", "other_entries", "chain_not_whole", "bytes_after"} <= reasons
    package = verify_package(Found({}, {}, [], {}, []), known_from({}), [], [])
    facts = [fact.name for fact in verify(b"").facts + package.facts]
    assert len(facts) > 12
    wanted = [f"report.verify.{name}" for name in facts] + [f"report.verify.reason.{name}" for name in reasons]
    assert sorted(key for key in wanted if key not in TEXTS) == []
