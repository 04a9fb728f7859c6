"""The cover: a plate with the roof drawn, the result in a word and in numbers, and a title block."""

from typing import Any

from inspect_app.report.pages.look import (
    ACCENT,
    BODY,
    GREY,
    HAIR,
    INK,
    LEFT,
    PLACE,
    PLAIN,
    RIGHT,
    SMALL,
    TITLE,
    VERDICT,
)
from inspect_app.report.pages.mark import draw_mark
from inspect_app.report.pages.outline import Outline, Undrawable
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.plan import draw_plan
from inspect_app.report.pages.plan_places import found_by_hand
from inspect_app.report.pages.roof_plan import draw_roof, placed_areas, roof_height
from inspect_app.report.pages.scope_words import kind_words, outside_words, scope_words
from inspect_app.report.pages.text import line, plain
from inspect_app.report.pages.title_block import draw_title_block

COUNTED = ("fail", "too_close", "not_determinable", "pass", "not_applicable", "recorded")
BLOCK_TALL, FOOT = 168.0, 64.0


def draw_cover(page: Page, canvas: Any, size: tuple[float, float]) -> None:
    """Draw the cover page; everything on it has its place, whatever the texts are."""
    wide, tall = size
    width, cover = wide - LEFT - RIGHT, page.contents["cover"]
    canvas.bookmarkHorizontal("cover", 0, tall - 50)
    canvas.addOutlineEntry(page.say("cover"), "cover", 0)
    y = tall - 74
    with canvas.marked("P"):
        canvas.setFont(PLAIN, 7.6)
        canvas.setFillColor(GREY)
        canvas.drawString(LEFT, y, f"{kind_words(page)}  ·  {_says(page)}")
    y = _write(canvas, line(page.contents["job"]["name"], 120), TITLE, LEFT, y - 12, width, 3, "H1")
    y = _write(canvas, line(page.contents["job"]["place"], 160), PLACE, LEFT, y - 4, width, 2)
    if page.contents["kind"] != "closeout":
        y = _write(canvas, f"<b>{scope_words(page)}</b> {outside_words(page)}", BODY, LEFT, y - 6, width * 0.9, 7)
    y -= 18
    with canvas.artifact():
        canvas.setStrokeColor(ACCENT)
        canvas.setLineWidth(1.6)
        canvas.line(LEFT, y, LEFT + 46, y)
    y = _write(canvas, _verdict(page), VERDICT, LEFT, y - 10, width * 0.8, 3)
    y = _counts(page, canvas, y - 16, width)
    says = page.say(f"verdict.{cover['verdict']}.says")
    if cover["critical"]:
        says = f"<b>{page.say('unsettled_critical', count=cover['critical'])}</b> {says}"
    y = _write(canvas, says, BODY, LEFT, y - 8, width * 0.8, 4)
    if cover["states"]:
        told = ", ".join(page.say(f"tally_state.{one}", count=cover["states"][one]) for one in cover["states"])
        y = _write(canvas, page.say("cover_findings", told=told), BODY, LEFT, y - 5, width * 0.8, 2)
    fit = cover["fit"]
    if fit["areas"]:
        told = page.say("fit_cover", fails=fit["fail"], open=fit["open"], areas=fit["areas"], of=len(cover["areas"]))
        y = _write(canvas, told, BODY, LEFT, y - 5, width * 0.8, 2)
    if page.contents["invented"]:
        y = _write(canvas, page.say("invented"), BODY, LEFT, y - 5, width * 0.8, 3)
    block = FOOT + BLOCK_TALL
    with canvas.marked("Figure", page.say("alt.roof", areas=len(page.contents["areas"]))):
        _plans(page, canvas, LEFT, block + 16, width, y - 20 - (block + 16))
    draw_title_block(page, canvas, LEFT, FOOT, width, BLOCK_TALL)


def _verdict(page: Page) -> str:
    cover = page.contents["cover"]
    counted = {"fit_fails": cover["fit"]["fail"], "raised": cover["raised"]}
    count = counted.get(cover["verdict"], cover["counts"]["fail"])
    return page.say(f"verdict.{cover['verdict']}", fails=cover["counts"]["fail"], answers=cover["answers"],
                    open=cover["counts"]["not_determinable"] + cover["counts"]["too_close"],
                    count=count, lines=cover["fit"]["fail"], stations=cover["stations"])  # fmt: skip


def _counts(page: Page, canvas: Any, y: float, width: float) -> float:
    x = LEFT
    for result in COUNTED:
        count = page.contents["cover"]["counts"][result]
        if not count:
            continue
        text = f"{count} {page.say('tally.' + result, count=count)}"
        wide = 15 + canvas.stringWidth(text, PLAIN, 8.8)
        if x > LEFT and x + wide > LEFT + width:
            x, y = LEFT, y - 14
        with canvas.artifact():
            draw_mark(canvas, x + 5, y + 3, result, size=4.2)
        with canvas.marked("P"):
            canvas.setFillColor(INK)
            canvas.setFont(PLAIN, 8.8)
            canvas.drawString(x + 15, y, text)
        x += wide + 20
    return y


def _plans(page: Page, canvas: Any, x: float, y: float, width: float, height: float) -> None:
    """The whole roof where all its areas are placed, else the areas side by side, all to one scale."""
    placed = placed_areas(page.contents["areas"])
    if len(placed) > 1 and len(placed) == len(page.contents["areas"]) and height >= 110:
        canvas.saveState()
        canvas.translate(x, y)
        draw_roof(canvas, width, min(height, roof_height(placed, width, height)), placed, page, False)
        canvas.restoreState()
        return
    shapes = []
    for area in page.contents["areas"][:4]:
        try:
            shapes.append((area, Outline(area)))
        except Undrawable:
            continue
    if not shapes or height < 70:
        return
    foot, rim, gutter = 15.0, 6.0, 22.0
    metres = [shape.in_unit("m") for _, shape in shapes]
    across = sum(shape.width / one for (_, shape), one in zip(shapes, metres, strict=True))
    tallest = max(shape.height / one for (_, shape), one in zip(shapes, metres, strict=True))
    room = width - gutter * (len(shapes) - 1) - 2 * rim * len(shapes)
    scale = min(room / across, (height - foot - 2 * rim) / tallest)
    canvas.setStrokeColor(HAIR)
    for (area, shape), one in zip(shapes, metres, strict=True):
        wide, tall = shape.width / one * scale + 2 * rim, shape.height / one * scale + 2 * rim
        canvas.saveState()
        canvas.translate(x - rim, y + foot)
        own = [station for station in page.contents["stations"] if station["area"] == area["id"]]
        own += found_by_hand(page.contents["findings"], area["id"])
        draw_plan(canvas, wide, tall, area, own, page.voice, labelled=False)
        canvas.restoreState()
        canvas.setFont(PLAIN, 7.3)
        canvas.setFillColor(GREY)
        name = plain(area["name"], max(int(wide / 4.2), 6))
        canvas.drawString(x, y + 4, name)
        x += wide - 2 * rim + gutter + 2 * rim
    left = len(page.contents["areas"]) - len(shapes)
    if left > 0:
        note = Paragraph(page.say("more_areas", count=left), SMALL)
        note.wrap(120, 40)
        note.drawOn(canvas, min(x, LEFT + width - 100), y - 10 if x > LEFT + width - 100 else y)


def _says(page: Page) -> str:
    """What kind of work the report comes from: a survey looks at a roof long after anything of it can be seen."""
    return page.say("kind_of_report.survey" if page.contents["kind"] == "survey" else "kind_of_report")


def _write(canvas: Any, markup: str, style: Any, x: float, top: float, width: float, lines: int, role: str = "P",
           ) -> float:  # fmt: skip
    paragraph = Paragraph(markup, style)
    paragraph.role = role
    _, tall = paragraph.wrap(width, 10**6)
    words = markup.split(" ")
    while tall > style.leading * lines and "<" not in markup and len(words) > 1:
        words.pop()  # a long name loses words at its end and says so; the body of the report has it in full
        paragraph = Paragraph(" ".join([*words, "…"]), style)
        paragraph.role = role
        _, tall = paragraph.wrap(width, 10**6)
    if tall > style.leading * lines:  # one word, or markup: at its last whole line
        parts = paragraph.split(width, style.leading * lines + 0.1)
        paragraph = parts[0] if parts else paragraph
        _, tall = paragraph.wrap(width, 10**6)
    paragraph.drawOn(canvas, x, top - tall)
    return float(top - tall)
