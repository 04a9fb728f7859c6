"""A table over the whole width of the page: a head that is said again on the next page, and rows that do not split."""

from typing import Any

from reportlab.platypus import Flowable

from inspect_app.report.pages.cell import Cell
from inspect_app.report.pages.look import CELL, CELL_HEAD, HAIR

GUTTER = 8.0
MOST_OF_A_PAGE = 500.0  # points: where rows are so tall, fewer must do


class Cells(Flowable):  # type: ignore[misc]
    """Rows of short texts (markup), each column with its share of the width. ``marks``: of each row the names that
    links lead to. What is kept of a row is its texts and how tall they are: of a log of a thousand photos no more."""

    def __init__(self, head: list[str], rows: list[list[str]], shares: tuple[float, ...],
                 marks: list[list[str]] | None = None, styles: tuple[Any, ...] | None = None) -> None:  # fmt: skip
        super().__init__()
        self.head, self.rows, self.shares, self.styles = head, rows, shares, styles or (CELL,) * len(shares)
        self.marks, self.spaceAfter = marks or [[] for _ in rows], 6.0
        self.width, self.talls = 0.0, [0.0]

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        if self.width != width:  # once: what a page leaves over would be measured again on each page that follows
            self.width = width
            self.talls = [max(cell.tall for cell in self._cells(row, at == 0)) + 2.2
                          for at, row in enumerate([self.head, *self.rows])]  # fmt: skip
        return width, sum(self.talls)

    def _cells(self, row: list[str], head: bool) -> list[Cell]:
        styles = (CELL_HEAD,) * len(row) if head else self.styles
        return [Cell(text, style, self.width * share - GUTTER)
                for text, style, share in zip(row, styles, self.shares, strict=True)]  # fmt: skip

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
        part = Cells(self.head, self.rows[begin:end], self.shares, self.marks[begin:end], self.styles)
        part.spaceAfter = self.spaceAfter
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

    def _row(self, row: list[str], top: float, head: bool) -> None:
        with self.canv.table_row(len(row)):
            x = 0.0
            for at, (cell, share) in enumerate(zip(self._cells(row, head), self.shares, strict=True)):
                scope = "Column" if head else "Row" if at == 0 else ""
                with self.canv.group("TH" if scope else "TD", scope):
                    cell.draw(self.canv, x, top - 1.1)
                x += self.width * share
