"""Reading YAML from anyone: lines are right, and hostile text is told, cheaply, and never raises."""

import time

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from inspect_app.checklist.compile import Compiled, compile_text
from inspect_app.checklist.page import DEEPEST, LARGEST, read
from inspect_app.checklist.problem import Problem
from inspect_app.settings import shipped
from tests.checklist.sample import RULES, TEXT, codes

LEVELS = [f"{chr(98 + n)}: &{chr(98 + n)} [*{chr(97 + n)}, *{chr(97 + n)}]" for n in range(20)]
BOMB = "\n".join(["a: &a [x, x]", *LEVELS])


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("a: !!python/object/apply:os.system [ls]", "tag"),
        ("a: !include /etc/passwd", "tag"),
        ("a: !!str 7", "tag"),
        ("a: &x 1", "anchor"),
        ("a: &x 1\nb: *x", "alias"),
        (BOMB, "alias"),
        ("a: {<<: *x}", "alias"),
        ("a: 1\na: 2", "repeated_key"),
        ("? [a]\n: 1", "key_not_text"),
        ("a: 0.25", "fraction"),
        ("a: 1e9", "fraction"),
        ("a: .inf", "fraction"),
        ("a: " + "9" * 400, "fraction"),
        ("a: 1\n---\nb: 2", "second_document"),
        ("%YAML 1.1\n---\na: 1", "directive"),
        ("a: [", "not_yaml"),
        ("a: 'x", "not_yaml"),
        ("a: b: c", "not_yaml"),
        ("\ta: 1", "not_yaml"),
        ("a: \0", "bad_character"),
        ("a: \ud800", "bad_character"),
        ("[" * 5000, "too_deep"),
        ("{a: " * 5000, "too_deep"),
        ("- " * 5000, "too_deep"),
        ("- x\n" * 30000, "too_many"),
        ("x" * (LARGEST + 1), "too_large"),
    ],
)
def test_hostile_and_broken_text_is_told_and_costs_little(text, code):
    began = time.perf_counter()
    page = read(text)
    assert code in codes(page.problems)
    assert all(one.line >= 1 for one in page.problems)
    assert time.perf_counter() - began < 8  # a bound against blow-up, far above what it takes


def test_words_and_numbers_mean_what_yaml_1_2_says_and_nothing_else_is_made_of_them():
    page = read("a: [yes, no, on, 0o7, 2026-11-25, 12:30:00, ~, true, -3, 'true', \"7\"]")
    expected = ["yes", "no", "on", "0o7", "2026-11-25", "12:30:00", None, True, -3, "true", "7"]
    assert page.data == {"a": expected} and page.problems == []


def test_lines_are_those_of_the_file():
    page = read("a: 1\n\n# remark\nb:\n  - x\n  - c: |\n      long\n      text\n    d: 2\n")
    assert [page.lines[path] for path in [("a",), ("b",), ("b", 0), ("b", 1, "c"), ("b", 1, "d")]] == [1, 4, 5, 6, 9]
    assert page.line(("b", 1, "missing", "deeper")) == 6


def test_a_definition_fits_far_below_the_deepest_nesting():
    page = read(TEXT)
    assert max(len(path) for path in page.lines) < DEEPEST - 4


def tell(text: str) -> None:
    found = compile_text(text, RULES)
    if not isinstance(found, Compiled):
        assert found and all(isinstance(one, Problem) and one.line >= 1 for one in found)


@settings(max_examples=150, deadline=None)
@given(st.text(st.sampled_from(list("ab:-?[]{}&*!|>'\"#%@`,\n \t0.~<é\0\ud800")), max_size=60))
def test_any_text_is_a_definition_or_a_list_of_problems(text):
    tell(text)


PIECES = ["&a ", "*a", "!!x ", "\n---\n", "{", "]", "'", "\t", "null", "7", "[]", "{}", "true", "\0", "<<: ", "  "]


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.data())
def test_a_released_file_cut_and_spoilt_anywhere_is_told_and_never_raises(data):
    text = data.draw(st.sampled_from([TEXT, *released()]))
    for _ in range(data.draw(st.integers(1, 3))):
        at = data.draw(st.integers(0, len(text)))
        cut = data.draw(st.integers(0, 40))
        text = text[:at] + data.draw(st.sampled_from(PIECES)) + text[at + cut :]
    tell(text)


def released() -> list[str]:
    # The head of each file: whole ones would make the search slow without reaching anything new.
    return [file.read_text("utf-8")[:4000] for file in sorted(shipped("checklists").glob("*.yaml"))]
