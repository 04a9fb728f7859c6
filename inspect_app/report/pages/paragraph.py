"""A paragraph that says in the structure of the document what it is."""

from typing import Any

from reportlab.platypus import Paragraph as Plain


class Paragraph(Plain):  # type: ignore[misc]
    """As ReportLab's; drawn as an element of its ``role``, the parts of one that was split each as one. Its lines are
    broken once for a width: a page asks more than once, and so does the pass that counts the pages."""

    role = "P"
    broken: tuple[float, tuple[float, float]] | None = None

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        # A split takes the lines away.
        if self.broken is None or self.broken[0] != width or not hasattr(self, "blPara"):
            self.broken = width, super().wrap(width, height)
        self.width, self.height = self.broken[1]
        return self.broken[1]

    def draw(self) -> None:
        if self.canv.counting:
            return
        with self.canv.marked(self.role):
            super().draw()

    def split(self, width: float, height: float) -> list[Any]:
        parts = super().split(width, height)
        for part in parts:
            part.role = self.role
        return parts  # type: ignore[no-any-return]


def heading(markup: str, style: Any, level: int) -> Paragraph:
    """A heading of that level, 1 the highest."""
    made = Paragraph(markup, style)
    made.role = f"H{level}"
    return made
