"""The boxes on the last page where seals go: one for who issues, three spare ones for who countersigns."""

from typing import Any

from reportlab.platypus import Flowable

from inspect_app.report.pages.look import GREY, HAIR, PLAIN
from inspect_app.report.pages.page import Page

TALL, GUTTER, UNDER = 78.0, 16.0, 14.0
FIELDS = ("Seal", "Countersignature", "Countersignature2", "Countersignature3")  # two a row
ROW = TALL + UNDER + 6


class SealRoom(Flowable):  # type: ignore[misc]
    """Reserves the boxes and tells the document where they came to lie."""

    def __init__(self, page: Page) -> None:
        super().__init__()
        self.page = page

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        self.width = width
        return width, ROW * ((len(FIELDS) + 1) // 2)

    def draw(self) -> None:
        canvas, each = self.canv, (self.width - GUTTER) / 2
        boxes: dict[str, list[float]] = {}
        for at, name in enumerate(FIELDS):
            x, y = at % 2 * (each + GUTTER), ROW * ((len(FIELDS) - 1) // 2 - at // 2)
            with canvas.artifact():
                canvas.setStrokeColor(HAIR)
                canvas.setLineWidth(0.5)
                canvas.rect(x, y + UNDER, each, TALL, stroke=1, fill=0)
            with canvas.marked("P"):
                canvas.setFillColor(GREY)
                canvas.setFont(PLAIN, 6.8)
                canvas.drawString(x, y + 4, self.page.say(f"seal_box.{name.rstrip('0123456789').lower()}"))
            corner = canvas.absolutePosition(x, y + UNDER)
            boxes[name] = [
                round(corner[0], 2),
                round(corner[1], 2),
                round(corner[0] + each, 2),
                round(corner[1] + TALL, 2),
            ]
        place: dict[str, Any] = {"page": canvas.getPageNumber(), "boxes": boxes}
        self._doctemplateAttr("seal").update(place)
