"""Two things beside each other, each on half the width: a figure and its numbers, or one answer and the next."""

from typing import Any

from reportlab.platypus import Flowable

from inspect_app.report.pages.look import GAP


class Beside(Flowable):  # type: ignore[misc]
    """One or two parts, read from the left. It does not split."""

    def __init__(self, *parts: Any, after: float = 4.0) -> None:
        super().__init__()
        self.parts, self.spaceAfter = parts, after

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        self.width, self.each = width, (width - GAP) / 2
        self.talls = [part.wrap(self.each, height)[1] for part in self.parts]
        return width, max(self.talls)

    def draw(self) -> None:
        for at, (part, tall) in enumerate(zip(self.parts, self.talls, strict=True)):
            part.drawOn(self.canv, at * (self.each + GAP), max(self.talls) - tall)
