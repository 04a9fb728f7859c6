"""A paragraph that says in the structure of the document what it is."""

from typing import Any

from reportlab.platypus import Paragraph as Plain


class Paragraph(Plain):  # type: ignore[misc]
    """As ReportLab's; drawn as an element of its ``role``, the parts of one that was split each as one."""

    role = "P"

    def draw(self) -> None:
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
