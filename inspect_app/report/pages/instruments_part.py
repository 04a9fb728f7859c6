"""How far each instrument may be off and who says so, what was read with them, and how near readings were accepted."""

from typing import Any

from inspect_app.report.number import number
from inspect_app.report.pages.fit_sides import line_name
from inspect_app.report.pages.look import SMALL
from inspect_app.report.pages.lot_words import ranges
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.row import Columns, Heading, Row, paragraphs, space, together
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import digits, percent

SHARES = (0.34, 0.22, 0.44)
MOST = 20  # names of one rule; the rest is counted, and contents.json has all


def instruments_part(page: Page) -> list[Any]:
    """The readings by instrument, then every stated uncertainty with its origin."""
    story: list[Any] = [Heading(page.say("instruments"), "instruments", 1)]
    metal = [one for one in page.contents["instruments"] if one["instrument"] == "metal_temperature"]
    texts = [_instrument(page, one) for one in page.contents["instruments"] if one not in metal]
    texts += _metal(page, metal)
    story += paragraphs("", texts or [page.say("no_instruments")])
    rows = [
        Columns("", [page.say(f"instrument_name.{one['instrument']}"),
                     "± " + _bound(page, one["uncertainty"]),
                     _origin(page, one)], SHARES)
        for one in page.contents["uncertainties"]
    ]  # fmt: skip
    if rows:
        head = [page.say("instrument"), page.say("may_be_off"), page.say("who_says")]
        story += [space(5), together([Columns("", head, SHARES, SMALL), *rows]), space(3)]
        story.append(Row("", Paragraph(page.say("may_be_off_says"), SMALL)))
    return story


def _bound(page: Page, bound: dict[str, Any]) -> str:
    """As it was stated, to its last digit; in the report's units before that where those are others."""
    stated = line(number(bound.get("value"), str(bound.get("unit", "")), digits(bound)))
    return f"{page.voice.short(bound)} ({stated})" if page.voice.converted(bound) else stated


def _origin(page: Page, one: dict[str, Any]) -> str:
    if not one["own"]:
        return page.say("origin_ours.level" if one["instrument"] == "level" else "origin_ours")
    source = line(one["source"]) + page.recorded() if one["source"] else page.say("not_stated")
    return page.say("origin_job", source=source)


def _metal(page: Page, told: list[dict[str, Any]]) -> list[str]:
    """How each walk read the metal; walks that read it alike as one."""
    alike: dict[tuple[str, str], list[int]] = {}
    for one in told:
        by = page.say("metal_by." + str(one["by"])) if one["by"] else page.say("not_recorded")
        bound = page.voice.quantity(one["uncertainty"]) if one["uncertainty"] else page.say("not_recorded")
        alike.setdefault((line(by, 90), bound), []).append(one["walk"])
    return [
        "– " + page.say("instrument.metal_temperature" + (".several" if walks[1:] else ""), walk=ranges(page, walks),
                        by=by, bound=bound)
        for (by, bound), walks in alike.items()
    ]  # fmt: skip


def _instrument(page: Page, one: dict[str, Any]) -> str:
    return "– " + page.say(f"instrument.{one['instrument']}", count=one["count"])


def acceptance_part(page: Page) -> list[Any]:
    """What the job says, then each way that was used: how many readings, which, and what it risks."""
    told = page.contents["acceptance"]
    if not told["readings"]:
        return []
    story: list[Any] = [Heading(page.say("acceptance"), "acceptance", 1)]
    story += paragraphs("", [page.say(f"acceptance_job.{told['job'] or 'none'}")])
    ways = (("guarded", "guarded", True), ("simple", "simple", True), ("simple", "untold", False))
    for used, word, known in ways:
        own = [one for one in told["readings"] if (one["used"], one["known"]) == (used, known)]
        if own:
            text = f"{page.say(f'accepted_says.{word}')} {_readings(page, own)}"
            story += paragraphs(page.say(f"accepted_label.{word}"), [text])
    return story


def _readings(page: Page, own: list[dict[str, Any]]) -> str:
    """Rule by rule: how many, where, and the greatest risk that was computed."""
    rules: dict[str, list[dict[str, Any]]] = {}
    for one in own:
        rules.setdefault(str(one["rule"]), []).append(one)
    told = [
        page.say("accepted_of_rule", rule=line(rule, 40), count=len(rules[rule]), where=_where(page, rules[rule]))
        for rule in sorted(rules)
    ]
    small = f'<font color="#646b70" size="7.3">{"; ".join(told)}</font>'
    return page.say("accepted_readings", count=len(own), readings=small)


def _where(page: Page, own: list[dict[str, Any]]) -> str:
    places = [one["station"] for one in own if one.get("station")]
    parts = [page.say("accepted_places", which=ranges(page, places), count=len(set(places)))] if places else []
    for one in own:
        if "area" in one:
            parts.append(f"{page.area(one['area'])}, {line_name(page, one['line'])}")
        elif not one["station"]:
            parts.append(page.area(one["on"]) if one["on"] else page.say("whole_walk"))
    named = [part for at, part in enumerate(parts) if part not in parts[:at]]
    if len(named) > MOST:
        named = [*named[:MOST], page.say("and_more", count=len(named) - MOST)]
    risks = sorted((float(one["risk"]), one["risk"]) for one in own if one["risk"] is not None)
    if risks:
        named.append(page.say("accepted_risk", risk=percent(risks[-1][1])))
    return "; ".join(named)
