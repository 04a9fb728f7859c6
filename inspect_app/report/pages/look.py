"""The look of a report's page: a surveyor's plate. Thin rules, wide margins, one accent that also reads in
grey."""

import threading
from pathlib import Path

from reportlab import rl_config
from reportlab.lib.colors import Color, HexColor
from reportlab.lib.pagesizes import A4, letter
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

rl_config.useA85 = 0  # or every photo grows by a quarter and takes a minute per hundred
rl_config.invariant = 1  # no clock and no chance in the bytes

PLAIN, BOLD = "Seamwalk", "Seamwalk-Bold"
INK, GREY, HAIR, PALE = HexColor("#1b1f22"), HexColor("#646b70"), HexColor("#b5babd"), HexColor("#eceeef")
ACCENT, TINT, DRAFT = HexColor("#8a3f17"), HexColor("#e2cbbd"), Color(0.925, 0.925, 0.925)

PAPERS = {"letter": letter, "a4": A4}
LEFT, RIGHT, TOP, BOTTOM = 54.0, 54.0, 74.0, 64.0
SIDE, GAP = 112.0, 12.0  # the side column of labels, and the gutter inside it

_once = threading.Lock()


def load_fonts(folder: Path) -> None:
    """Register DejaVu Sans from ``folder`` (once per process). ``RuntimeError`` when it is not there."""
    with _once:
        if PLAIN in pdfmetrics.getRegisteredFontNames():
            return
        for name, file in ((PLAIN, "DejaVuSans.ttf"), (BOLD, "DejaVuSans-Bold.ttf")):
            if not (folder / file).is_file():
                raise RuntimeError(f"the report's font {file} is not in {folder}")
            pdfmetrics.registerFont(TTFont(name, str(folder / file)))
        pdfmetrics.registerFontFamily(PLAIN, normal=PLAIN, bold=BOLD, italic=PLAIN, boldItalic=BOLD)


def _style(name: str, size: float, leading: float, **more: object) -> ParagraphStyle:
    kept = {
        "fontName": PLAIN,
        "textColor": INK,
        "allowWidows": 0,
        "allowOrphans": 0,
        "splitLongWords": 1,
    } | more
    return ParagraphStyle(name, fontSize=size, leading=leading, **kept)


BODY = _style("body", 8.8, 12.6)
SMALL = _style("small", 7.3, 10.2, textColor=GREY)
SIDE_LABEL = _style("side", 7.3, 12.6, textColor=GREY)
STRONG = _style("strong", 8.8, 12.6, fontName=BOLD)
CHAPTER = _style("chapter", 17, 21, fontName=BOLD)
HEAD = _style("head", 11, 14.5, fontName=BOLD)
CODE = _style("code", 6.9, 9.6, textColor=GREY)
TITLE = _style("title", 25, 30, fontName=BOLD)
PLACE = _style("place", 11, 15, textColor=GREY)
VERDICT = _style("verdict", 19, 23.5, fontName=BOLD, textColor=ACCENT)
CAPTION = _style("caption", 6.9, 9.3, textColor=INK)
CAPTION_HEAD = _style("caption-head", 6.9, 9.3, textColor=INK, fontName=BOLD)
CAPTION_HASH = _style("caption-hash", 5.4, 9.3, textColor=GREY)
CELL = _style("cell", 7.3, 9.4, textColor=INK)
CELL_HASH = _style("cell-hash", 5.6, 9.4, textColor=INK)  # 64 signs on one line: compared, not read
CELL_HEAD = _style("cell-head", 6.6, 8.6, textColor=GREY)
