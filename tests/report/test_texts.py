"""Any text that a person can type comes out right, or as a box in its place; the report always comes out."""

import subprocess
import unicodedata

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given, settings
from hypothesis import strategies as st

from inspect_app.report.pages.look import load_fonts
from inspect_app.report.pages.text import MISSING, line, passage, visible
from tests.report.laid_out import FONTS, lay_out, sample_contents, texts_of
from tests.report.sample import record

load_fonts(FONTS)
GLYPHS = TTFont(FONTS / "DejaVuSans.ttf").getBestCmap()
ANY = st.text(st.characters(), max_size=300)  # lone surrogates too: a phone's storage can hold them


@settings(max_examples=300, deadline=None)
@given(ANY)
def test_every_sign_is_drawn_as_itself_or_seen_to_be_missing(text):
    shown = visible(text)
    composed = unicodedata.normalize("NFC", text)
    assert len(shown) == len(composed)
    for typed, drawn in zip(composed, shown, strict=True):
        assert drawn in (typed, MISSING) or (drawn == " " and typed in "\n\r\t\u2028\u2029")
        assert ord(drawn) in GLYPHS
        assert unicodedata.bidirectional(drawn) not in ("R", "AL", "AN", "RLE", "RLO", "RLI", "LRE", "LRO", "LRI")
        assert unicodedata.category(drawn) not in ("Cc", "Cf", "Cs", "Mn")


@settings(max_examples=100, deadline=None)
@given(ANY)
def test_nothing_typed_is_markup(text):
    for shown in (line(text), *passage(text, "{count} more")):
        assert "<" not in shown and ">" not in shown and "&" not in shown.replace("&lt;", "").replace(
            "&gt;", "").replace("&amp;", "")  # fmt: skip


@pytest.mark.parametrize(
    ("typed", "drawn"),
    [
        ("Jose\u0301 n\u0303and\u00fa", "José ñandú"),  # typed in parts, as some keyboards do
        ("½″ ≤ ⅜″ ±1 °F", "½″ ≤ ⅜″ ±1 °F"), ("שלום", "□□□□"), ("مرحبا", "□□□□□"), ("\u202egnp.exe", "□gnp.exe"),
        ("a\u200bb\u00adc", "a□b□c"), ("👷🏽\u200d♂\ufe0f", "□□□♂□"), ("a\u0305", "a□"), ("x\u2028y\tz", "x y z"),
        ("\x00\x07\x7f\x9b", "□□□□"), ("屋根", "□□"), ("\ud800", "□"), ("", ""), (None, "—"),
    ],
)  # fmt: skip
def test_what_a_page_cannot_say_right_is_a_box(typed, drawn):
    assert visible(typed) == drawn


HOSTILE = '<b>x</b> & </para> %s {count} \u202eexe.gnp \U0001f477 שלום e\u0301 \x00 ' + "w" * 200 + " "


TYPED = ("name", "place", "note", "crew", "by", "reason", "statement", "coating", "deck", "clip", "fastener",
         "underlayment", "metal", "done", "found", "required", "reference", "words", "firm")  # fmt: skip


def typed_over(thing, text):
    """Every text that a person types, wherever it stands in a body, replaced; what a phone writes is left, so who
    signed (``by`` of a whole entry)."""
    if isinstance(thing, list):
        return [typed_over(one, text) for one in thing]
    if not isinstance(thing, dict):
        return thing
    kept = ("by",) if "digest" in thing else ()
    ours = {key for key, value in thing.items() if key in TYPED and key not in kept and isinstance(value, str)}
    return {key: text if key in ours else typed_over(value, text) for key, value in thing.items()}


def test_a_report_whose_every_text_is_hostile_and_a_hundred_thousand_characters_long_comes_out_whole(tmp_path):
    text = HOSTILE * 400
    pdf, laid = lay_out(sample_contents(typed_over(record(), text)))
    assert len(text) > 100_000 and laid["pages"] < 80
    read = " ".join(" ".join(texts_of(pdf, tmp_path)).split())
    assert read.count("<b>x</b> & </para> %s {count} □exe.gnp □ □□□□ é □") > 10
    ran = subprocess.run(["qpdf", "--check", str(tmp_path / "read.pdf")], capture_output=True, check=False)
    assert ran.returncode == 0, ran.stderr
