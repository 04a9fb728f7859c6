"""What is seen in the box of a seal or a countersignature: a sober note of who, when, and the fingerprint."""

import io
import tempfile
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple

from pyhanko.pdf_utils import layout
from pyhanko.pdf_utils.content import ImportedPdfPage
from pyhanko.stamp.base import BaseStampStyle
from pyhanko.stamp.static import StaticStampStyle
from reportlab.pdfgen.canvas import Canvas

from inspect_app.report.pages.look import BOLD, CODE, GREY, INK, PLAIN, load_fonts
from inspect_app.report.pages.text import plain
from inspect_app.report.pages.voice import Voice
from inspect_app.report.seal_key import SealKey

WHOLE_BOX = layout.SimpleBoxLayoutRule(
    layout.AxisAlignment.ALIGN_MIN, layout.AxisAlignment.ALIGN_MIN, layout.Margins.uniform(0)
)


class Stamping(NamedTuple):
    """``state``: ``stamped`` (by the authority of this ``name``), ``silent`` (one was asked and gave no stamp) or
    ``none`` (there is none to ask)."""

    state: str
    name: str = ""


Paint = Callable[[Canvas, float, float, Stamping], None]


def box_of(fonts: Path, voice: Voice, key: SealKey, when: str, headline: str | None = None) -> Paint:
    """The box of ``key`` in the report's language. ``when``: ISO 8601; ``headline``: the small line over the name,
    "sealed by" unless told."""
    load_fonts(fonts)
    stampings = {state: voice.say(f"seal_stamping.{state}", name="{name}") for state in ("stamped", "silent", "none")}
    return paint_seal(fonts, plain(key.name), headline or voice.say("seal_says_by"), voice.moment(when),
                      voice.say("seal_print"), key.fingerprint, stampings)  # fmt: skip


def paint_seal(
    fonts: Path, signer: str, headline: str, when: str, label: str, fingerprint: str, stampings: Mapping[str, str] = {}
) -> Paint:
    """``stampings``: what is said of the time stamp, by state; ``{name}`` stands for the authority's."""
    load_fonts(fonts)

    def paint(canvas: Canvas, width: float, height: float, stamping: Stamping) -> None:
        def write(text: str, y: float, font: str, size: float, colour: object) -> None:
            while text and canvas.stringWidth(text, font, size) > width - 18:
                text = text[:-2] + "…"
            canvas.setFillColor(colour)
            canvas.setFont(font, size)
            canvas.drawString(9, y, text)

        write(headline, height - 15, PLAIN, 6.8, GREY)
        write(signer, height - 29, BOLD, 9.5, INK)
        write(when, height - 41, PLAIN, 7.6, INK)
        write(stampings.get(stamping.state, "").replace("{name}", plain(stamping.name)), height - 51, PLAIN, 6.8, INK)
        write(label, 17, PLAIN, 5.8, GREY)
        write(fingerprint, 8, CODE.fontName, 5.6, GREY)

    return paint


@contextmanager
def styled(corners: Sequence[float], paint: Paint, stamping: Stamping) -> Iterator[BaseStampStyle]:
    """The style for a box with these ``corners`` [x0, y0, x1, y1], for as long as it is needed."""
    x0, y0, x1, y1 = corners
    with tempfile.TemporaryDirectory() as folder:
        stamp = Path(folder) / "stamp.pdf"
        stamp.write_bytes(_drawn(x1 - x0, y1 - y0, paint, stamping))
        page = ImportedPdfPage(str(stamp))  # type: ignore[no-untyped-call]
        yield StaticStampStyle(border_width=0, background=page, background_layout=WHOLE_BOX)


def _drawn(width: float, height: float, paint: Paint, stamping: Stamping) -> bytes:
    out = io.BytesIO()
    canvas = Canvas(out, pagesize=(width, height), initialFontName=PLAIN, invariant=1)
    paint(canvas, width, height, stamping)
    canvas.showPage()
    canvas.save()
    return out.getvalue()
