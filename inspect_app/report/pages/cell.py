"""A short text in a column: of a table, or under a photo."""

import codecs
from bisect import bisect_right
from html import unescape
from typing import Any

from reportlab.pdfbase.pdfmetrics import stringWidth

from inspect_app.report.pages.paragraph import Paragraph


class Cell:
    """A text in its column. Plain words are broken and drawn as they are, since a log of photos has thousands of them.
    Whatever has markup is set as a paragraph."""

    __slots__ = ("cut", "lines", "paragraph", "style", "tall")

    def __init__(self, text: str, style: Any, width: float) -> None:
        self.style = style
        self.paragraph = Paragraph(text, style) if "<" in text else None
        self.lines = [] if self.paragraph else broken(unescape(text), style.fontName, style.fontSize, width)
        # A hash is one word in two lines: whoever searches for it, or has it read out, finds it whole.
        self.cut = len(self.lines) > 1 and " " not in text.strip(" ")
        self.tall = float(self.paragraph.wrap(width, 10**6)[1] if self.paragraph else style.leading * len(self.lines))

    def draw(self, canvas: Any, x: float, top: float) -> None:
        if self.paragraph:
            self.paragraph.drawOn(canvas, x, top - self.tall)
            return
        with canvas.marked("P"):
            draw_lines(canvas, x, top, [self])


def broken(text: str, font: str, size: float, width: float) -> list[str]:
    """The text in lines of at most ``width``, as many words to each as have room; a word that has none is cut."""
    if stringWidth(text, font, size) <= width:
        return [text]
    lines: list[str] = []
    line = ""
    for word in filter(None, text.split(" ")):  # a blank that does not break, as before a unit, holds
        longer = f"{line} {word}" if line else word
        if stringWidth(longer, font, size) <= width:
            line = longer
            continue
        lines += [line] if line else []
        line = word
        while stringWidth(line, font, size) > width:
            fits = max(bisect_right(range(len(line)), width, key=lambda n: stringWidth(line[:n], font, size)) - 1, 1)
            lines.append(line[:fits])
            line = line[fits:]
    return [*lines, line]


def draw_lines(canvas: Any, x: float, top: float, cells: list[Cell]) -> None:
    """Plain cells below each other, as one piece of text."""
    text = canvas.beginText(x, top - cells[0].style.fontSize)
    style = colour = None
    for cell in cells:
        if cell.style is not style:
            style = cell.style
            text.setFont(style.fontName, style.fontSize, style.leading)
            if style.textColor is not colour:
                colour = style.textColor
                text.setFillColor(colour)
        if cell.cut:
            text._code.append(f"/Span <</ActualText <{_utf16(cell.lines)}>>> BDC")
        for line in cell.lines:
            text.textLine(line)
        if cell.cut:
            text._code.append("EMC")
    canvas.drawText(text)


def _utf16(parts: list[str]) -> str:
    """The parts as one text string in hexadecimal (ISO 32000-1, 7.9.2.2)."""
    return (codecs.BOM_UTF16_BE + "".join(parts).encode("utf-16-be", "replace")).hex()
