"""A short text in a column: of a table, or under a photo."""

from typing import Any

from reportlab.pdfbase.pdfmetrics import stringWidth

from inspect_app.report.pages.paragraph import Paragraph


class Cell:
    """A text in its column: a line of plain words is drawn as it is, whatever else is set as a paragraph."""

    def __init__(self, text: str, style: Any, width: float) -> None:
        self.text, self.style = text, style
        plain = "<" not in text and "&" not in text and stringWidth(text, style.fontName, style.fontSize) <= width
        self.paragraph = None if plain else Paragraph(text, style)
        self.tall = float(self.paragraph.wrap(width, 10**6)[1] if self.paragraph else style.leading)

    def draw(self, canvas: Any, x: float, top: float) -> None:
        if self.paragraph:
            self.paragraph.drawOn(canvas, x, top - self.tall)
            return
        with canvas.marked("P"):
            canvas.setFont(self.style.fontName, self.style.fontSize)
            canvas.setFillColor(self.style.textColor)
            canvas.drawString(x, top - self.style.fontSize, self.text)
