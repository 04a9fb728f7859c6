"""A crew's series: its lots as ribs in the order they were made. One accepted stands, one not accepted fell."""

from typing import Any

from inspect_app.report.pages.look import ACCENT, BOLD, GREY, HAIR, INK, PLAIN
from inspect_app.report.pages.page import Page

HEIGHT = 54.0
WIDEST, MOST = 34.0, 60
SIGNS = {"A": "○", "R": "◆", "M": "◇", "N": "?", None: "…"}


def draw_series(canvas: Any, width: float, series: dict[str, Any], page: Page) -> None:
    """Each lot: its number in this report, its mark, its day; where the inspection changed, a line says to what."""
    lots = series["lots"][-MOST:]
    numbers = {one["lot"]: one["n"] for one in page.contents["lots"]}
    wide = min(WIDEST, (width - 90) / max(len(lots), 1))
    canvas.setStrokeColor(HAIR)
    canvas.setLineWidth(0.6)
    canvas.line(0, 11, len(lots) * wide, 11)
    for at, one in enumerate(lots):
        x, symbol = at * wide + wide / 2, one["symbol"]
        canvas.setStrokeColor(ACCENT if symbol == "R" else INK)
        canvas.setLineWidth(1.6)
        canvas.setDash(*(([1.5, 1.5], 0) if symbol in ("N", None) else ((), 0)))
        if symbol == "R":
            canvas.line(x - 7, 12, x + 7, 12)
        else:
            canvas.line(x, 11, x, 27)
        canvas.setDash((), 0)
        canvas.setFillColor(ACCENT if symbol == "R" else INK)
        canvas.setFont(BOLD, 7.5)
        canvas.drawCentredString(x, 29.5, SIGNS.get(symbol, "?"))
        canvas.setFont(PLAIN, 6.2)
        canvas.setFillColor(INK)
        canvas.drawCentredString(x, 38.5, page.say("lot_n", n=numbers.get(one["lot"], "—")))
        canvas.setFillColor(GREY)
        canvas.setFont(PLAIN, 5.6)
        canvas.drawCentredString(x, 3.5, str(one["day"])[5:10])
        if one["lot"] == series["since"]:
            canvas.setStrokeColor(ACCENT)
            canvas.setLineWidth(0.8)
            canvas.line(x + wide / 2, 2, x + wide / 2, 53)
            canvas.setFillColor(ACCENT)
            canvas.drawString(x + wide / 2 + 3, 47.5, page.say("series_turn", state=page.say(
                f"lot.inspection.{series['inspection']}")))  # fmt: skip
