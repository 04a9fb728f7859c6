"""The table of required elements in DEVELOPERS.md: ``python -m tests.report.elements`` prints it anew from a real
report, whose headings and pages an outside reader (pypdf) takes from its outline."""

import io

import pypdf

from inspect_app.report.pages.elements import DAILY, INSPECTION
from tests.report.laid_out import WORDS, lay_out, sample_contents
from tests.report.test_days import told

SOURCES = {"inspection": (INSPECTION, "ISO/IEC 17020:2012, 7.4.2"), "daily": (DAILY, "UFGS 01 45 00")}


def report() -> pypdf.PdfReader:
    """The sample with a week of daily records, laid out."""
    return pypdf.PdfReader(io.BytesIO(lay_out(sample_contents(told(), final=True))[0]))


def pages(reader: pypdf.PdfReader) -> dict[str, int]:
    """The page of each chapter, by its title, as the outline leads there."""
    return {one.title: reader.get_destination_page_number(one) + 1 for one in reader.outline
            if not isinstance(one, list)}  # fmt: skip


def headings() -> list[tuple[str, str, str, str]]:
    """``(source, letter, element, title of its chapter)`` of every element."""
    return [
        (source, letter, WORDS.say(f"report.element.{name}.{letter}", "en"),
         WORDS.say("report.cover" if mark == "cover" else f"report.chapter.{mark}", "en"))
        for name, (some, source) in SOURCES.items() for letter, mark in some
    ]  # fmt: skip


def rows(reader: pypdf.PdfReader) -> list[str]:
    found = pages(reader)
    lines = [f"| {' | '.join(one)} | {found[one[-1]]} |" for one in headings()]
    return ["| List | Letter | Element | Heading | Page of the sample |", "|---|---|---|---|---|", *lines]


if __name__ == "__main__":
    print(*rows(report()), sep="\n")
