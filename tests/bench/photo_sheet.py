"""``python -m tests.bench.photo_sheet TOOL FOLDER OUT``: prepared pictures with their captions as a PDF, in a process
of its own, since the memory of one tool must not stand in another's peak. Prints ``{"seconds", "peak": bytes}``.
"""

import json
import sys
from collections.abc import Callable
from pathlib import Path
from time import perf_counter

STATIC = Path(__file__).parents[2] / "static"
Draw = Callable[[], None]
STYLE = """@page { size: letter; margin: 40pt } figure { display: inline-block; width: 240pt; margin: 0 8pt 8pt 0 }
figcaption { font: 7pt sans-serif }"""


def ours(pictures: list[Path], out: Path) -> Draw:
    """A whole report: these photos in it, beside the places, answers, tables and drawings of the sample."""
    from inspect_app.report.pages import write_pages
    from inspect_app.words import Words
    from tests.bench.told import TOLD

    contents, names = json.loads((pictures[0].parent / TOLD).read_bytes())
    files = {sha256: pictures[0].parent / name for sha256, name in names.items()}

    def draw() -> None:
        with open(out, "wb") as file:
            write_pages(contents, Words(STATIC / "words"), STATIC / "vendor", files.get, file)

    return draw


def img2pdf(pictures: list[Path], out: Path) -> Draw:
    """A picture on each page, without a word."""
    import img2pdf

    def draw() -> None:
        with open(out, "wb") as file:
            img2pdf.convert([str(one) for one in pictures], outputstream=file)

    return draw


def fpdf2(pictures: list[Path], out: Path) -> Draw:
    """Two to a row, three rows to a page, two lines under each."""
    from fpdf import FPDF

    def draw() -> None:
        pdf = FPDF(unit="pt", format="letter")
        pdf.add_font("text", fname=str(next((STATIC / "vendor").rglob("DejaVuSans.ttf"))))
        pdf.set_font("text", size=7)
        for n, picture in enumerate(pictures):
            if n % 6 == 0:
                pdf.add_page()
            x, y = 50 + 260 * (n % 2), 50 + 235 * (n // 2 % 3)
            pdf.image(str(picture), x, y, h=180)
            for at, line in enumerate(captions(n, picture)):
                pdf.set_xy(x, y + 184 + 10 * at)
                pdf.cell(240, 9, line)
        pdf.output(str(out))

    return draw


def weasyprint(pictures: list[Path], out: Path) -> Draw:
    """The same rows as a page of HTML."""
    from weasyprint import HTML

    def draw() -> None:
        cells = [
            f'<figure><img src="{one.as_uri()}" height="180pt"><figcaption>{"<br>".join(captions(n, one))}</figcaption>'
            for n, one in enumerate(pictures)
        ]
        HTML(string=f"<style>{STYLE}</style>{'</figure>'.join(cells)}").write_pdf(str(out))

    return draw


def captions(n: int, picture: Path) -> list[str]:
    return [f"{n + 1} · Quay slope, panel {n % 30 + 1}, field · 9 September 2026, 16:{n % 60:02d}", picture.name * 4]


TOOLS = {"ours": ours, "img2pdf": img2pdf, "fpdf2": fpdf2, "weasyprint": weasyprint}


def peak() -> int:
    """The most memory this process ever held, in bytes (Linux, proc(5), ``VmHWM``)."""
    status = Path("/proc/self/status").read_text("ascii")
    return next(int(line.split()[1]) * 1024 for line in status.splitlines() if line.startswith("VmHWM"))


def main(tool: str, folder: str, out: str) -> None:
    draw = TOOLS[tool](sorted(Path(folder).glob("*.jpg")), Path(out))
    start = perf_counter()
    draw()
    print(json.dumps({"seconds": perf_counter() - start, "peak": peak()}))


if __name__ == "__main__":
    main(*sys.argv[1:])
