"""Roof areas: the plan, then place by place what was answered."""

from typing import Any

from inspect_app.record.ranges import merged
from inspect_app.report.pages.look import BODY
from inspect_app.report.pages.lot_words import laid_run
from inspect_app.report.pages.outline import Outline, Undrawable
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.place_asked import asked_table, is_row
from inspect_app.report.pages.place_block import place_block
from inspect_app.report.pages.place_row import is_told
from inspect_app.report.pages.places_table import places_table
from inspect_app.report.pages.plan import draw_plan, plan_height
from inspect_app.report.pages.plan_places import found_by_hand
from inspect_app.report.pages.roof_section import hatch_legend, mark_legend
from inspect_app.report.pages.row import Drawing, Heading, Row, space, together
from inspect_app.report.pages.text import line, plain

TALLEST_PLAN = 300.0


def areas_section(page: Page, number: str) -> list[Any]:
    """One part for each area; places on no known area come last, so that none is lost."""
    story: list[Any] = []
    chapter: list[Any] = [Heading(page.say("chapter.areas"), "areas", number=number)]
    known = [area["id"] for area in page.contents["areas"]]
    for area in page.contents["areas"]:
        story += _area(page, area, chapter)
        chapter = []  # it stands over the first area's plan, on the same page
    story += chapter
    lost = [one for one in page.contents["stations"] if one["area"] not in known]
    if lost:
        story += [Heading(page.say("lost_places"), "lost-places", 1)]
    return story + _in_full(page, lost, True)


def _area(page: Page, area: dict[str, Any], chapter: list[Any]) -> list[Any]:
    mine = [one for one in page.contents["stations"] if one["area"] == area["id"]]
    name = line(area["name"], 90)
    head: list[Any] = [*chapter, Heading(name, f"area-{page.contents['areas'].index(area) + 1}", 1, name)]
    facts = [
        page.say("area_assembly", name=line(area["assembly"]["name"])),
        page.say("area_slope", amount=page.voice.quantity(area["slope"])),
        page.say(
            "area_panels",
            count=area["panel_count"] or 0,
            coverage=page.voice.quantity(area["coverage"]),
            length=page.voice.quantity(area["panel_length"]),
        ),
    ]
    head.append(Row(page.say("area_label"), Paragraph("; ".join(facts) + ".", BODY)))
    head.append(Row(page.say("fixed_line"), Paragraph(_fixed(page, area), BODY)))
    marked = [
        {"from": row["from"], "to": lot["placed_to"]}
        for lot in page.contents["lots"] for row in lot["rows"]
        if lot["purpose"] == "work" and row["area"] == area["id"] and lot["placed_to"] is not None
    ]  # fmt: skip
    laid = ", ".join(laid_run(page, low, high) for low, high in _runs(area["placed"] + marked)[:20])
    head.append(Row(page.say("laid"), Paragraph(laid or page.say("laid_none"), BODY), 6))
    story: list[Any] = [*head]
    runs = (page.contents["coverage"].get(area["id"]) or {}).get("runs")
    try:
        shape = Outline(area)
        tall = plan_height(shape, 504, TALLEST_PLAN)
        shown = [*mine, *found_by_hand(page.contents["findings"], area["id"])]
        paint = lambda canvas, width, height: draw_plan(  # noqa: E731
            canvas, width, height, area, shown, page.voice, runs=runs)  # fmt: skip
        legends = [hatch_legend(page, [area["id"]])] if runs else []
        plan = Drawing(tall, paint, alt=page.say("alt.area", name=plain(area["name"])))
        # Of an area where nobody was, no mark stands on the plan.
        story = [together([*head, plan, *legends, *([mark_legend(page)] if shown else [])])]
    except Undrawable:
        story.append(Row("", Paragraph(page.say("no_plan"), BODY)))
    answers = {answer["id"]: answer for answer in page.contents["answers"]}
    if mine:
        story += [space(4), places_table(page, mine, answers)]
    story += _in_full(page, mine)
    if not mine:
        story.append(Row("", Paragraph(page.say("area_no_places"), BODY)))
    return story


def _runs(laid: list[dict[str, Any]]) -> list[list[Any]]:
    """Each panel once, however often it was told as placed; what is no number is told as it was."""
    told = [[one["from"], one["to"]] for one in laid]
    return merged(told) if all(isinstance(end, int) for run in told for end in run) else told


def _fixed(page: Page, area: dict[str, Any]) -> str:
    fixed = area["fixed_line"]
    if not fixed:
        return page.say("fixed_unknown")
    by = line(fixed.get("by")) + page.recorded()
    text = page.say("fixed_at", distance=page.voice.quantity(fixed.get("from_low_end")), by=by)
    if isinstance(fixed.get("fasteners"), int):
        text += page.say("fixed_fasteners", count=fixed["fasteners"])
    return text


def _in_full(page: Page, stations: list[dict[str, Any]], every: bool = False) -> list[Any]:
    """Those that a row of the table does not tell, or ``every`` one; over them what was asked at them."""
    answers = {answer["id"]: answer for answer in page.contents["answers"]}
    own = [(one, [answers[name] for name in one["answers"]]) for one in stations]
    own = [(one, mine) for one, mine in own if every or not is_told(one, mine)]
    table, put_in = asked_table(page, [answer for one, mine in own for answer in mine if is_row(one, answer)])
    story: list[Any] = [space(4), *table] if table else []
    for one, mine in own:
        story += place_block(page, one, mine, put_in)
    return story
