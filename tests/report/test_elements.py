"""Each element that two published lists ask for stands in a report, where its own table says."""

from pathlib import Path

import pytest

from inspect_app.record.day_record_items import LETTERS
from inspect_app.report.pages.elements import DAILY
from tests.report.elements import headings, pages, report, rows
from tests.report.laid_out import WORDS

GUIDE = Path(__file__).parents[2] / "DEVELOPERS.md"
# What a reader looks for on the page that the table names: its label, and what the sample says there.
SAID = {
    "a": ("Issued by", "Gannet Sheet Metal"), "b": ("No. ", "Date of issue"), "c": ("Dates of inspection", "2026"),
    "d": ("What was inspected", "Quay slope"), "e": ("Sign-off", "foreman"), "f": ("Result", "do not pass"),
    "g": ("Findings", "Does not pass"),
}  # fmt: skip


@pytest.fixture(scope="module")
def reader():
    return report()


def text(reader, first, last):
    return " ".join(" ".join(reader.pages[at - 1].extract_text() for at in range(first, last + 1)).split())


def test_the_guide_holds_the_table_that_the_command_prints(reader):
    assert "\n".join(rows(reader)) in GUIDE.read_text("utf-8")


@pytest.mark.parametrize("letter", SAID)
def test_each_element_of_an_inspection_report_is_where_the_table_says(reader, letter):
    title = next(title for source, one, _, title in headings() if source.startswith("ISO") and one == letter)
    first = pages(reader)[title]
    shown = text(reader, first, first + 1)  # a chapter may begin at the foot of a page
    assert [one for one in SAID[letter] if one not in shown] == []


def test_each_letter_of_a_contractor_s_daily_record_is_where_the_table_says(reader):
    first = pages(reader)[WORDS.say("report.chapter.days", "en")]
    shown = text(reader, first, first + 4)
    assert [letter for letter, _ in DAILY] == [letter for letter, _ in LETTERS] == list("abcdefghij")
    for letter, name in LETTERS:
        assert f"{letter}) {WORDS.say(f'day_record.item.{name}', 'en').split()[0]}" in shown


def test_the_report_s_own_table_leads_to_the_same_pages(reader):
    shown = text(reader, 2, 4)
    for _, letter, what, title in headings():
        assert f"{letter} {what} {title}" in shown
        assert str(pages(reader)[title]) in shown.split(f"{letter} {what} {title}")[1][:40]


def test_contents_name_every_chapter_with_the_page_its_outline_leads_to(reader):
    shown = text(reader, 2, 2)
    for title, page in list(pages(reader).items())[1:]:
        assert title in shown and str(page) in shown.split(title, 1)[1][:12], title
