"""What a voice reads of a report: everything on a page is an element of its structure, or said to be ornament.

Outside judges: PyPI ``pdfua``, which has 16 of the 106 rules that a machine can check of ISO 14289-1 (PDF/UA-1), and
poppler's ``pdfinfo -struct-text``. No validator of the whole standard is at hand: nothing more is claimed."""

import io
import itertools
import re
import subprocess

import pdfua
import pypdf
import pytest
from pypdf.generic import ContentStream

from inspect_app.report.pages.flat import FlatCanvas
from inspect_app.report.pages.look import PLAIN, load_fonts
from tests.report.laid_out import FONTS, lay_out, sample_contents
from tests.report.sample import write_pictures
from tests.report.test_survey import contents as survey
from tests.report.test_survey import site

MADE = {
    "closeout": lambda: sample_contents(),
    "walk": lambda: sample_contents(scope={"kind": "walk", "walk": "walk"}, language="es"),
    "survey": lambda: survey(site()),
}


@pytest.fixture(scope="module", params=MADE)
def report(request, tmp_path_factory):
    """One report of each kind that has pages of its own."""
    folder = tmp_path_factory.mktemp("tags")
    file = folder / "report.pdf"
    file.write_bytes(lay_out(MADE[request.param](), write_pictures(folder).get)[0])
    return file


def loose(reader: pypdf.PdfReader) -> list[tuple[int, str]]:
    """Page and operator of whatever is shown outside any marked content."""
    found = []
    for at, page in enumerate(reader.pages, 1):
        depth = 0
        for _, operator in ContentStream(page["/Contents"], reader).operations:
            depth += {b"BDC": 1, b"BMC": 1, b"EMC": -1}.get(operator, 0)
            if depth == 0 and operator in (b"Tj", b"TJ", b"Do", b"S", b"f", b"B", b"f*", b"B*", b"b"):
                found.append((at, operator.decode()))
        assert depth == 0
    return found


def elements(reader: pypdf.PdfReader):
    """Every structure element, in reading order."""
    waiting = [reader.trailer["/Root"]["/StructTreeRoot"]["/K"].get_object()]
    while waiting:
        one = waiting.pop(0)
        yield one
        kids = one.get("/K", [])
        kids = kids if isinstance(kids, list) else [kids]
        objects = [kid.get_object() for kid in kids]
        waiting = [kid for kid in objects if isinstance(kid, dict) and "/S" in kid] + waiting


def test_nothing_on_a_page_is_neither_said_nor_ornament(report):
    assert loose(pypdf.PdfReader(report)) == []


def test_the_search_sees_what_nobody_marked():
    load_fonts(FONTS)
    out = io.BytesIO()
    canvas = FlatCanvas(out, initialFontName=PLAIN)
    with canvas.marked("P"):
        canvas.drawString(9, 9, "said")
    canvas.drawString(9, 9, "loose")
    canvas.save()
    assert loose(pypdf.PdfReader(out)) == [(1, "Tj")]


def test_an_outside_checker_finds_only_that_no_conformance_is_claimed(report):
    told = pdfua.validate(str(report))
    assert {one.rule_id for one in told.findings} == {"UA-28-004"}, told.findings  # claimed: what nobody here can judge
    assert [one.rule_id for one in told.outcomes if one.skipped_reason] == []


def test_headings_figures_tables_and_links_are_what_they_are(report):
    reader = pypdf.PdfReader(report)
    root = reader.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"] and root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert root["/Lang"] in ("en", "es")
    every = list(elements(reader))
    roles = [one["/S"] for one in every]
    levels = [int(role[2]) for role in roles if re.fullmatch("/H[1-6]", role)]
    assert levels[0] == 1 and all(low <= high + 1 for high, low in itertools.pairwise(levels))
    figures = [one for one in every if one["/S"] == "/Figure"]
    assert len(figures) >= 2 and all(len(one["/Alt"]) > 8 for one in figures)
    for table in (one for one in every if one["/S"] == "/Table"):
        rows = [row.get_object() for row in (table["/K"] if isinstance(table["/K"], list) else [table["/K"]])]
        assert len({len(row["/K"]) for row in rows}) == 1
        assert all(row["/K"][0].get_object()["/S"] == "/TH" for row in rows)
    links = [note.get_object() for page in reader.pages for note in page.get("/Annots", [])]
    assert len(links) > 10 and all(note["/Contents"] and "/StructParent" in note for note in links)


def test_every_mark_of_a_page_leads_to_its_element_and_back(report):
    reader = pypdf.PdfReader(report)
    numbers = reader.trailer["/Root"]["/StructTreeRoot"]["/ParentTree"]["/Nums"]
    keys = [int(key) for key in numbers[::2]]
    assert keys == sorted(keys)
    tree = dict(zip(keys, numbers[1::2], strict=True))
    for page in reader.pages:
        parents = tree[page["/StructParents"]]
        marks = [operands[1]["/MCID"] for operands, operator in ContentStream(page["/Contents"], reader).operations
                 if operator == b"BDC" and "/MCID" in operands[1]]  # fmt: skip
        assert marks == list(range(len(parents)))


def test_every_link_leads_to_the_place_it_names(report):
    reader = pypdf.PdfReader(report)
    links = [note.get_object() for page in reader.pages for note in page.get("/Annots", [])]
    assert all("/A" not in note and note["/Dest"][1] != "/Fit" for note in links)  # /Fit: a target nobody drew


@pytest.mark.parametrize("report", ["closeout"], indirect=True)
def test_poppler_reads_the_report_from_its_first_heading_to_its_seal(report):
    ran = subprocess.run(["pdfinfo", "-struct-text", str(report)], capture_output=True, text=True, check=True)
    heads = re.findall(r"H[12] \(block\)\n\s+\"(.+?)\"", ran.stdout)
    assert len(heads) > 8 and heads[-1] in ("Seals", "Sellos")
    assert "Figure" in ran.stdout and "Table" in ran.stdout
