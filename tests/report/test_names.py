"""Long names say that they go on, and numbers have the noun they need."""

import pytest

from inspect_app.report.pages.look import load_fonts
from inspect_app.report.pages.lot_words import laid_run, lot_where
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.voice import Voice
from tests.report.laid_out import FONTS, WORDS, lay_out, sample_contents, texts_of
from tests.report.test_contents import whole

LONG = "A boathouse beyond the second harbour wall with a name of some hundred letters that somebody typed in full"


def test_a_name_too_long_for_the_cover_ends_in_a_sign_that_it_goes_on(tmp_path):
    rec = whole()
    rec["job"]["name"] = LONG
    cover = " ".join(texts_of(lay_out(sample_contents(rec, final=True))[0], tmp_path)[0].split())
    title = cover[cover.index("fastening can still be seen") :]
    shown = title[title.index("A boathouse") :].split("…")[0].strip()
    assert LONG.startswith(shown) and 40 < len(shown) < len(LONG)


def test_who_inspected_and_signed_is_told_whole_or_with_a_sign_that_it_goes_on(tmp_path):
    told = sample_contents(whole(), final=True)
    told["cover"]["inspected_by"] = [LONG]
    cover = " ".join(texts_of(lay_out(told)[0], tmp_path)[0].split())
    shown = cover[cover.index("Inspected by ") + 13 :].split("…")[0].strip()
    assert shown and LONG.startswith(shown)


@pytest.mark.parametrize(
    ("language", "several", "single", "legs"),
    [
        ("en", "Quay, panels 3 to 5", "Quay, panel 4", "No photo of the open leg at panel 4."),
        ("es", "Quay, paneles 3 a 5", "Quay, panel 4", "Sin foto de la pierna abierta en el panel 4."),
    ],
)
def test_one_panel_is_no_panels(language, several, single, legs):
    load_fonts(FONTS)
    contents = {"areas": [{"id": "q", "name": "Quay"}], "area_names": {}}
    page = Page(contents, Voice(WORDS, language, "US"), lambda _: None)
    assert (lot_where(page, "q", 3, 5), lot_where(page, "q", 4, 4), laid_run(page, 4, 4)) == (several, single, "4")
    assert page.say("lot_legs_missed", panels="4", count=1) == legs
