"""A warranty survey: the place, what people were asked, the approval of that day, neighbors, and what nobody saw."""

from typing import Any

from inspect_app.report.pages.cells import Cells
from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.lot_words import ranges
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.row import Drawing, Heading, Row, paragraphs, room, space, together
from inspect_app.report.pages.survey_asked import asked_parts
from inspect_app.report.pages.survey_figure import PLAN_TALL, draw_place
from inspect_app.report.pages.survey_wear import wear_parts
from inspect_app.report.pages.text import line

MOST = 30  # days of setting, and drawn places not looked at; what is beyond is counted
BESIDE_TALL = 170.0  # heading, note and five rows of two lines: they stand on one page
BESIDE = (0.1, 0.28, 0.3, 0.16, 0.16)


def survey_section(page: Page, number: str) -> list[Any]:
    """All but the chronicle, which has a chapter of its own."""
    told = page.contents["survey"]
    story: list[Any] = [Heading(page.say("chapter.survey"), "survey", number=number)]
    story += paragraphs(page.say("survey.place"), [_place(page, told["place"])])
    if told["place"]["drawn"]:
        alt = page.say("survey.alt.place", panel=told["place"]["panel"])
        story.append(Row("", Drawing(PLAN_TALL, lambda canvas, width, tall: draw_place(
            canvas, width, tall, page), 4, alt)))  # fmt: skip
    story += paragraphs("", [page.say("survey.place.what")], SMALL)
    story += asked_parts(page)
    story += _approved(page, told["set"])
    story += _beside(page, told["beside"])
    story += wear_parts(page)
    return [*story, *_unseen(page, told["unseen"]), space(6)]


def _place(page: Page, place: dict[str, Any]) -> str:
    where = page.where({**place, "zone": place["zone"] or page.say("survey.zone.unknown")})
    return where + " · " + page.say("survey.radius.is", radius=page.voice.quantity(place["radius"]))


def _approved(page: Page, days: list[dict[str, Any]]) -> list[Any]:
    story: list[Any] = [Heading(page.say("survey.approved"), "survey-approved", 1)]
    if not days:
        return [*story, *paragraphs("", [page.say("survey.set.unknown")])]
    for one in days[:MOST]:
        label = page.say("survey.set.day", day=page.voice.day(one["day"]))
        texts = [page.say("survey.set.by." + one["by"], crew=line(one["crew"] or "—", 40), area=page.area(one["area"]),
                          panels=ranges(page, _numbers(one["panels"])))]  # fmt: skip
        texts += _assembly(page, one["assembly"])
        texts += [page.say("survey.material", what=line(row["what"], 60)) for row in one["materials"][:6]]
        metal = [page.voice.quantity(row["temperature"]) for row in one["metal"][:6]]
        texts.append(page.say("survey.metal", metal=", ".join(metal)) if metal else page.say("survey.metal.none"))
        story.append(together(paragraphs(label, texts)))
    if len(days) > MOST:
        story += paragraphs("", [page.say("survey.more", n=len(days) - MOST)], SMALL)
    return story


def _assembly(page: Page, one: dict[str, Any]) -> list[str]:
    if one["from"] is None:
        return [page.say("survey.approval.none")]
    texts = [page.say("survey.approval", name=line(one["name"], 60), reference=line(
        one["approval"].get("reference") or "—", 60)) + " " + page.say(f"survey.from.{one['from']}")]  # fmt: skip
    judged = one["in_force"] or {}
    if "refused" in judged:
        texts.append(page.say("survey.in_force.unread"))
    else:
        why = judged.get("reason")
        said = page.say(f"survey.in_force.{judged.get('verdict')}")
        texts.append(said + (" " + page.say(f"reason.{why['code']}") if why else ""))
    if one["changed"]:
        names = ", ".join(page.say(f"survey.member.{name}") for name in one["changed"][:20])
        texts.append(page.say("survey.changed_since", what=names))
    return texts


def _numbers(runs: list[list[int]]) -> list[int]:
    return [number for low, high in runs for number in range(low, high + 1)]


def _beside(page: Page, rows: list[dict[str, Any]]) -> list[Any]:
    head = [page.say(f"survey.beside.{name}") for name in ("panel", "state", "set", "looked", "findings")]
    numbers = {one["id"]: one["n"] for one in page.contents["findings"]}
    own = page.contents["survey"]["place"]["panel"]
    body = [
        [
            f"<b>{one['panel']} ◂</b>" if one["panel"] == own else str(one["panel"]),
            page.say(f"coverage.{one['state']}") if one["state"] else "—",
            "; ".join(f"{page.voice.day(day['day'])}, {line(day['crew'] or '—', 24)}" for day in one["set"]) or "—",
            str(one["looked"]) + (page.say("survey.beside.away", n=one["not_reached"]) if one["not_reached"] else ""),
            ", ".join(page.to("finding", numbers[key]) for key in one["findings"] if key in numbers) or "—",
        ]
        for one in rows
    ]  # fmt: skip
    return [room(BESIDE_TALL), Heading(page.say("survey.beside"), "survey-beside", 1),
            Row("", Paragraph(page.say("survey.beside.what"), SMALL), 3), Cells(head, body, BESIDE)]  # fmt: skip


def _unseen(page: Page, told: dict[str, Any]) -> list[Any]:
    story: list[Any] = [Heading(page.say("survey.unseen"), "survey-unseen", 1)]
    text = page.say("survey.places.unknown")
    if told["places"] is not None:
        places = told["places"]
        text = page.say("survey.places", there=places["there"], seen=places["looked_at"], left=places["left"])
    story += paragraphs(page.say("survey.places.label"), [text])
    states: dict[str, list[str]] = {}
    for run in told["panels"]:
        named = ranges(page, list(range(run["from"], run["to"] + 1)))
        states.setdefault(run["state"], []).append(f"{page.area(run['area'])} {named}")
    texts = [f"{page.say('coverage.' + state)}: {'; '.join(rows[:20])}" for state, rows in states.items()]
    story += paragraphs(page.say("survey.panels"), texts or [page.say("survey.panels.unknown")])
    drawn = [
        page.say("survey.drawn", area=page.area(one["area"]), panel=one["panel"],
                 state=page.say(f"drawn.{one['state']}"))
        for one in told["drawn"]
    ]  # fmt: skip
    more = [page.say("survey.more", n=len(drawn) - MOST)] if len(drawn) > MOST else []
    story += paragraphs(page.say("survey.drawn.label"), [*drawn[:MOST], *more] or [page.say("survey.drawn.none")])
    return [*story, Row("", Paragraph(page.say("survey.unseen.what"), BODY))]
