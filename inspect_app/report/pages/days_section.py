"""The days: each crew's under its ten letters; then walk by walk, with the answers given for the whole of one."""

from typing import Any

from inspect_app.report.pages.answer_block import answer_block, answer_link
from inspect_app.report.pages.daily_part import crew_days
from inspect_app.report.pages.look import BODY
from inspect_app.report.pages.lot_words import laid_run
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.place_row import answer_row, is_short
from inspect_app.report.pages.row import Heading, Row, room, space, together
from inspect_app.report.pages.set_part import panels_set
from inspect_app.report.pages.text import line


def days_section(page: Page, number: str) -> list[Any]:
    """One part for each day of each crew, then one for each walk."""
    story: list[Any] = [room(220), Heading(page.say("chapter.days"), "days", number=number), *crew_days(page)]
    if not page.contents["days"]:
        return [*story, Row("", Paragraph(page.say("no_walks"), BODY), 8)]
    answers = {answer["id"]: answer for answer in page.contents["answers"]}
    for day in page.contents["days"]:
        story += _day(page, day, answers)
    return story + panels_set(page)


def _day(page: Page, day: dict[str, Any], answers: dict[str, Any]) -> list[Any]:
    title = page.say(
        "walk_head",
        n=day["n"],
        day=page.voice.day(day["at"]),
        title=line(page.voice.both(day["definition"]["title"], page.say("definition_unknown"))),
    )
    rows = [
        (page.say("opened"), f"{page.voice.moment(day['at'])} · {page.voice.person(day['by'])}"),
        (page.say("crew"), _crew(page, day)),
        (page.say("weather"), _weather(page, day)),
        (page.say("metal"), _metal(page, day)),
        (page.say("safety"), _safety(page, day)),
    ]
    if day["placed"] or not page.contents["lots"]:  # else the marks say it, further down
        rows.append((page.say("laid"), _laid(page, day)))
    if day["independent"] is not None:
        rows.append((page.say("independence"), page.say("independent" if day["independent"] else "not_independent")))
    head = [Heading(title, f"walk-{day['n']}", 1, title)]
    head += [Row(label, Paragraph(text, BODY)) for label, text in rows]
    story: list[Any] = [together(head)]
    own = [answers[name] for name in day["answers"]]
    for one in own:
        computed = bool((one["working"] or {}).get("values"))  # a reader may do its sum again
        short = is_short(one) and not computed
        if one["finding"]:
            story.append(answer_link(page, one))
        else:
            story += [answer_row(page, one, day)] if short else [*answer_block(page, one), space(3)]
    return [*story, space(5)]


def _safety(page: Page, day: dict[str, Any]) -> str:
    if day["fall_protection"] == "not_on_roof":
        return page.say("safety_not_on_roof")
    return page.say("safety_confirmed" if day["fall_protection"] == "confirmed" else "safety_none")


def _crew(page: Page, day: dict[str, Any]) -> str:
    crew = line(day["crew"]) if day["crew"] else page.say("not_recorded")
    return f"{crew} · {page.say('people', count=day['head_count'])}" if isinstance(day["head_count"], int) else crew


def _weather(page: Page, day: dict[str, Any]) -> str:
    weather = day["weather"]
    parts = [
        page.say(f"sky.{weather['sky']}") if weather.get("sky") else "",
        page.say("wind_is", wind=page.say(f"wind.{weather['wind']}")) if weather.get("wind") else "",
        page.say("air_is", amount=page.voice.quantity(weather["air"])) if weather.get("air") else "",
    ]
    return ", ".join(line(part, 80) for part in parts if part) or page.say("not_recorded")


def _metal(page: Page, day: dict[str, Any]) -> str:
    if not day["metal_temperature"]:
        return page.say("metal_not_read" if day["fall_protection"] == "not_on_roof" else "not_recorded")
    text = page.voice.quantity(day["metal_temperature"])
    if day["metal_uncertainty"]:
        text += f" ± {page.voice.quantity(day['metal_uncertainty'])}"
    return (
        f"{text}, {page.say('metal_by.' + str(day['metal_temperature_by']))}" if day["metal_temperature_by"] else text
    )


def _laid(page: Page, day: dict[str, Any]) -> str:
    runs = [
        f"{line(one['name'], 60)}: {laid_run(page, one['from'], one['to'])}"
        for one in day["placed"][:30]
    ]
    return "; ".join(runs) or page.say("laid_none")
