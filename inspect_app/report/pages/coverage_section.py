"""Coverage without make-up: a bar for each area, the job's figures, and what was covered with nobody there, named."""

from typing import Any

from inspect_app.report.pages.hatch import STATES, hatch, swatch
from inspect_app.report.pages.look import BODY, BOLD, GREY, INK, PLAIN, SMALL
from inspect_app.report.pages.lot_words import ranges
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.row import Drawing, Heading, Row, paragraphs, space, together
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import percent

BAR, ROW = 15.0, 13.0
COUNTED = STATES[:-1]  # what has no seam hides nothing


def coverage_section(page: Page, number: str) -> list[Any]:
    """The whole job, each area, then what went past a hold, a stop or a drawn place."""
    told = page.contents["coverage"]
    areas = [one for one in page.contents["areas"] if (told.get(one["id"]) or {}).get("panels")]
    story: list[Any] = [Heading(page.say("chapter.coverage"), "coverage", number=number)]
    if not areas:
        return [*story, Row("", Paragraph(page.say("no_coverage"), BODY), 8)]
    sums = {state: sum(told[one["id"]]["counts"].get(state, 0) for one in areas) for state in STATES}
    story.append(Row("", Paragraph(page.say("coverage.what"), SMALL), 4))
    story.append(Row(page.say("coverage.job"), Drawing(_job_height(), lambda canvas, width, _: _job(
        canvas, width, sums, page), 6, page.say("alt.coverage"))))  # fmt: skip
    parts = [together([*story])]
    for one in areas:
        parts.append(_area(page, one, told[one["id"]]))
    return [*parts, *_unseen(page, areas), *_gone_over(page), *_unattended(page), *_nonresponse(page), space(4)]


def _job_height() -> float:
    return ROW * len(COUNTED) + BAR + 8


def _job(canvas: Any, width: float, sums: dict[str, int], page: Page) -> None:
    """The bar of the whole job by state, the strongest first, over a table of its figures."""
    total = sum(sums[state] for state in COUNTED)
    x, top = 0.0, _job_height()
    for state in COUNTED if total else ():
        wide = width * sums[state] / total
        if wide > 0:
            _box(canvas, x, top - BAR, wide, state)
        x += wide
    for at, state in enumerate(COUNTED):
        y = top - BAR - 8 - ROW * (at + 1)
        swatch(canvas, 0, y + 2, 18, 8.5, state)
        canvas.setFillColor(INK)
        canvas.setFont(PLAIN, 7.6)
        canvas.drawString(26, y + 3.4, page.say(f"coverage.{state}"))
        canvas.setFont(BOLD, 8)
        canvas.drawRightString(width - 60, y + 3.4, str(sums[state]))
        canvas.setFont(PLAIN, 7.2)
        canvas.setFillColor(GREY)
        canvas.drawRightString(width, y + 3.4, percent(round(sums[state] / total, 4)) if total else "—")


def _box(canvas: Any, x: float, y: float, wide: float, state: str) -> None:
    hatch(canvas, [(x, y), (x + wide, y), (x + wide, y + BAR), (x, y + BAR)], state)
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(0.35)
    canvas.rect(x, y, wide, BAR, stroke=1, fill=0)


def _area(page: Page, area: dict[str, Any], told: dict[str, Any]) -> Any:
    """Its bar is its panels side by side, from the starting edge."""

    def paint(canvas: Any, width: float, _: float) -> None:
        for run in told["runs"]:
            x = width * (run["from"] - 1) / told["panels"]
            _box(canvas, x, 7, width * (run["to"] - run["from"] + 1) / told["panels"], run["state"])
        canvas.setFillColor(GREY)
        canvas.setFont(PLAIN, 5.8)
        canvas.drawString(0, 0.5, page.say("coverage.first"))
        canvas.drawRightString(width, 0.5, page.say("panel_n", n=told["panels"]))

    figures = [f"{told['counts'].get(state, 0)} {page.say('coverage.' + state)}"
               for state in COUNTED if told["counts"].get(state)]
    return together([
        Row(line(area["name"], 60), Drawing(BAR + 8, paint, 1, page.say("alt.coverage"))),
        Row("", Paragraph(" · ".join(figures), SMALL), 5),
    ])  # fmt: skip


def _unseen(page: Page, areas: list[dict[str, Any]]) -> list[Any]:
    texts = []
    for one in areas:
        runs = [run for run in page.contents["coverage"][one["id"]]["runs"] if run["state"] == "covered_unseen"]
        panels = [panel for run in runs for panel in range(run["from"], run["to"] + 1)]
        if panels:
            texts.append(page.say("panels_of", area=line(one["name"], 60), panels=ranges(page, panels),
                                  count=len(set(panels))))  # fmt: skip
    head = Heading(page.say("coverage.unseen"), "covered-unseen", 1)
    if not texts:
        return [head, Row("", Paragraph(page.say("coverage.nothing_unseen"), BODY))]
    return [head, Row("", Paragraph(page.say("coverage.unseen.what"), SMALL), 3), *paragraphs("", texts)]


def _gone_over(page: Page) -> list[Any]:
    """Holds that somebody covered, by panel: they stay for ever."""
    texts = [
        page.say("lot_held", lot=_lot(lot), area=_area_of(page, lot), panel=one["panel"],
                 why=page.say(f"hold.why.{one['why']}"))
        for lot in _ordered(page) for one in sorted(lot["holds"], key=lambda hold: hold["panel"])
        if one["state"] == "covered_against"
    ]  # fmt: skip
    label = page.say("held_gone_over")
    return [space(3), *paragraphs(label, texts or [page.say("held_none")])]


def _unattended(page: Page) -> list[Any]:
    texts = _stops(page, ("not_attended",))
    return paragraphs(page.say("stops_unattended"), texts or [page.say("stops_attended")])


def _nonresponse(page: Page) -> list[Any]:
    """Drawn places that were covered before a look, or looked at in part: counted, never replaced."""
    texts = _stops(page, ("covered", "part", "unsafe"))
    if texts:
        texts.append(page.say("nonresponse_says"))
    return paragraphs(page.say("nonresponse"), texts or [page.say("nonresponse_none")])


def _stops(page: Page, states: tuple[str, ...]) -> list[str]:
    texts = []
    for lot in _ordered(page):
        found = [stop["panel"] for stop in lot["stops"] if stop["state"] in states]
        if found:
            texts.append(page.say("stops_of", lot=_lot(lot), area=_area_of(page, lot), panels=ranges(page, found),
                                  count=len(set(found)), drawn=len(lot["stops"])))  # fmt: skip
    return texts


def _ordered(page: Page) -> list[dict[str, Any]]:
    return sorted(page.contents["lots"], key=lambda lot: lot["n"])


def _lot(lot: dict[str, Any]) -> str:
    return f'<link destination="#lot-{lot["n"]}" color="#8a3f17">{lot["n"]}</link>'


def _area_of(page: Page, lot: dict[str, Any]) -> str:
    return ", ".join(page.area(row["area"]) for row in lot["rows"][:4])
