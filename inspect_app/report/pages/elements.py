"""Which heading of a report holds each element that ISO/IEC 17020:2012, 7.4.2 a to g, asks of an inspection report, and
UFGS 01 45 00 (read as UFGS-01451A) of a contractor's daily record. Words in short, not the documents' own."""

from typing import Any, NamedTuple

from inspect_app.report.pages.page import Page

INSPECTION = (
    ("a", "cover"), ("b", "cover"), ("c", "cover"), ("d", "cover"), ("e", "signoff"), ("f", "scope"),
    ("g", "findings"),
)  # fmt: skip
DAILY = tuple((letter, "days") for letter in "abcdefghij")


class Element(NamedTuple):
    """One element: of which list, its letter, what it is, the heading that holds it, that heading's mark and page (0
    where this report has no such heading)."""

    source: str
    letter: str
    what: str
    where: str
    mark: str
    page: int


def elements(page: Page, marks: dict[str, int]) -> list[Element]:
    """All of both lists. ``marks``: the page of each mark."""
    told: list[Element] = []
    for source, some in (("inspection", INSPECTION), ("daily", DAILY)):
        for letter, mark in some:
            found = marks.get(mark, 1 if mark == "cover" else 0)
            where: Any = page.say("cover") if mark == "cover" else page.say(f"chapter.{mark}")
            if source == "daily":
                where = page.say("element_letter", chapter=where, letter=letter)
            told.append(Element(source, letter, page.say(f"element.{source}.{letter}"), where, mark, found))
    return told
