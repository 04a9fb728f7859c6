"""The words at a window's two ends stay within their figure and do not run into each other."""

import itertools

import pytest
from reportlab.pdfbase.pdfmetrics import stringWidth

from inspect_app.report.pages.look import PLAIN, load_fonts
from inspect_app.report.pages.window_words import SIZE, draw_window_words
from tests.report.laid_out import FONTS


class Sheet:
    """Takes down where each text came to lie: ``(left, right, y)``."""

    def __init__(self):
        self.drawn = []

    def stringWidth(self, text, font, size):
        return stringWidth(text, font, size)

    def setFont(self, font, size): ...
    def setFillColor(self, colour): ...

    def drawString(self, x, y, text):
        self.drawn.append((x, x + stringWidth(text, PLAIN, SIZE), y))

    def drawRightString(self, x, y, text):
        self.drawn.append((x - stringWidth(text, PLAIN, SIZE), x, y))


@pytest.mark.parametrize("width", [150, 246, 392])
@pytest.mark.parametrize("words", ["0.1 in toward the ridge", "12.48 mm hacia la cumbrera"])
def test_wherever_the_window_lies_both_texts_are_inside_and_apart(width, words):
    load_fonts(FONTS)
    for low, high in itertools.combinations_with_replacement(range(0, width + 1, 6), 2):
        sheet = Sheet()
        draw_window_words(sheet, width, [(high, words), (low, words)], 40)
        (left, right, y), (begin, end, line) = sheet.drawn
        assert left >= -0.01 and right <= width + 0.01 and begin >= -0.01 and end <= width + 0.01, (low, high)
        assert right < begin or y > line, (low, high)
