"""What fails most, drawn from the findings a report prints; and tables that say their head again on each page."""

import io

import pypdf
from reportlab.platypus import SimpleDocTemplate

from inspect_app.report.pages.cells import Cells
from inspect_app.report.pages.defects import defects
from inspect_app.report.pages.flat import FlatCanvas
from inspect_app.report.pages.look import PLAIN, load_fonts
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.voice import Voice
from tests.report.laid_out import FONTS, WORDS, sample_contents

load_fonts(FONTS)


def drawn(*flowables):
    """The text of each page of these alone."""
    out = io.BytesIO()
    SimpleDocTemplate(out, initialFontName=PLAIN).build(list(flowables), canvasmaker=FlatCanvas)
    return [" ".join(page.extract_text().split()) for page in pypdf.PdfReader(out).pages]


def finding(one, n, state, item=None, severity="major", source="answer"):
    name = f"s{n}/nail-flange/{item}" if item else f"by-hand-{n}"
    return one | {"id": name, "n": n, "state": state, "severity": severity, "source": source}


def told(states):
    """The sample with findings of three kinds in these states: four of a slot, one of a row, one by hand."""
    contents = sample_contents()
    one = contents["findings"][0]
    kinds = ["slot", "slot", "slot", "slot", "row", None]
    contents["findings"] = [
        finding(one, n, state, item, "critical" if item == "row" else "major", "answer" if item else "hand")
        for n, (item, state) in enumerate(zip(kinds, states, strict=True), 1)
    ]
    return Page(contents, Voice(WORDS, "en", "US"), lambda name: None)


def test_the_most_frequent_stands_first_with_what_is_unsettled_and_the_share_so_far():
    text = drawn(*defects(told(["open", "corrected", "closed", "conceded", "open", "closed"])))[0]
    assert text.index("2 unsettled") < text.index("1 unsettled")
    for said in ("66.7 % to here", "100 % to here", "found without being asked"):  # by hand: 4, 5 and 6 of 6
        assert said in text, said


def test_what_was_withdrawn_is_no_finding_and_one_kind_alone_makes_no_order():
    text = drawn(*defects(told(["withdrawn", "open", "open", "withdrawn", "open", "open"])))[0]
    assert "50 % to here" in text  # two of four
    assert defects(told(["open"] * 4 + ["withdrawn"] * 2)) == []


def test_a_long_table_says_its_head_on_every_page_and_loses_no_row():
    rows = [[f"row {n}", "x " * (n % 7)] for n in range(200)]
    pages = drawn(Cells(["Number", "Matter"], rows, (0.3, 0.7)))
    assert len(pages) > 2 and all("Number" in page and "Matter" in page for page in pages)
    tall = drawn(Cells(["Number", "Matter"], [[str(n), "line<br/>" * 30] for n in range(5)], (0.3, 0.7)))
    assert len(tall) == 3 and all("Number" in page for page in tall)  # two such rows a page
    text = " ".join(pages)
    assert [n for n in range(200) if f"row {n} " not in f"{text} "] == []
