"""Text that anybody may have written, made fit for a page: nothing in it is markup, nothing vanishes silently. What the
page cannot say right is a box: seen, and the entry has the text itself."""

import functools
import unicodedata
from xml.sax.saxutils import escape

from reportlab.pdfbase import pdfmetrics

from inspect_app.report.pages.look import PLAIN

MISSING = "□"  # where the font has no sign, and for control characters: seen, not swallowed
LONG, SHORT = 3000, 160  # characters shown of a free text, and of a name
BREAKS = "\n\r\t\u2028\u2029"
UNSEEN = ("Cc", "Cf", "Cs", "Co", "Cn")
LEFTWARD = ("R", "AL", "AN", "RLE", "RLO", "RLI")
JOINED = ("Mn", "Me", "Mc")  # what is to stand over or around another sign, and has no sign of its own with it


@functools.lru_cache(maxsize=8192)
def _sign(letter: str) -> str:
    glyphs = pdfmetrics.getFont(PLAIN).face.charToGlyph
    code = ord(letter)
    # Controls, and marks that turn the direction of writing or choose another shape: they can make a text read as
    # another. Scripts from right to left: drawn letter by letter from the left, they would say something else.
    if unicodedata.category(letter) in UNSEEN or unicodedata.bidirectional(letter) in LEFTWARD:
        return MISSING
    if code not in glyphs or 0xFE00 <= code <= 0xFE0F or code == 0x034F or unicodedata.category(letter) in JOINED:
        return MISSING
    return letter


def visible(value: object) -> str:
    """The text in signs that the font can draw; line ends and tabs become blanks."""
    text = "—" if value is None else str(value)
    if text.isascii() and text.isprintable():  # hashes, times, most names: the font has all of these
        return text
    text = unicodedata.normalize("NFC", text)
    return "".join(" " if letter in BREAKS else _sign(letter) for letter in text)


def line(value: object, limit: int = SHORT) -> str:
    """A short text for markup and for cells, cut with an ellipsis."""
    text = visible(value)
    return escape(text if len(text) <= limit else text[: limit - 1] + "…")


def plain(value: object, limit: int = SHORT) -> str:
    """As ``line``, for drawing directly (no markup)."""
    text = visible(value)
    return text if len(text) <= limit else text[: limit - 1] + "…"


def passage(value: object, cut_note: str, limit: int = LONG) -> list[str]:
    """A free text as paragraphs for markup; what is beyond ``limit`` is cut and ``cut_note`` (with
    ``{count}``)
    says how much."""
    text = "" if value is None else str(value).replace("\r\n", "\n").replace("\r", "\n")
    kept = text[:limit]
    paragraphs = [escape(visible(part)) for part in kept.split("\n") if part.strip()]
    if len(paragraphs) > 60:
        paragraphs = [*paragraphs[:60], "…"]
    if len(text) > limit:
        paragraphs.append(escape(cut_note.replace("{count}", str(len(text) - limit))))
    return paragraphs
