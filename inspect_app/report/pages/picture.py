"""Photos on the page: drawn from their small copies; what cannot be drawn is said in its place."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from reportlab.platypus import Flowable

from inspect_app.report.pages.flat import JpegFile
from inspect_app.report.pages.look import CAPTION, GREY, HAIR, SMALL
from inspect_app.report.pages.paragraph import Paragraph

Find = Callable[[str], Path | None]  # sha256 -> the small upright JPEG, None where there is none
GUTTER = 12.0


class Pictures(Flowable):  # type: ignore[misc]
    """Photos side by side, each over its caption (markup lines). ``photos``: of the contents; ``columns``: how many
    there is room for in a row."""

    def __init__(
        self,
        photos: list[tuple[dict[str, Any], list[str]]],
        find: Find,
        why: Callable[[dict[str, Any]], str],
        tallest: float,
        marks: bool = False,
        columns: int = 2,
    ) -> None:
        super().__init__()
        self.tallest, self.marks, self.spaceAfter, self.columns = tallest, marks, 7.0, columns
        self.cells = [(photo, *_source(photo, find, why), [Paragraph(line, CAPTION) for line in lines])
                      for photo, lines in photos]  # fmt: skip

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        self.width, self.each = width, (width - GUTTER * (self.columns - 1)) / self.columns
        self.sizes = []
        for _, source, _, size, lines in self.cells:
            caption = sum(line.wrap(self.each, 10**6)[1] for line in lines)
            box = (self.each, 54.0)
            if source:
                scale = min(self.each / size[0], self.tallest / size[1])
                box = (size[0] * scale, size[1] * scale)
            self.sizes.append((box, caption))
        self.image_tall = max(box[1] for box, _ in self.sizes)
        self.tall = self.image_tall + 4 + max(caption for _, caption in self.sizes)
        return width, self.tall

    def draw(self) -> None:
        canvas = self.canv
        for at, ((photo, source, reason, _, lines), (box, _)) in enumerate(zip(self.cells, self.sizes, strict=True)):
            x, top = at * (self.each + GUTTER), self.tall
            if self.marks:
                canvas.bookmarkHorizontal(f"photo-{photo['n']}", x, top + 4)
            with canvas.marked("Figure", " ".join(line.getPlainText() for line in lines[:2])):
                canvas.setStrokeColor(HAIR)
                canvas.setLineWidth(0.5)
                if source:
                    canvas.photo(photo["sha256"], source, x, top - box[1], *box)
                    canvas.rect(x, top - box[1], *box, stroke=1, fill=0)
                else:
                    self._note(x, top, reason)
            y = top - self.image_tall - 4
            for line in lines:
                y -= line.height
                line.drawOn(canvas, x, y)

    def _note(self, x: float, top: float, reason: str) -> None:
        canvas = self.canv
        canvas.setDash((3, 2), 0)
        canvas.setStrokeColor(GREY)
        canvas.rect(x, top - 54, self.each, 54, stroke=1, fill=0)
        canvas.setDash((), 0)
        note = Paragraph(reason, SMALL)
        _, tall = note.wrap(self.each - 16, 54)
        note.drawOn(canvas, x + 8, top - 27 - tall / 2)


def _source(photo: dict[str, Any], find: Find, why: Callable[[dict[str, Any]], str]) -> tuple[Any, str, Any]:
    path = find(photo["sha256"]) if photo["held"] and not photo["undecodable"] else None
    if path is not None:
        try:
            picture = JpegFile("probe", path)
            return path, "", (picture.width, picture.height)
        except (OSError, ValueError):
            return None, why(photo | {"undecodable": photo["undecodable"] or "damaged"}), None
    return None, why(photo), None
