"""Where pages end: no heading stands alone, and a finding's photos stand with it."""

import pytest
from reportlab.platypus import CondPageBreak

from inspect_app.report.pages.look import BODY, load_fonts
from inspect_app.report.pages.row import Heading, Row, paragraphs, settle
from tests.report.laid_out import FONTS, lay_out, sample_contents, texts_of
from tests.report.sample import write_pictures
from tests.report.test_contents import whole

load_fonts(FONTS)
HEADS = ("Findings", "Approved assembly against what was found", "Roof areas, place by place", "Day by day",
         "Sign-off", "Photo log", "Rules and instruments", "Cautions", "Hashes and seal")  # fmt: skip


def pages(folder, lines):
    """The sample with everything behind the last place pushed down by so many lines of a note."""
    rec = whole()
    rec["answers"]["s4/clip/tab"]["note"] = "\n".join(["A line that takes room."] * lines)
    return texts_of(lay_out(sample_contents(rec, final=True), write_pictures(folder).get)[0], folder)


def rows(page):
    """The lines of a page between its running head and its foot."""
    return [line.strip() for line in page.splitlines() if line.strip()][1:-2]


@pytest.mark.parametrize("lines", [1, 5, 9, 13, 21, 33])
def test_a_chapter_begins_under_its_heading_wherever_that_falls(tmp_path, lines):
    laid = pages(tmp_path, lines)
    for page in laid:
        assert [one for one in rows(page)[-2:] if any(one.endswith(head) for head in HEADS)] == []
    day = next(one for one in laid if "Day by day" in one).split("Day by day")[1]
    assert "Walk 1, 25 November 2026" in day


@pytest.mark.parametrize(("level", "kept"), [(0, False), (1, False), (2, True)])
def test_a_heading_that_ends_a_part_asks_for_room_of_its_own_and_one_beneath_it_goes_with_it(level, kept):
    story = [Heading("Not looked at", "left", 1), *paragraphs("Left out", ["One place."], BODY),
             Heading("Next", "next", level), *paragraphs("", ["Matter."], BODY), Row("", None)]  # fmt: skip
    laid = settle(story)
    before = laid[next(at for at, one in enumerate(laid) if getattr(one, "mark", "") == "next") - 1]
    assert isinstance(before, CondPageBreak) is not kept


def test_a_finding_s_photos_stand_on_the_page_of_the_finding(tmp_path):
    page = [one for one in pages(tmp_path, 1) if "Finding 2: " in one][-1]
    text = page.rsplit("Finding 2: ", 1)[1]
    assert "Does not pass" in text and "Photo 3 · what it is" in text and "Photo 4 · where it is" in text
