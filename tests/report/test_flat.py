"""The streaming writer gives the bytes that ReportLab's own would give."""

import io

import pytest
from reportlab.pdfbase import pdfdoc
from reportlab.pdfgen.canvas import Canvas

from inspect_app.report.pages.flat import FlatCanvas, FlatDocument, JpegFile
from inspect_app.report.pages.look import PLAIN, load_fonts
from inspect_app.report.pages.picture import Pictures
from tests.report.laid_out import FONTS
from tests.report.sample_pictures import WHAT, WHERE, write_pictures


def drawn(canvas: Canvas, paths) -> None:
    for page in range(3):
        canvas.setFont(PLAIN, 12)
        canvas.drawString(72, 700, f"page {page} ⅜ ñ")
        canvas.bookmarkPage(f"p{page}")
        canvas.addOutlineEntry(f"Page {page}", f"p{page}")
        canvas.photo("what", JpegFile(paths[WHAT]), 72, 300, 200, 150)
        canvas.photo("where", JpegFile(paths[WHERE]), 300, 300, 200, 150)
        canvas.showPage()
    canvas.save()


class Stock(FlatCanvas):
    """The same drawing, written by the stock document."""

    def __init__(self, filename, **more):
        super().__init__(filename, **more)
        self._doc.__class__ = pdfdoc.PDFDocument


def test_streamed_bytes_equal_the_stock_writer_s(tmp_path):
    load_fonts(FONTS)
    paths = write_pictures(tmp_path)
    streamed, stock = io.BytesIO(), io.BytesIO()
    drawn(FlatCanvas(streamed, initialFontName=PLAIN), paths)
    drawn(Stock(stock, initialFontName=PLAIN), paths)
    assert isinstance(FlatCanvas(io.BytesIO(), initialFontName=PLAIN)._doc, FlatDocument)
    assert streamed.getvalue() == stock.getvalue()
    assert streamed.getvalue().count(b"/DCTDecode") == 2


@pytest.mark.parametrize("data", [b"", b"GIF89a", b"\xff\xd8\xff\xd9", b"\xff\xd8\xff\xe0\x00"])
def test_what_is_no_jpeg_is_a_value_error(tmp_path, data):
    (tmp_path / "x").write_bytes(data)
    with pytest.raises(ValueError):
        JpegFile(tmp_path / "x")


@pytest.mark.parametrize("after", [lambda data: data[:-500], lambda data: data + b"x", lambda data: b""])
def test_a_picture_that_changes_while_it_is_printed_ends_the_printing_and_makes_no_broken_page(tmp_path, after):
    load_fonts(FONTS)
    paths = write_pictures(tmp_path)
    canvas = FlatCanvas(io.BytesIO(), initialFontName=PLAIN)
    canvas.photo("what", JpegFile(paths[WHAT]), 72, 300, 200, 150)
    paths[WHAT].write_bytes(after(paths[WHAT].read_bytes()))
    with pytest.raises(OSError, match="changes while it is printed"):
        canvas.save()


def test_photos_are_drawn_anew_where_a_pass_has_to_be_made_again(tmp_path):
    """The number of a page may take a line more in the table of contents than was thought."""
    load_fonts(FONTS)
    photo = {"sha256": WHAT, "held": True, "undecodable": None, "n": 1}
    words = ["Photo 1", "on the quay slope"]
    row = Pictures([(photo, words)], write_pictures(tmp_path).get, lambda _: "", 80, marks=True)
    written = []
    for _ in range(2):
        canvas = FlatCanvas(out := io.BytesIO(), initialFontName=PLAIN)
        row.wrap(400, 700)
        row.drawOn(canvas, 72, 300)
        canvas.save()
        written.append(out.getvalue())
    assert written[0] == written[1] and b"/DCTDecode" in written[1]
