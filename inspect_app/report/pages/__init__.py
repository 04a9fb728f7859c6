"""Lay a report's contents out as PDF pages. The same contents give the same bytes, within one release."""

from collections.abc import Callable
from pathlib import Path
from typing import Any, BinaryIO

from reportlab.platypus import NextPageTemplate, PageBreak

from inspect_app.report.contents import contents_digest
from inspect_app.report.pages.areas_section import areas_section
from inspect_app.report.pages.assembly_section import assembly_section
from inspect_app.report.pages.contents_page import contents_page
from inspect_app.report.pages.cover_page import draw_cover
from inspect_app.report.pages.coverage_section import coverage_section
from inspect_app.report.pages.days_section import days_section
from inspect_app.report.pages.findings_section import findings_section
from inspect_app.report.pages.fit_section import fit_section
from inspect_app.report.pages.frame import Plate
from inspect_app.report.pages.hashes_section import hashes_section
from inspect_app.report.pages.look import load_fonts
from inspect_app.report.pages.lots_section import lots_section
from inspect_app.report.pages.method_section import cautions_section, method_section
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.photos_section import photos_section
from inspect_app.report.pages.picture import Find
from inspect_app.report.pages.roof_section import roof_section
from inspect_app.report.pages.row import settle, space
from inspect_app.report.pages.scope_section import scope_section
from inspect_app.report.pages.signoff_section import signoff_section
from inspect_app.report.pages.survey_events import survey_events_section
from inspect_app.report.pages.survey_section import survey_section
from inspect_app.report.pages.voice import Texts, Voice

MOST_PASSES = 3
Share = Callable[[float], None]
SECTIONS = (
    scope_section, findings_section, roof_section, coverage_section, lots_section, assembly_section, fit_section,
    areas_section, days_section, signoff_section, photos_section, method_section, cautions_section,
)  # fmt: skip
# Coverage speaks of the whole job.
LEFT_OUT = {"walk": (coverage_section,), "audit": (coverage_section,), "survey": (coverage_section,)}
FIRST = {"survey": (survey_section, survey_events_section)}  # what that kind alone has, after its scope


def sections_of(kind: str) -> list[Any]:
    """The sections of a report of that kind, in their order; the seals' comes after."""
    kept = [section for section in SECTIONS if section not in LEFT_OUT.get(kind, ())]
    return [kept[0], *FIRST.get(kind, ()), *kept[1:]]


def write_pages(
    contents: dict[str, Any], texts: Texts, fonts: Path, find: Find, out: BinaryIO,
    counted: Share = lambda share: None, written: Share = lambda share: None,
) -> dict[str, Any]:  # fmt: skip
    """Write the unsealed PDF to ``out``.

    ``texts``: the words; ``fonts``: the folder of DejaVu Sans; ``find(sha256)``: the small upright JPEG of a
    photo or None; ``counted`` and ``written`` are told the share done, 0 to 1, of each of the two
    passes. Returns ``{"pages", "seal": {"page", "boxes": {name: [x0, y0, x1, y1]}}, "marks": {heading's mark: page}}``,
    boxes in points.
    """
    load_fonts(fonts)
    voice = Voice(texts, contents["language"], contents["units"])
    page = Page(contents, voice, find)
    digest = contents_digest(contents)
    story = _story(page, digest)
    first = _document(page, digest, None, None)  # only to count the pages, and to learn where each heading comes to lie
    total = first.build_flat(_with_contents(page, story, {}), counted)
    for _ in range(MOST_PASSES):  # again where the number of a page took a line more than was thought
        out.seek(0)
        out.truncate()
        document = _document(page, digest, total, out)
        pages = total = document.build_flat(_with_contents(page, story, first.marks), written)
        if document.marks == first.marks:
            break
        first = document
    return {"pages": pages, "seal": document.seal, "marks": document.marks}


def _document(page: Page, digest: str, total: int | None, out: BinaryIO | None) -> Plate:
    return Plate(out, page.contents, digest, page.voice, total, lambda canvas, size: draw_cover(page, canvas, size))


def _story(page: Page, digest: str) -> list[Any]:
    story: list[Any] = []
    sections = sections_of(page.contents["kind"])
    for at, section in enumerate(sections):
        story += [*section(page, str(at + 1)), space(20)]
    return settle(story + hashes_section(page, str(len(sections) + 1), digest))


def _with_contents(page: Page, story: list[Any], marks: dict[str, int]) -> list[Any]:
    """The same story for every pass, behind the table of contents as far as it is known."""
    return [NextPageTemplate("body"), PageBreak(), *contents_page(page, story, marks), *story]
