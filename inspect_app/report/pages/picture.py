"""Photos on the page: drawn from their small copies; what cannot be drawn is said in its place."""

import re
from collections.abc import Callable, Sequence
from html import unescape
from itertools import groupby
from pathlib import Path
from typing import Any

from reportlab.platypus import Flowable

from inspect_app.report.pages.cell import Cell, draw_lines
from inspect_app.report.pages.flat import JpegFile
from inspect_app.report.pages.look import CAPTION, GREY, HAIR, SMALL
from inspect_app.report.pages.paragraph import Paragraph

Find = Callable[[str], Path | None]  # sha256 -> the small upright JPEG, None where there is none
Words = str | tuple[str, Any]  # markup of a line under a photo, and the style of one that is not like the others
GUTTER, NOTE = 12.0, 54.0
BESIDE = 0.45  # of its room a photo takes, where its caption stands beside it


class Pictures(Flowable):  # type: ignore[misc]
    """Photos side by side, each over its caption (markup lines), or ``beside`` it. ``photos``: of the contents;
    ``columns``: how many there is room for in a row."""

    def __init__(
        self,
        photos: Sequence[tuple[dict[str, Any], Sequence[Words]]],
        find: Find,
        why: Callable[[dict[str, Any]], str],
        tallest: float,
        marks: bool = False,
        columns: int = 2,
        beside: bool = False,
    ) -> None:
        super().__init__()
        self.tallest, self.marks, self.spaceAfter, self.columns, self.beside = tallest, marks, 7.0, columns, beside
        self.cells = [(photo, *_source(photo, find, why), [_styled(one) for one in lines]) for photo, lines in photos]
        self.width = self.tall = 0.0

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        if self.width == width:
            return width, self.tall
        self.width, self.each = width, (width - GUTTER * (self.columns - 1)) / self.columns
        self.boxes, self.captions = [], []
        for _, picture, _, lines in self.cells:
            most = self.each * (BESIDE if self.beside else 1)
            box = (most, NOTE)
            if picture:
                scale = min(most / picture.width, self.tallest / picture.height)
                box = (picture.width * scale, picture.height * scale)
            self.boxes.append(box)
            room = self.each - most - 7 if self.beside else self.each
            self.captions.append([Cell(*one, room) for one in lines])
        tallest = max(box[1] for box in self.boxes)
        lowest = max(sum(cell.tall for cell in one) for one in self.captions)
        self.under = 0.0 if self.beside else tallest + 4
        self.tall = max(tallest, lowest) if self.beside else self.under + lowest
        return width, self.tall

    def draw(self) -> None:
        canvas = self.canv
        if canvas.counting:
            return
        for at, (photo, picture, reason, lines) in enumerate(self.cells):
            x, top, box = at * (self.each + GUTTER), self.tall, self.boxes[at]
            if self.marks:
                canvas.bookmarkHorizontal(f"photo-{photo['n']}", x, top + 4)
            with canvas.marked("Figure", _bare(" ".join(text for text, _ in lines[:2]))):
                canvas.setStrokeColor(HAIR)
                canvas.setLineWidth(0.5)
                if picture:
                    canvas.photo(photo["sha256"], picture, x, top - box[1], *box)
                    canvas.rect(x, top - box[1], *box, stroke=1, fill=0)
                else:
                    self._note(x, top, box[0], reason)
            left = x + self.each * BESIDE + 7 if self.beside else x
            _draw_caption(canvas, left, top - self.under, self.captions[at])
        self.captions, self.width = [], 0.0  # kept, they would fill the memory; another pass measures them anew

    def _note(self, x: float, top: float, wide: float, reason: str) -> None:
        canvas = self.canv
        canvas.setDash((3, 2), 0)
        canvas.setStrokeColor(GREY)
        canvas.rect(x, top - NOTE, wide, NOTE, stroke=1, fill=0)
        canvas.setDash((), 0)
        note = Paragraph(reason, SMALL)
        _, tall = note.wrap(wide - 12, NOTE)
        note.drawOn(canvas, x + 6, top - NOTE / 2 - tall / 2)


def _draw_caption(canvas: Any, x: float, top: float, cells: list[Cell]) -> None:
    """As one paragraph, in lines."""
    with canvas.marked("P"):
        for plain, some in groupby(cells, lambda cell: cell.paragraph is None):
            beneath = list(some)
            if plain:
                draw_lines(canvas, x, top, beneath)
            else:
                for at, cell in enumerate(beneath):
                    cell.draw(canvas, x, top - sum(one.tall for one in beneath[:at]))
            top -= sum(one.tall for one in beneath)


def _styled(words: Words) -> tuple[str, Any]:
    return words if isinstance(words, tuple) else (words, CAPTION)


def _bare(markup: str) -> str:
    """What a line says, for whom a voice reads it. Whatever a person typed stands in it escaped."""
    return unescape(re.sub("<[^>]*>", "", markup))


def _source(photo: dict[str, Any], find: Find, why: Callable[[dict[str, Any]], str]) -> tuple[JpegFile | None, str]:
    path = find(photo["sha256"]) if photo["held"] and not photo["undecodable"] else None
    if path is not None:
        try:
            return JpegFile(path), ""
        except (OSError, ValueError):
            return None, why(photo | {"undecodable": photo["undecodable"] or "damaged"})
    return None, why(photo)
