"""Short texts are broken as a paragraph would break them, whatever anybody wrote."""

import io

import pypdf
import pytest
from hypothesis import given
from hypothesis import strategies as st
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase.pdfmetrics import stringWidth

from inspect_app.report.pages.cell import Cell, broken, draw_lines
from inspect_app.report.pages.flat import FlatCanvas
from inspect_app.report.pages.look import CELL, PLAIN, load_fonts
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.text import line
from tests.report.laid_out import FONTS

load_fonts(FONTS)
WORDS = st.lists(st.text(st.characters(codec="utf-8", exclude_characters=" "), min_size=1, max_size=40), max_size=12)


@given(WORDS.map(" ".join), st.floats(20, 300))
def test_no_line_is_wider_than_its_column_and_no_sign_is_lost(text, width):
    lines = broken(text, PLAIN, 7, width)
    assert all(stringWidth(one, PLAIN, 7) <= width or len(one) == 1 for one in lines)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")


@given(st.lists(st.from_regex("[a-zñ0-9,·]{1,9}", fullmatch=True), min_size=1, max_size=30).map(" ".join))
def test_words_are_broken_where_a_paragraph_breaks_them(text):
    paragraph = Paragraph(text, ParagraphStyle("rigid", CELL, spaceShrinkage=0))
    paragraph.wrap(120, 1000)
    lines = [" ".join(one[1]) for one in paragraph.blPara.lines]
    assert broken(text, CELL.fontName, CELL.fontSize, 120) == lines
    assert Cell(text, CELL, 120).tall == paragraph.height


def test_a_number_stays_with_its_unit():
    assert broken("28.5\xa0ft from the low end of the panel", PLAIN, 7, 40)[0].startswith("28.5\xa0ft")


def test_a_hash_without_a_blank_is_cut_where_the_column_ends():
    lines = broken("0123456789abcdef" * 4, PLAIN, 5.4, 150)
    assert len(lines) == 2 and len(lines[0]) > len(lines[1])


def test_what_a_person_wrote_as_markup_stands_as_they_wrote_it():
    assert Cell(line("a < b & c > d"), CELL, 300).lines == ["a < b & c > d"]


@pytest.mark.parametrize("text, whole", [
    ("0123456789abcdef" * 4, ["0123456789abcdef" * 4]),  # a hash: one word
    ("Galvanizado Estandarizado", []), ("Galvanizado\xa0Estandarizado", ["Galvanizado\xa0Estandarizado"]),
    ("one two", []), ("short", []),
])  # fmt: skip
def test_only_what_is_one_word_is_read_out_as_one_where_it_is_cut(text, whole):
    out = io.BytesIO()
    canvas = FlatCanvas(out, initialFontName=PLAIN, pageCompression=0)
    draw_lines(canvas, 72, 700, [Cell(text, CELL, 40)])
    canvas.save()
    marked = out.getvalue().split(b"/ActualText <")[1:]
    assert [bytes.fromhex(one.split(b">")[0].decode()).decode("utf-16") for one in marked] == whole
    assert pypdf.PdfReader(out).pages[0].extract_text()
