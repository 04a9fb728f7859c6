"""Rules, instruments, cautions."""

from typing import Any

from reportlab.platypus import Paragraph

from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.row import Heading, Row, paragraphs, space, together
from inspect_app.report.pages.text import line


def method_section(page: Page, number: str) -> list[Any]:
    """Each rule version used, in words with its source, and how things were measured."""
    story: list[Any] = [Heading(page.say("chapter.method"), "method", number=number)]
    for one in page.contents["rules"]:
        rule = str(one["rule"])
        told: list[Any] = [Row(line(rule, 40), Paragraph(page.say("rule_used", count=one["count"]), BODY), 0)]
        for part in ("formula", "source"):
            if page.voice.knows(f"rule.{rule}.{part}"):
                text = line(page.say(f"rule.{rule}.{part}"), 900)
                told.append(Row("", Paragraph(f"{page.say(part)}: {text}", SMALL), 1))
        books = ", ".join(line(book, 70) for book in one["rulebooks"][:6])
        if books:
            told.append(Row("", Paragraph(page.say("rulebook", digests=books), SMALL), 0))
        story += [together(told), space(5)]
    if not page.contents["rules"]:
        story.append(Row("", Paragraph(page.say("no_rules"), BODY), 6))
    story += [Heading(page.say("instruments"), "instruments", 1)]
    texts = [_instrument(page, one) for one in page.contents["instruments"]]
    story += paragraphs("", texts or [page.say("no_instruments")])
    return story


def _instrument(page: Page, one: dict[str, Any]) -> str:
    if one["instrument"] == "metal_temperature":
        by = page.say("metal_by." + str(one["by"])) if one["by"] else page.say("not_recorded")
        bound = page.voice.quantity(one["uncertainty"]) if one["uncertainty"] else page.say("not_recorded")
        return "– " + page.say("instrument.metal_temperature", walk=one["walk"], by=line(by, 90), bound=bound)
    return "– " + page.say(f"instrument.{one['instrument']}", count=one["count"])


def cautions_section(page: Page, number: str) -> list[Any]:
    """What this record shows against itself, then the limits of every report."""
    story: list[Any] = [Heading(page.say("chapter.cautions"), "cautions", number=number)]
    texts = [caution_text(page, one) for one in page.contents["cautions"]]
    most = 120
    if len(texts) > most:
        texts = [*texts[:most], page.say("and_more", count=len(texts) - most)]
    return story + paragraphs("", texts)


def caution_text(page: Page, one: dict[str, Any]) -> str:
    """One caution in words."""
    facts = one["facts"]
    shown: dict[str, Any] = {}
    for name, value in facts.items():
        if name == "stations" or name == "photos":
            shown[name] = ", ".join(str(each) for each in value[:60]) + ("…" if len(value) > 60 else "")
        elif name == "station":
            shown[name] = page.place(value)
        elif name == "count":
            shown[name] = value
        elif name == "reason":
            shown[name] = page.say(f"undecodable.{value}")
        elif name == "flag":
            shown[name] = page.say(f"flag.{value}")
        elif isinstance(value, list):
            shown[name] = ", ".join(line(each, 50) for each in value[:6])
        elif not isinstance(value, dict):
            shown[name] = line(value, 60)
    return "– " + page.say(f"caution.{one['code']}", **shown)
