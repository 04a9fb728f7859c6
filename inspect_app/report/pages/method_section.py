"""Rules, instruments, cautions."""

from typing import Any

from inspect_app.report.pages.doubt_words import doubt_text, explained
from inspect_app.report.pages.fit_sides import line_name
from inspect_app.report.pages.instruments_part import acceptance_part, instruments_part
from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.lot_words import ranges
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.row import Anchor, Heading, Row, paragraphs, space, together
from inspect_app.report.pages.text import line

MOST = 120  # cautions; contents.json has all
FEW = 8  # numbers told one by one; more are told as runs


def method_section(page: Page, number: str) -> list[Any]:
    """Each rule version used, in words with its source, and how things were measured."""
    story: list[Any] = [Heading(page.say("chapter.method"), "method", number=number)]
    every = {tuple(one["rulebooks"]) for one in page.contents["rules"] if one["rulebooks"]}
    same = line(next(iter(every))[0], 70) if len(every) == 1 and len(next(iter(every))) == 1 else ""
    if same:  # told once for all of them
        story.append(Row("", Paragraph(page.say("rulebook", digests=same), SMALL), 5))
    for one in page.contents["rules"]:
        rule = str(one["rule"])
        used = [page.say("rule_used", count=one["count"])] if one["count"] else []
        used += [page.say("rule_lines", count=one["lines"])] if one["lines"] else []
        told: list[Any] = [Anchor(f"rule-{rule}"), Row(line(rule, 40), Paragraph(" ".join(used), BODY), 0)]
        for part in ("formula", "source"):
            if page.voice.knows(f"rule.{rule}.{part}"):
                text = line(page.say(f"rule.{rule}.{part}"), 900)
                told.append(Row("", Paragraph(f"{page.say(part)}: {text}", SMALL), 1))
        books = ", ".join(line(book, 70) for book in one["rulebooks"][:6])
        if books and books != same:
            told.append(Row("", Paragraph(page.say("rulebook", digests=books), SMALL), 0))
        story += [together(told), space(5)]
    if not page.contents["rules"]:
        story.append(Row("", Paragraph(page.say("no_rules"), BODY), 6))
    return story + instruments_part(page) + acceptance_part(page)


def cautions_section(page: Page, number: str) -> list[Any]:
    """What this record shows against itself, then the limits of every report."""
    story: list[Any] = [Heading(page.say("chapter.cautions"), "cautions", number=number)]
    told = page.contents["cautions"]
    for one in told[:MOST]:
        story += explained(page, one, _what(page, one))
    return story + (paragraphs("", [page.say("and_more", count=len(told) - MOST)]) if len(told) > MOST else [])


def _what(page: Page, one: dict[str, Any]) -> str:
    if one["code"] in ("doubt", "fork", "chain_broken"):
        return doubt_text(page, one)
    return flag_text(page, one["facts"]) if one["code"] == "flag" else caution_text(page, one)


def flag_text(page: Page, facts: dict[str, Any]) -> str:
    """One kind of flag: what it is, how often, where, and the entries that say so, the first of many."""
    named = [name for name in ("stations", "lots", "findings") if facts[name]]
    parts = [page.say(f"flag_in.{name}", which=ranges(page, facts[name]), count=len(set(facts[name])))
             for name in named]  # fmt: skip
    by_area: dict[Any, list[int]] = {}
    for one in facts["panels"]:
        by_area.setdefault(one["area"], []).append(one["panel"])
    parts += [page.say("flag_in.panels", area=page.area(area), which=ranges(page, mine), count=len(set(mine)))
              for area, mine in by_area.items()]  # fmt: skip
    shown = ", ".join(line(one, 50 if len(facts["digests"]) < 4 else 12) for one in facts["digests"][:6])
    if len(facts["digests"]) > 6:
        shown += ", …"
    where = f" ({'; '.join(parts)})" if parts else ""
    mark = f' <font color="#646b70" size="7.3">{page.say("flag_entries", digests=shown)}</font>'
    return f"– {facts['count']} × {page.say('flag.' + str(facts['flag']))}{where}.{mark}"


def caution_text(page: Page, one: dict[str, Any]) -> str:
    """One caution in words."""
    facts = one["facts"]
    shown: dict[str, Any] = {}
    for name, value in facts.items():
        if name == "stations" or name == "photos":
            shown[name] = ranges(page, value) if len(value) > FEW else ", ".join(str(each) for each in value)
        elif name == "station":
            shown[name] = page.place(value)
        elif name == "count":
            shown[name] = value
        elif name == "line":
            shown[name] = line_name(page, value)
        elif name == "reason":
            shown[name] = page.say(f"undecodable.{value}")
        elif isinstance(value, list):
            shown[name] = ", ".join(line(each, 50) for each in value[:6])
        elif not isinstance(value, dict):
            shown[name] = line(value, 60)
    return "– " + page.say(f"caution.{one['code']}", **shown)
