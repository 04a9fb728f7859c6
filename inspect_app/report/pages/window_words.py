"""The words at the two ends of a window in a figure: beside it where there is room, else beneath it."""

from typing import Any

from inspect_app.report.pages.look import INK, PLAIN

SIZE, APART = 6.4, 4.0


def draw_window_words(canvas: Any, width: float, ends: list[tuple[float, str]], y: float) -> None:
    """``ends``: ``(x, words)``; ``y``: the line beside the window, which is 10 points higher than the one beneath."""
    (left, first), (right, last) = sorted(ends)
    canvas.setFont(PLAIN, SIZE)
    canvas.setFillColor(INK)
    wide = [canvas.stringWidth(words, PLAIN, SIZE) for words in (first, last)]
    if wide[0] + APART <= left and right + APART + wide[1] <= width:
        canvas.drawRightString(left - APART, y, first)
        canvas.drawString(right + APART, y, last)
        return
    if wide[0] + wide[1] + 2 * APART > width:  # one beneath the other
        canvas.drawString(0, y - 10, first)
        canvas.drawRightString(width, y - 18, last)
        return
    begin, end = left - wide[0] / 2, right - wide[1] / 2
    over = max(begin + wide[0] + 2 * APART - end, 0.0) / 2
    begin = max(0.0, min(begin - over, width - wide[0] - wide[1] - 2 * APART))
    end = min(width - wide[1], max(end + over, begin + wide[0] + 2 * APART))
    canvas.drawString(begin, y - 10, first)
    canvas.drawString(end, y - 10, last)
