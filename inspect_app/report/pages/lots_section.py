"""Lots: each on half a page at most, then the crews' series, the audits, and what sampling can and cannot tell."""

from typing import Any

from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.lot_block import lot_block, lot_name
from inspect_app.report.pages.lot_words import said
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.row import Columns, Drawing, Heading, Row, paragraphs, space, together
from inspect_app.report.pages.series_figure import HEIGHT, draw_series
from inspect_app.report.pages.text import line

LIMITS = ("isolated", "series", "panel", "unseen", "hand", "tickets", "after_cover", "order")


def lots_section(page: Page, number: str) -> list[Any]:
    """Every lot in the order of its day; a job without lots says that nothing was drawn."""
    contents = page.contents
    story: list[Any] = [Heading(page.say("chapter.lots"), "lots", number=number)]
    if not contents["lots"]:
        return [*story, Row("", Paragraph(page.say("no_lots"), BODY), 8)]
    story.append(Row("", Paragraph(page.say("lots_say"), SMALL), 4))
    for lot in sorted(contents["lots"], key=lambda one: one["n"]):
        story += lot_block(page, lot)
    return story + _to_date(page) + _series(page) + _audits(page) + _limits(page)


def _to_date(page: Page) -> list[Any]:
    told = page.contents["to_date"]
    cells = [f"<b>{page.say(f'lot.severity.{one}')}</b><br/>{said(page, told[one]['says'])}" for one in told]
    if not cells:
        return []
    head = Heading(page.say("to_date_head"), "to-date", 1)
    return [together([head, Columns("", cells, (1 / len(cells),) * len(cells), SMALL)]), space(6)]


def _series(page: Page) -> list[Any]:
    story: list[Any] = [Heading(page.say("series_head"), "series", 1)] if page.contents["series"] else []
    assemblies = {one["id"]: one["name"] for one in page.contents["assemblies"]}
    for name in sorted(page.contents["series"]):
        one = page.contents["series"][name]
        state = page.say(f"lot.inspection.{one['inspection']}")
        because = said(page, {"code": f"lot.series.because.{one['because']['code']}", "facts": one["because"]["facts"]})
        paint = lambda canvas, width, _, one=one: draw_series(canvas, width, one, page)  # noqa: E731
        story += [
            together([
                Row(line(one["crew"], 60) or page.say("lot.no_crew"),
                    Paragraph(f"<b>{state}</b>. {because} {line(assemblies.get(one['assembly']), 60)}", BODY)),
                Row("", Drawing(HEIGHT, paint, alt=page.say("alt.series"))),
            ]),
            space(3),
        ]  # fmt: skip
    return [together(story[:2]), *story[2:], space(4)] if story else []


def _audits(page: Page) -> list[Any]:
    if not page.contents["audits"]:
        return []
    story: list[Any] = [Heading(page.say("audits_head"), "audits", 1)]
    by_name = {lot["lot"]: lot for lot in page.contents["lots"]}
    for name in sorted(page.contents["audits"]):
        told = [said(page, sentence) for sentence in page.contents["audits"][name]["says"]]
        label = lot_name(page, by_name[name]) if name in by_name else line(name, 30)
        story.append(together(paragraphs(label, [" ".join(told)])))
    return [*story, space(4)]


def _limits(page: Page) -> list[Any]:
    decided = sorted({one["decided"] for one in page.contents["series"].values()})
    part = page.contents["kind"] != "closeout"  # which bears no series
    facts = {"longest": decided[-1] if decided else 0}
    head = Heading(page.say("limits_head"), "sampling-limits", 1)
    texts = [page.say(f"limit.{name}_part" if part and name == "isolated" else f"limit.{name}", **facts)
             for name in LIMITS]  # fmt: skip
    return [head, *(Row("", Paragraph(text, BODY), 2.5) for text in texts)]
