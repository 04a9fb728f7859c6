"""The blocks a page is set from: label in the side column, matter beside it; headings; thin rules."""

from collections.abc import Callable
from typing import Any

from reportlab.platypus import CondPageBreak, Flowable, KeepTogether, Spacer

from inspect_app.report.pages.look import (
    ACCENT,
    BODY,
    CHAPTER,
    GAP,
    GREY,
    HAIR,
    HEAD,
    INK,
    PLAIN,
    SIDE,
    SIDE_LABEL,
)
from inspect_app.report.pages.paragraph import Paragraph, heading


class Row(Flowable):  # type: ignore[misc]
    """One flowable beside a short label; it splits across pages as its matter does. ``label`` is markup."""

    def __init__(self, label: Any, matter: Any, after: float = 2.0) -> None:
        super().__init__()
        self.label = Paragraph(label, SIDE_LABEL) if isinstance(label, str) and label else label or None
        self.matter, self.spaceAfter, self.spaceBefore = matter, after, 0.0
        self.tall = 0.0

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        _, tall = self.matter.wrap(width - SIDE, height)
        self.matter_tall = tall
        self.label_tall = self.label.wrap(SIDE - GAP, height)[1] if self.label else 0.0
        self.width, self.tall = width, max(tall, self.label_tall)
        return width, self.tall

    def split(self, width: float, height: float) -> list[Any]:
        if self.label and self.label.wrap(SIDE - GAP, height)[1] > height:
            return []
        parts = self.matter.split(width - SIDE, height)
        if len(parts) < 2:
            return []
        return [Row(self.label, parts[0], 0.0), *(Row(None, part, self.spaceAfter) for part in parts[1:])]

    def draw(self) -> None:
        if self.label:  # first, as it is read
            self.label.drawOn(self.canv, 0, self.tall - self.label_tall - _lower(self.matter))
        self.matter.drawOn(self.canv, SIDE, self.tall - self.matter_tall)


class Columns(Flowable):  # type: ignore[misc]
    """A row of a table: a label and short texts side by side, each with its share of the width beside it. It does not
    split. ``head``: its texts are what the columns are called."""

    def __init__(self, label: str, texts: list[str], shares: tuple[float, ...], style: Any = BODY, head: bool = False,
                 ) -> None:  # fmt: skip
        super().__init__()
        self.parts = [Paragraph(label, SIDE_LABEL), *(Paragraph(text, style) for text in texts)]
        self.shares, self.spaceAfter, self.head = shares, 1.5, head

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        room = width - SIDE
        self.at = [0.0, *(SIDE + room * sum(self.shares[:n]) for n in range(len(self.shares)))]
        widths = [SIDE - GAP, *(room * share - GAP for share in self.shares)]
        self.talls = [part.wrap(wide, height)[1] for part, wide in zip(self.parts, widths, strict=True)]
        self.width, self.tall = width, max(self.talls)
        return width, self.tall

    def draw(self) -> None:
        with self.canv.table_row(len(self.parts)):
            for at, (part, x, tall) in enumerate(zip(self.parts, self.at, self.talls, strict=True)):
                scope = "Row" if at == 0 else "Column" if self.head else ""
                with self.canv.group("TH" if scope else "TD", scope):
                    part.drawOn(self.canv, x, self.tall - tall - (_lower(self.parts[1]) if at == 0 else 0))


class Heading(Flowable):  # type: ignore[misc]
    """A heading that is also a bookmark: in the outline (level 0 or 1) when ``listed``."""

    def __init__(self, text: str, mark: str, level: int = 0, plain: str = "", number: str = "") -> None:
        super().__init__()
        self.text, self.mark, self.level, self.plain, self.number = text, mark, level, plain or text, number
        self.paragraph = heading(text, CHAPTER if level == 0 else HEAD, level + 1)
        self.spaceBefore, self.spaceAfter = (0.0, 9.0) if level == 0 else (11.0, 3.5)

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        inset = SIDE if self.level == 0 else 0.0
        self.inset, self.width = inset, width
        self.tall = self.paragraph.wrap(width - inset, height)[1] + (11.0 if self.level == 0 else 5.0)
        return width, self.tall

    def draw(self) -> None:
        canvas = self.canv
        canvas.bookmarkHorizontal(self.mark, 0, self.tall + 4)
        self._doctemplateAttr("marks")[self.mark] = canvas.getPageNumber()
        canvas.addOutlineEntry(self.plain, self.mark, self.level, closed=self.level == 0)
        chapter = self.level == 0
        with canvas.artifact():
            canvas.setStrokeColor(ACCENT if chapter else HAIR)
            canvas.setLineWidth(1.2 if chapter else 0.5)
            canvas.line(0, self.tall, self.width, self.tall)
        if chapter:
            with canvas.marked("P"):
                canvas.setFillColor(ACCENT)
                canvas.setFont(PLAIN, 17)
                canvas.drawString(0, self.tall - 11 - 14.5, self.number)
        self.paragraph.drawOn(canvas, self.inset, 0)


class Anchor(Flowable):  # type: ignore[misc]
    """A place that links can lead to; takes no room."""

    def __init__(self, mark: str) -> None:
        super().__init__()
        self.mark = mark

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        return 0.0, 0.0

    def draw(self) -> None:
        self.canv.bookmarkHorizontal(self.mark, 0, 14)


class Drawing(Flowable):  # type: ignore[misc]
    """A figure of fixed height drawn by ``paint(canvas, width, height)``. ``alt``: what it shows, for whom a voice
    reads the report; without it the drawing is ornament."""

    def __init__(self, height: float, paint: Callable[[Any, float, float], None], after: float = 4.0, alt: str = "",
                 ) -> None:  # fmt: skip
        super().__init__()
        self.tall, self.paint, self.spaceAfter, self.alt = height, paint, after, alt

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        self.width = width
        return width, self.tall

    def draw(self) -> None:
        with self.canv.marked("Figure", self.alt) if self.alt else self.canv.artifact():
            self.canv.setStrokeColor(INK)
            self.canv.setFillColor(GREY)
            self.paint(self.canv, self.width, self.tall)


def _lower(matter: Any) -> float:
    """How far a label goes down to stand on the same line as its larger matter."""
    size = matter.style.fontSize if isinstance(matter, Paragraph) else SIDE_LABEL.fontSize
    return float(max(size - SIDE_LABEL.fontSize, 0) * 0.93)


def paragraphs(label: str, texts: list[str], style: Any = BODY) -> list[Any]:
    """Several paragraphs of markup, the label beside the first."""
    return [Row(label if at == 0 else None, Paragraph(text, style)) for at, text in enumerate(texts)]


def together(parts: list[Any]) -> Any:
    """Keep parts on one page where they fit on one. Nested groups are opened: ReportLab gives up on those."""
    flat: list[Any] = []
    for part in parts:
        flat += part._content if isinstance(part, KeepTogether) else [part]
    return KeepTogether(flat)


def settle(story: list[Any]) -> list[Any]:
    """The story with each heading kept to what it heads, so that none stands alone at the foot of a page."""
    settled: list[Any] = []
    heads: list[Any] = []
    for part, after in zip(story, [*story[1:], None], strict=True):
        if isinstance(part, Heading):
            settled += [] if heads else [room(150 if part.level == 0 else 84)]
            heads.append(part)
        elif heads and isinstance(part, Row | Spacer) and _leads(heads[0], after):
            heads.append(part)  # what a chapter says first of itself goes with its first part
        elif isinstance(part, KeepTogether):
            settled.append(together([*heads, part]))
            heads = []
        else:
            settled += [*heads, part]
            heads = []
    return settled + heads


def _leads(head: Heading, after: Any) -> bool:
    """Whether what comes after still belongs to what this heading opened: the next chapter does not."""
    return after.level > head.level if isinstance(after, Heading) else isinstance(after, KeepTogether | Spacer)


def room(height: float) -> Any:
    """Go to the next page unless so much room is left."""
    return CondPageBreak(height)


def space(height: float) -> Any:
    """Nothing, so high."""
    return Spacer(1, height)
