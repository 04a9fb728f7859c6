"""A table over the whole width of the page: a head that is said again on the next page, and rows that do not split."""

from typing import Any

from reportlab.platypus import Flowable

from inspect_app.report.pages.look import CELL, CELL_HEAD, HAIR
from inspect_app.report.pages.paragraph import Paragraph

GUTTER = 8.0
MOST_OF_A_PAGE = 500.0  # points: where rows are so tall, fewer must do


class Cells(Flowable):  # type: ignore[misc]
    """Rows of short texts (markup), each column with its share of the width. ``marks``: of each row the names that
    links lead to."""

    def __init__(self, head: list[str], rows: list[list[str]], shares: tuple[float, ...],
                 marks: list[list[str]] | None = None, style: Any = CELL) -> None:  # fmt: skip
        super().__init__()
        self.head = [Paragraph(text, CELL_HEAD) for text in head]
        self.rows = [[Paragraph(text, style) for text in row] for row in rows]
        self.marks, self.shares, self.spaceAfter = marks or [[] for _ in rows], shares, 6.0
        self.width, self.talls = 0.0, [0.0]

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        if self.width != width:  # once: what a page leaves over would be measured again on each page that follows
            self.width = width
            widths = [width * share - GUTTER for share in self.shares]
            self.talls = [_tall(row, widths) for row in [self.head, *self.rows]]
        return width, sum(self.talls)

    def split(self, width: float, height: float) -> list[Any]:
        self.wrap(width, height)
        used, fit = self.talls[0], 0
        while fit < len(self.rows) and used + self.talls[fit + 1] <= height:
            used += self.talls[fit + 1]
            fit += 1
        least = min(3, len(self.rows)) if height < MOST_OF_A_PAGE else 1  # a head over two rows is hardly a table
        if fit < least or fit == len(self.rows):
            return []
        return [self._part(0, fit), self._part(fit, len(self.rows))]

    def _part(self, begin: int, end: int) -> "Cells":
        part = Cells([], [], self.shares, self.marks[begin:end])
        part.head, part.rows, part.spaceAfter = self.head, self.rows[begin:end], self.spaceAfter
        part.width, part.talls = self.width, [self.talls[0], *self.talls[begin + 1 : end + 1]]
        return part

    def draw(self) -> None:
        if self.canv.counting:
            return
        y = sum(self.talls)
        for at, (row, tall) in enumerate(zip([self.head, *self.rows], self.talls, strict=True)):
            for mark in self.marks[at - 1] if at else []:
                self.canv.bookmarkHorizontal(mark, 0, y + 4)
            self._row(row, y, at == 0)
            y -= tall
            with self.canv.artifact():
                self.canv.setStrokeColor(HAIR)
                self.canv.setLineWidth(0.6 if at == 0 else 0.25)
                self.canv.line(0, y + 0.4, self.width, y + 0.4)

    def _row(self, row: list[Any], top: float, head: bool) -> None:
        with self.canv.table_row(len(row)):
            x = 0.0
            for at, (part, share) in enumerate(zip(row, self.shares, strict=True)):
                scope = "Column" if head else "Row" if at == 0 else ""
                with self.canv.group("TH" if scope else "TD", scope):
                    part.drawOn(self.canv, x, top - part.height - 1.1)
                x += self.width * share


def _tall(row: list[Any], widths: list[float]) -> float:
    return float(max(part.wrap(wide, 10**6)[1] for part, wide in zip(row, widths, strict=True)) + 2.2)
