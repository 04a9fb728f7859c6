"""What was put in is said once where it was the same, and nothing that went into a sum is lost by it."""

from inspect_app.report.pages.fit_passed import passed_table
from inspect_app.report.pages.look import load_fonts
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.put_in import parted
from inspect_app.report.pages.voice import Voice
from inspect_app.report.pages.working import inputs_named
from tests.report.laid_out import FONTS, WORDS, sample_contents
from tests.report.sample_ground import q
from tests.report.test_contents import whole


def test_what_all_have_alike_is_said_once_and_the_rest_stays_with_its_own():
    told = parted([("a@1", [("hot", "hot 180"), ("gap", "gap 1")]), ("b@1", [("hot", "hot 180"), ("gap", "gap 2")])])
    assert (told.alike, told.own) == (["hot 180"], [["gap 1"], ["gap 2"]])


def test_what_only_one_has_stays_with_it():
    assert parted([("a@1", [("hot", "hot 180")]), ("b@1", [])]).own == [["hot 180"], []]


def test_what_one_of_the_same_rule_was_not_given_is_not_said_of_all():
    told = parted([("a@1", [("now", "now 66")]), ("a@1", [("now", "now 66")]), ("a@1", [])])
    assert (told.alike, told.own) == ([], [["now 66"], ["now 66"], []])


def test_no_input_of_a_fit_check_s_passing_lines_is_left_out_of_its_table():
    """By hand: each input's words stand above the table, in its row, or as one of the two sides compared."""
    load_fonts(FONTS)
    contents = sample_contents(whole(), final=True)
    page = Page(contents, Voice(WORDS, "en", "US"), lambda _: None)
    lines = [one for one in contents["fits"][0]["lines"] if one["result"] == "pass"]
    story = passed_table(page, lines)
    table = story[-1]
    above = next((part.matter.text for part in story if hasattr(part, "matter")), "")
    assert len(table.rows) == len(lines) > 5
    for one, row in zip(lines, table.rows, strict=True):
        by = blank(row[4]).split(" · ", 1)
        for _, text in inputs_named(page, one["working"]) if one["working"]["rule"] else []:
            said = blank(text)
            stands = said in blank(above) or said in by[-1].split("; ")
            assert stands or any(said.endswith(side) for side in values(page, one)), (one["line"], text)


def blank(text):
    return text.replace("\xa0", " ")


def values(page, one):
    """What a line's two sides are, bare, as they end what is said of an input; days as they are recorded."""
    sides = [one["pair"].get(name) for name in ("limit", "found")]
    return [" " + (side if isinstance(side, str) else blank(page.voice.quantity(side))) for side in sides if side]


def test_a_reading_finer_than_its_side_is_printed_keeps_its_last_digit():
    load_fonts(FONTS)
    page = Page({"rules": []}, Voice(WORDS, "en", "US"), lambda _: None)
    pair = {"sense": "at_most", "limit": q("1.0", "in"), "found": q("0.43751", "in"), "margin": q("0.5", "in")}
    working = {"rule": "limit@2", "inputs": {"reading": q("0.43751", "in"), "at_most": q("1", "in")}, "values": {}}
    line = {"line": "longest_panel", "result": "pass", "now": None, "recomputed": "same", "pair": pair,
            "working": working}  # fmt: skip
    row = passed_table(page, [line])[-1].rows[0]
    assert tuple(blank(row[at]) for at in (1, 2, 4)) == ("at most 1 in", "0.438 in", "limit@2 · reading 0.43751 in")


def test_an_input_that_only_happens_to_equal_a_side_stays_in_its_row():
    load_fonts(FONTS)
    page = Page({"rules": []}, Voice(WORDS, "en", "US"), lambda _: None)
    pair = {"sense": "at_most", "limit": q("6.0", "in"), "found": q("6.0", "in"), "margin": q("0", "in")}
    working = {"rule": "zone_spacing@1", "inputs": {"pitch": q("6", "in"), "spacing": q("6", "in")}, "values": {}}
    line = {"line": "zone:edge", "result": "pass", "now": None, "recomputed": "same", "pair": pair, "working": working}
    assert blank(passed_table(page, [line])[-1].rows[0][4]) == "zone_spacing@1 · slot pitch 6 in"
