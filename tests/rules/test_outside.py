"""The page of outside checks says what the vectors and tests say now, and every rule of arithmetic has one."""

from inspect_app.rules.rulebook import names
from tests import outside

# First principles or the approval's own word: there is no publication to hold them to.
UNPUBLISHED = {"window", "slot", "clip", "end_gap", "longest_run", "centred", "clearance", "fold_return", "penetration",
               "zone_spacing", "clip_seam", "head_compared"}  # fmt: skip
# Held to a program that is not ours instead: SciPy, or the draw done again by Node.
RECKONED = {"zero_plan", "lot_bound", "draw"}


def test_the_page_is_what_the_command_writes():
    assert outside.PAGE.read_text("utf-8") == outside.page(), "run: python -m tests.outside"


def test_every_rule_that_a_publication_speaks_of_is_held_to_one():
    held = {rule.split("@")[0] for rule, _, _, _ in outside.by_publication()}
    assert set(names()) - held <= UNPUBLISHED | RECKONED
    assert len(outside.by_publication()) > 30


def test_every_file_named_there_exists_and_holds_tests():
    files = {row[2] for row in (*outside.of_the_rules(), *outside.ELSEWHERE)}
    said = {file: (outside.TESTS / file).read_text("utf-8") for file in files}
    assert {file for file, text in said.items() if "def test_" not in text and "\ntest(" not in text} == set()
    assert all(cases > 50 for _, _, _, cases in outside.of_the_rules())


def test_a_publication_is_found_in_a_source_and_memory_is_told():
    assert outside.publications("EN 1993-1-1 3.2.6 (from memory): 10 m") == ["EN 1993-1-1 3.2.6 (from memory)"]
    assert outside.publications("100 ft, tab; derived by hand") == []
