"""A page of the report beside a bare ReportLab page of the same picture."""

import io
import tempfile
from pathlib import Path

from reportlab.pdfgen.canvas import Canvas

from inspect_app.report.pages import write_pages
from tests.bench.measure import Row, best
from tests.report.laid_out import FONTS, WORDS, sample_contents
from tests.report.sample import photos, record
from tests.report.sample_pictures import PICTURES, WHAT

PHOTOS = 60


def rows() -> list[Row]:
    rec, held = record(), photos()
    for n in range(PHOTOS):
        name = f"{n:064x}"
        rec["photos"][name] = rec["photos"][WHAT] | {"id": name, "sha256": name, "answer": None}
        held[name] = held[WHAT] | {"copy": name}
    contents = sample_contents(rec, held)
    with tempfile.TemporaryDirectory() as folder:
        picture = Path(folder) / "picture.jpg"
        picture.write_bytes(PICTURES[WHAT])

        def report() -> int:
            return int(write_pages(contents, WORDS, FONTS, lambda _: picture, io.BytesIO())["pages"])

        pages = report()
        copies = [str(Path(folder) / f"{n}.jpg") for n in range(pages)]  # one name would be written into the PDF once
        for copy in copies:
            Path(copy).write_bytes(PICTURES[WHAT])

        def bare() -> None:
            canvas = Canvas(io.BytesIO())
            for copy in copies:
                canvas.drawString(72, 760, copy)
                canvas.drawImage(copy, 72, 300, 400, 300)
                canvas.showPage()
            canvas.save()

        taken, peer = best(report, bare, 1, 4)
        what = f"a page of a report of {pages}"
        return [
            Row(what, "a bare page of the same picture", taken / peer, 100,
                "laid out twice to count its pages; several photos, tables, words and drawings on each"),
            Row(what, "100 ms", taken / pages / 0.1, 1, "a job of 200 pages is ready in 20 s, in the background"),
        ]  # fmt: skip
