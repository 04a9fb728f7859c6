"""Rules, instruments, cautions."""

from typing import Any

from reportlab.platypus import Paragraph

from inspect_app.report.pages.fit_sides import line_name
from inspect_app.report.pages.instruments_part import acceptance_part, instruments_part
from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.row import Heading, Row, paragraphs, space, together
from inspect_app.report.pages.text import line


def method_section(page: Page, number: str) -> list[Any]:
    """Each rule version used, in words with its source, and how things were measured."""
    story: list[Any] = [Heading(page.say("chapter.method"), "method", number=number)]
    for one in page.contents["rules"]:
        rule = str(one["rule"])
        used = [page.say("rule_used", count=one["count"])] if one["count"] else []
        used += [page.say("rule_lines", count=one["lines"])] if one["lines"] else []
        told: list[Any] = [Row(line(rule, 40), Paragraph(" ".join(used), BODY), 0)]
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
    return story + instruments_part(page) + acceptance_part(page)


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
        elif name == "line":
            shown[name] = line_name(page, value)
        elif name == "reason":
            shown[name] = page.say(f"undecodable.{value}")
        elif name == "flag":
            shown[name] = page.say(f"flag.{value}")
        elif isinstance(value, list):
            shown[name] = ", ".join(line(each, 50) for each in value[:6])
        elif not isinstance(value, dict):
            shown[name] = line(value, 60)
    return "– " + page.say(f"caution.{one['code']}", **shown)
