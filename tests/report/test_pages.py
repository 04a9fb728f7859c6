"""The laid-out report: always a PDF, always the same bytes, nothing in it that nobody decided."""

import subprocess
import tracemalloc

import pypdf
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from inspect_app.report.contents import contents_digest
from inspect_app.report.pages import write_pages
from inspect_app.report.pages.photos_section import sorted_out
from inspect_app.report.pages.place_row import is_short
from tests.report.laid_out import FONTS, WORDS, lay_out, sample_contents, texts_of
from tests.report.sample import PICTURES, photos, record, write_pictures
from tests.report.sample_pictures import LOST, WHAT


def test_the_same_contents_give_the_same_bytes(tmp_path):
    paths = write_pictures(tmp_path)
    moved = tmp_path / "elsewhere"
    moved.mkdir()
    assert lay_out(sample_contents(), paths.get)[0] == lay_out(sample_contents(), write_pictures(moved).get)[0]


def test_the_environment_s_idea_of_a_date_does_not_enter_the_bytes(monkeypatch):
    first = lay_out(sample_contents())[0]
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1")
    assert lay_out(sample_contents())[0] == first


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize(("paper", "size"), [("letter", (612, 792)), ("a4", (595, 842))])
@pytest.mark.parametrize("units", ["US", "SI"])
def test_it_comes_in_every_paper_language_and_unit(tmp_path, language, paper, size, units):
    contents = sample_contents(language=language, paper=paper, units=units)
    pdf, laid = lay_out(contents, write_pictures(tmp_path).get)
    pages = texts_of(pdf, tmp_path)
    text = "\n".join(pages)
    box = pypdf.PdfReader(tmp_path / "read.pdf").pages[0].mediabox
    assert (round(box.width), round(box.height)) == size
    assert laid["pages"] == len(pages)
    assert "{" not in text and "report." not in text
    for at, page in enumerate(pages):
        assert {"en": "Invented data", "es": "Datos inventados"}[language] in page
        assert {"en": "Draft", "es": "Borrador"}[language] in page
        assert {"en": f"page {at + 1} of {len(pages)}", "es": f"página {at + 1} de {len(pages)}"}[language] in page
        assert contents_digest(contents) in page
    assert ("12 in" in text) == (units == "US") or "(12 in)" in text


def test_a_final_report_of_a_real_job_carries_neither_mark(tmp_path):
    rec = record()
    rec["job"]["invented"] = False
    del rec["photos"][LOST]
    for answer in rec["answers"].values():
        answer["photos"] = [name for name in answer["photos"] if name != LOST]
    text = "".join(texts_of(lay_out(sample_contents(rec, final=True))[0], tmp_path))
    assert "DRAFT" not in text and "Draft" not in text and "Invented data" not in text


def test_a_free_text_is_text_whatever_it_looks_like(tmp_path):
    rec = record()
    hostile = '<b>bold</b> <img src="file:///etc/passwd"/> </para> &amp; <a href="x">{count}</a> \x00\x1b[31m'
    rec["answers"]["s4/clip/tab"]["note"] = hostile
    rec["job"]["name"] = "<font size=99>Tower</font> %s {name}"
    text = "".join(texts_of(lay_out(sample_contents(rec))[0], tmp_path))
    assert '<img src="file:///etc/passwd"/>' in text
    assert "<b>bold</b>" in text and "□" in text
    assert "<font size=99>Tower</font>" in text


def test_a_text_of_a_hundred_thousand_characters_is_cut_and_says_so(tmp_path):
    rec = record()
    rec["answers"]["s4/clip/tab"]["note"] = "word " * 20_000
    rec["answers"]["s1/nail-flange/flat"]["note"] = "x" * 100_000
    rec["areas"]["quay"]["name"] = "Q" * 5_000
    text = " ".join(" ".join(texts_of(lay_out(sample_contents(rec))[0], tmp_path)).split())
    assert text.count("97000 more characters") == 2


def test_signs_the_font_lacks_and_marks_that_turn_writing_are_seen_not_swallowed(tmp_path):
    rec = record()
    rec["answers"]["s4/clip/tab"]["note"] = "a\U0001faa8b \u202egnp.exe שלום"
    contents = sample_contents(rec)
    text = "".join(texts_of(lay_out(contents)[0], tmp_path))
    assert "a□b □gnp.exe" in text
    assert "right_to_left" in [one["code"] for one in contents["cautions"]]


TEXT = st.text(st.characters(codec="utf-8"), max_size=400)


@settings(max_examples=12, deadline=None, suppress_health_check=list(HealthCheck))
@given(TEXT, TEXT, TEXT)
def test_whatever_people_write_a_report_comes_out(note, name, statement):
    rec = record()
    rec["answers"]["s3/nail-flange/slot"]["note"] = note
    rec["job"]["name"] = rec["areas"]["yard"]["name"] = rec["walks"]["walk"]["crew"] = name
    rec["walks"]["walk"]["signoff"]["statement"] = statement
    rec["assemblies"]["a-clip"]["fastener"] = name
    assert lay_out(sample_contents(rec))[0].startswith(b"%PDF-")


@pytest.mark.parametrize(
    "data",
    [b"", b"\xff\xd8", b"not a picture", next(iter(PICTURES.values()))[:-200], b"\xff\xd8" + b"\0" * 99 + b"\xff\xd9"],
)
def test_a_damaged_copy_becomes_a_note_in_its_place(tmp_path, data):
    paths = write_pictures(tmp_path)
    paths[WHAT].write_bytes(data)
    text = " ".join("".join(texts_of(lay_out(sample_contents(), paths.get)[0], tmp_path)).split())
    assert "it cannot be drawn: the file is damaged" in text
    assert WHAT in text


def test_bodies_without_most_of_their_fields_still_make_a_report():
    rec = record()
    for name in ("assemblies", "areas", "stations", "photos"):
        for thing in rec[name].values():
            for field in list(thing):
                if field not in ("id", "digest", "by", "at", "heads", "walk", "area", "sha256"):
                    del thing[field]
    rec["walks"]["walk"] = {key: rec["walks"]["walk"][key] for key in ("id", "digest", "by", "at", "heads")}
    assert lay_out(sample_contents(rec))[0].startswith(b"%PDF-")
    assert lay_out(sample_contents({}))[0].startswith(b"%PDF-")


@pytest.mark.parametrize(
    "points",
    [[], [["0", "0"]], [["0", "0"], ["1", "0"], ["2", "0"]], [["a", "b"]] * 4, [["0", "0"], ["9e99", "0"], ["0", "1"]]],
)
def test_an_outline_that_cannot_be_drawn_is_said_to_be_so(tmp_path, points):
    rec = record()
    rec["areas"]["quay"]["outline"] = {"unit": "ft", "points": points}
    assert "cannot be drawn" in "".join(texts_of(lay_out(sample_contents(rec))[0], tmp_path))


def test_every_station_answer_and_photo_is_in_the_pages(tmp_path):
    """What passed and needs no word is a line: its entry stands in contents.json and is enclosed."""
    told, rec = sample_contents(), record()
    text = " ".join("".join(texts_of(lay_out(told, write_pictures(tmp_path).get)[0], tmp_path)).split())
    full = [one for one in told["answers"] if not is_short(one)]
    assert "fail" in {one["result"] for one in full} and len(full) < len(told["answers"])
    assert [one["id"] for one in full if one["digest"] not in text] == []
    assert [one["id"] for one in told["answers"] if one not in full and one["question"]["en"][:40] not in text] == []
    assert [name for name in rec["photos"] if name not in text] == []
    rows = [f"{one['n']} {one['panel']} " for one in told["stations"]]  # each begins a row of its area's table
    assert len(rows) == 5 and [row for row in rows if row not in text] == []


def test_outline_links_and_fonts_are_as_a_reader_needs_them(tmp_path):
    pdf, _ = lay_out(sample_contents(), write_pictures(tmp_path).get)
    (tmp_path / "r.pdf").write_bytes(pdf)
    reader = pypdf.PdfReader(tmp_path / "r.pdf")
    assert [one.title for one in reader.outline if not isinstance(one, list)][:3] == [
        "Cover", "What was looked at, and what was not", "Findings",
    ]  # fmt: skip
    fonts = subprocess.run(["pdffonts", str(tmp_path / "r.pdf")], capture_output=True, text=True, check=True).stdout
    rows = fonts.splitlines()[2:]
    assert rows and all("DejaVu" in row and " yes yes yes " in row for row in rows)
    assert (
        subprocess.run(["qpdf", "--check", str(tmp_path / "r.pdf")], capture_output=True, check=False).returncode == 0
    )


def test_a_hundred_photos_are_laid_out_without_holding_them(tmp_path):
    rec, held = record(), photos()
    big = b"\xff\xd8" + PICTURES[WHAT][2:-2] + b"\0" * 400_000 + b"\xff\xd9"
    (tmp_path / "big.jpg").write_bytes(big)
    for n in range(100):
        name = f"{n:064x}"
        rec["photos"][name] = rec["photos"][WHAT] | {"id": name, "sha256": name, "answer": None}
        held[name] = held[WHAT] | {"copy": name}
    contents = sample_contents(rec, held)
    tracemalloc.start()
    with open(tmp_path / "many.pdf", "wb") as out:
        write_pages(contents, WORDS, FONTS, lambda name: tmp_path / "big.jpg", out)
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    size = (tmp_path / "many.pdf").stat().st_size
    assert size > 100 * 400_000
    assert peak < 25_000_000


def test_every_photo_of_the_log_has_its_hash_on_a_page_whether_it_is_drawn_or_listed(tmp_path):
    contents = sample_contents()
    drawn, listed = sorted_out(contents)
    assert drawn and listed
    assert sorted(one["n"] for one in [*drawn, *listed]) == [one["n"] for one in contents["photos"]]
    pages = "".join("".join(texts_of(lay_out(contents, write_pictures(tmp_path).get)[0], tmp_path)).split())
    assert all(one["sha256"] in pages for one in contents["photos"])
