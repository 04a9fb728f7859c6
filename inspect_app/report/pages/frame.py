"""The page itself: running head, footer with the contents digest, page x of y, draft and invented-data
marks."""

import hashlib
from collections.abc import Callable
from datetime import datetime
from typing import Any, BinaryIO

from reportlab.pdfbase.pdfdoc import PDFDictionary
from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate

from inspect_app.report.pages.flat import FlatCanvas
from inspect_app.report.pages.look import (
    ACCENT,
    BOLD,
    BOTTOM,
    DRAFT,
    GREY,
    HAIR,
    INK,
    LEFT,
    PAPERS,
    PLAIN,
    RIGHT,
    TOP,
)
from inspect_app.report.pages.metadata import metadata
from inspect_app.report.pages.text import plain
from inspect_app.report.pages.voice import Voice


class _Stamp:
    """The creation date a PDF carries: the report's own time of issue, not the clock of whoever lays it
    out."""

    def __init__(self, issued: str) -> None:
        try:
            when = datetime.fromisoformat(issued)
        except ValueError:
            when = datetime(2000, 1, 1)
        minutes = int((when.utcoffset() or when - when).total_seconds() // 60)
        self.YMDhms = (when.year, when.month, when.day, when.hour, when.minute, when.second)
        self.dhh = -(-minutes // 60) if minutes < 0 else minutes // 60
        self.dmm = abs(minutes) % 60
        self.t, self.lt, self.tzname = 0.0, (*self.YMDhms, 0, 1, 0), "UTC"


class Plate(BaseDocTemplate):  # type: ignore[misc]
    """The report as a document. ``pages``: the total as counted by an earlier pass, None in the first."""

    def __init__(
        self,
        out: BinaryIO | None,
        contents: dict[str, Any],
        digest: str,
        voice: Voice,
        pages: int | None,
        on_cover: Callable[[Any, Any], None],
    ) -> None:
        size = PAPERS.get(contents["paper"], PAPERS["letter"])
        super().__init__(
            out,
            pagesize=size,
            initialFontName=PLAIN,
            lang=voice.language,
            title=plain(voice.say("title", number=contents["number"], name=contents["job"]["name"])),
            author=plain(contents["issuer"] or "—"),
            subject=f"seamwalk contents sha256 {digest}",
            creator="Seamwalk",
            producer="Seamwalk",
        )
        self.contents, self.digest, self.voice, self.total = contents, digest, voice, pages
        self.seal: dict[str, Any] = {}
        self.marks: dict[str, int] = {}  # the page of each heading
        wide, tall = size
        body = Frame(LEFT, BOTTOM, wide - LEFT - RIGHT, tall - TOP - BOTTOM, 0, 0, 0, 0, id="body")
        cover = Frame(LEFT, BOTTOM, wide - LEFT - RIGHT, tall - TOP - BOTTOM, 0, 0, 0, 0, id="cover")
        self.addPageTemplates(
            [
                PageTemplate("cover", [cover], onPage=lambda canvas, _: self._page(canvas, on_cover)),
                PageTemplate("body", [body], onPage=lambda canvas, _: self._page(canvas, None)),
            ]
        )

    def beforeDocument(self) -> None:
        self.canv._doc._timeStamp = _Stamp(self.contents["issued"])
        # The file's ID is seeded with a clock or SOURCE_DATE_EPOCH otherwise; it names the file, it protects nothing.
        self.canv._doc.signature = hashlib.md5(self.digest.encode(), usedforsecurity=False)
        self.canv.showOutline()
        self.canv.link_words = self._link_words
        catalog, info = self.canv._doc.Catalog, self.canv._doc.info
        catalog.ViewerPreferences = PDFDictionary({"DisplayDocTitle": "true"})
        catalog.Metadata = metadata(info.title, info.author, info.subject, self.voice.language, self.contents["issued"])

    def _link_words(self, mark: str) -> str:
        """``Finding 3`` of ``finding-3``: what a voice says of a link."""
        kind, _, n = mark.partition("-")
        key = f"link_to.{kind}"
        return self.voice.say(key, n=n) if self.voice.knows(f"report.{key}") else self.voice.say("link_to", mark=mark)

    def build_flat(self, story: list[Any], share: Callable[[float], None] = lambda share: None) -> int:
        """Lay the story out and write it; the number of pages. ``share`` is told how much of it is done, 0 to 1."""
        parts = max(len(story), 1)
        self.setProgressCallBack(lambda what, done: share(done / parts) if what == "PROGRESS" else None)
        edits: list[Any] = []  # what the pinned ReportLab notes in its flowables: the next pass takes them as they were
        self._multiBuildEdits = edits.append
        self.build(story, canvasmaker=FlatCanvas)
        for change, *about in reversed(edits):
            change(*about)
        return int(self.page)

    def _page(self, canvas: Any, on_cover: Callable[[Any, Any], None] | None) -> None:
        if canvas.counting:  # none of this moves what follows
            return
        canvas.saveState()
        wide, tall = self.pagesize
        if not self.contents["final"]:
            with canvas.artifact("Watermark"):
                self._watermark(canvas)
        with canvas.artifact("Header"):
            self._head(canvas, wide, tall)
        with canvas.artifact("Footer"):
            self._foot(canvas, wide)
        if on_cover:
            on_cover(canvas, self.pagesize)
        canvas.restoreState()

    def _watermark(self, canvas: Any) -> None:
        wide, tall = self.pagesize
        canvas.saveState()
        canvas.translate(wide / 2, tall / 2)
        canvas.rotate(52)
        canvas.setFillColor(DRAFT)
        canvas.setFont(BOLD, 118)
        canvas.drawCentredString(0, -40, self.voice.say("draft"))
        canvas.restoreState()

    def _head(self, canvas: Any, wide: float, tall: float) -> None:
        top = tall - 44
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.5)
        canvas.line(LEFT, top, wide - RIGHT, top)
        canvas.setFont(BOLD, 7)
        canvas.setFillColor(ACCENT)
        marks = []
        if self.contents["invented"]:
            marks.append(self.voice.say("invented_mark"))
        if not self.contents["final"]:
            marks.append(self.voice.say("draft_mark"))
        shown = "   ·   ".join(marks)
        canvas.drawRightString(wide - RIGHT, top + 5, shown)
        space = wide - LEFT - RIGHT - canvas.stringWidth(shown, BOLD, 7) - 20
        canvas.setFont(PLAIN, 7)
        canvas.setFillColor(GREY)
        canvas.drawString(LEFT, top + 5, fit(canvas, plain(self.contents["job"]["name"], 110), PLAIN, 7, space))

    def _foot(self, canvas: Any, wide: float) -> None:
        canvas.setStrokeColor(HAIR)
        canvas.setLineWidth(0.5)
        canvas.line(LEFT, 48, wide - RIGHT, 48)
        canvas.setFillColor(GREY)
        canvas.setFont(PLAIN, 7)
        say, contents = self.voice.say, self.contents
        page = say("page_of", page=canvas.getPageNumber(), pages=self.total or "0000")
        canvas.drawRightString(wide - RIGHT, 37, page)
        text = say("foot", number=contents["number"], issued=self.voice.moment(contents["issued"]))
        issuer = plain(contents["issuer"], 70) + "  ·  " if contents["issuer"] else ""
        canvas.drawString(LEFT, 37, fit(canvas, issuer + text, PLAIN, 7, wide - LEFT - RIGHT - 90))
        canvas.setFont(PLAIN, 5.8)
        canvas.drawString(LEFT, 27, f"{say('contents_digest')}  {self.digest}")


def fit(canvas: Any, text: str, font: str, size: float, width: float) -> str:
    """The text, cut with an ellipsis to the width there is."""
    if canvas.stringWidth(text, font, size) <= width:
        return text
    low, high = 0, len(text)
    while low < high:
        middle = (low + high + 1) // 2
        if canvas.stringWidth(text[:middle] + "…", font, size) <= width:
            low = middle
        else:
            high = middle - 1
    return text[:low] + "…"
