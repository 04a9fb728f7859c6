"""The table of contents, and where the elements stand that two published lists ask of such a report."""

from typing import Any

from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Flowable, PageBreak

from inspect_app.report.pages.cells import Cells
from inspect_app.report.pages.elements import elements
from inspect_app.report.pages.look import ACCENT, BODY, CHAPTER, GREY, HAIR, PLAIN, SIDE, SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph, heading
from inspect_app.report.pages.row import Heading, space
from inspect_app.report.pages.text import line

Marks = dict[str, int]  # the page of each mark, as an earlier pass found it
UNKNOWN = 888  # in the first pass: as wide as pages get
BENEATH_STYLE = ParagraphStyle("beneath", SMALL, leftIndent=SIDE, rightIndent=30)
BENEATH = 60  # parts named under one chapter; more are counted
SHARES = (0.07, 0.53, 0.32, 0.08)


class Entry(Flowable):  # type: ignore[misc]
    """One chapter: number, title, a leader, its page; all of it leads there."""

    def __init__(self, chapter: Heading, page: int) -> None:
        super().__init__()
        self.chapter, self.page, self.spaceBefore, self.spaceAfter = chapter, page, 5.0, 0.0

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        self.width = width
        text = f'<link destination="#{self.chapter.mark}">{self.chapter.text}</link>'
        self.title = Paragraph(text, BODY)
        self.tall = self.title.wrap(width - SIDE - 30, height)[1]
        return width, self.tall

    def draw(self) -> None:
        canvas, low = self.canv, 3.0
        with canvas.marked("P"):
            canvas.setFont(PLAIN, 8.8)
            canvas.setFillColor(ACCENT)
            canvas.drawRightString(SIDE - 12, low, self.chapter.number)
        self.title.drawOn(canvas, SIDE, 0)
        last = self.title.blPara.lines[-1]
        begin = SIDE + self.title.width - self._room(last) + 6
        with canvas.artifact():
            canvas.setStrokeColor(HAIR)
            canvas.setLineWidth(0.6)
            canvas.setDash((0.6, 3), 0)
            canvas.line(begin, low, self.width - 22, low)
            canvas.setDash((), 0)
        with canvas.marked("P"):
            canvas.setFont(PLAIN, 8.8)
            canvas.setFillColor(GREY)
            canvas.drawRightString(self.width, low, str(self.page))

    def _room(self, last: Any) -> float:
        """What the last line leaves of its width."""
        return float(last.extraSpace if hasattr(last, "extraSpace") else last[0])


def contents_page(page: Page, story: list[Any], marks: Marks) -> list[Any]:
    """The page after the cover. ``story``: all that follows it; ``marks``: empty in the first pass."""
    told: list[Any] = [heading(page.say("contents"), CHAPTER, 1)]
    beneath: list[Heading] = []
    for head in headings(story):
        if head.level == 0:
            told += [*_beneath(page, beneath, marks), Entry(head, marks.get(head.mark, UNKNOWN))]
            beneath = []
        else:
            beneath.append(head)
    told += _beneath(page, beneath, marks)
    return [*told, PageBreak(), *_elements(page, marks)]


def headings(story: list[Any]) -> list[Heading]:
    """Every heading, those too that are kept together with something."""
    found = []
    for part in story:
        found += [part] if isinstance(part, Heading) else headings(getattr(part, "_content", []))
    return found


def _beneath(page: Page, heads: list[Heading], marks: Marks) -> list[Any]:
    """The parts of a chapter, run in: their names are short and many."""
    if not heads:
        return []
    told = [f'<link destination="#{one.mark}">{one.text}</link> <b>{marks.get(one.mark, UNKNOWN)}</b>'
            for one in heads[:BENEATH]]  # fmt: skip
    told += [page.say("and_more", count=len(heads) - BENEATH)] if len(heads) > BENEATH else []
    return [Paragraph(" · ".join(told), BENEATH_STYLE)]


def _elements(page: Page, marks: Marks) -> list[Any]:
    """A table for whoever has such a list in hand. It says where, not that the list is met."""
    heads = [page.say(f"element_head.{name}") for name in ("n", "what", "where", "page")]
    rows = []
    for one in elements(page, marks):
        where = f'<link destination="#{one.mark}" color="#8a3f17">{one.where}</link>' if one.page else one.where
        rows.append([line(one.letter, 4), one.what, where, str(one.page or "—")])
    split = next(at for at, one in enumerate(elements(page, marks)) if one.source != "inspection")
    parts = [(page.say("elements.inspection"), rows[:split]), (page.say("elements.daily"), rows[split:])]
    story: list[Any] = []
    for name, some in parts:
        story += [Named(name, SMALL), Cells(heads, some, SHARES)]
    return [*story, Paragraph(page.say("box"), SMALL), space(14)]


class Named(Paragraph):
    """The name of a table, kept with it."""

    keepWithNext = 1
