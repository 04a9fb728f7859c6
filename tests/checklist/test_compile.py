"""Compiling: the bytes are fixed by what the file says, and every fault is told with its line."""

import hashlib
import json

from inspect_app.checklist.compile import Compiled, compile_text
from inspect_app.entry.base64url import encode
from tests.checklist.sample import RULES, TEXT, codes, problems, sample, spoil


def compiled(text: str) -> Compiled:
    found = compile_text(text, RULES)
    assert isinstance(found, Compiled), found
    return found


def test_a_sound_definition_compiles_to_bytes_named_by_their_digest():
    found = compiled(TEXT)
    assert found.digest == encode(hashlib.sha256(found.data).digest())
    assert json.loads(found.data) == found.definition
    assert found.data.decode().startswith('{"applies":{"attachment":["nail_flange"]},"cautions":[{"en":"Mind')
    assert "¿Está recto?" in found.data.decode()


def test_comments_order_and_layout_do_not_change_the_digest_but_words_do():
    same = "# a remark\n" + json.dumps(json.loads(json.dumps(sample())), indent=3, ensure_ascii=True)
    assert compiled(same).data == compiled(TEXT).data
    assert compiled(TEXT.replace("Look.", "Look!")).digest != compiled(TEXT).digest


def test_what_is_left_out_is_compiled_as_its_plain_meaning():
    item = sample()["items"][0]
    assert (item["quick"], item["applies"], item["instrument"], item["rule"]) == (False, {}, None, None)
    assert "unit" not in item


def test_a_definition_may_bring_causes_of_its_own_and_one_without_them_compiles_to_the_bytes_it_always_had():
    own = "causes: [{code: clutch, en: Clutch set wrong, es: Embrague mal ajustado}]\n"
    assert compiled(TEXT + own).definition["causes"] == [
        {"code": "clutch", "en": "Clutch set wrong", "es": "Embrague mal ajustado"}
    ]
    assert "causes" not in compiled(TEXT).definition and b"causes" not in compiled(TEXT).data


def test_every_fault_is_told_with_line_field_and_value_and_none_hides_another():
    spoilt = (
        TEXT.replace("version: 3", "version: three")
        .replace("kind: judge", "kind: look")
        .replace(", es: Viento.", "")
        .replace("spacing@1", "spacing@9")
    )
    told = [(one.line, one.field, one.value, one.code) for one in problems(spoilt)]
    assert told == [
        (2, "version", "three", "not_number"),
        (16, "items[0].kind", "look", "choice"),
        (23, "items[1].why.es", None, "missing_language"),
    ]
    fixed = spoilt.replace("{en: Wind.}", "{en: Wind., es: Viento.}")
    assert (30, "items[1].rule.name", "unknown_rule_version") in [
        (one.line, one.field, one.code) for one in problems(fixed)
    ]


def test_a_file_that_is_no_definition_is_one_clear_problem():
    for text in ("", "hello", "[]", "7", "null"):
        assert codes(problems(text)) == ["not_map"], text


def test_a_repeated_item_and_a_foreign_attachment_are_found_between_items():
    assert codes(spoil("id: gaps", "id: straight")) == ["repeated_item"]
    assert codes(spoil("kind: judge", "kind: judge\n    applies: {attachment: [fixed_clip]}")) == ["applies_outside"]
