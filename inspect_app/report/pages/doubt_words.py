"""A doubt in a report's words: what happened, and under it what it means and what to do. The texts are the phone's."""

from typing import Any

from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.row import Row
from inspect_app.report.pages.text import line

# A caution's code → the doubt whose words explain it; a flag's are under its own name.
EXPLAINED = {"fork": "fork", "chain_broken": "unlinked", "unresolved": "versions", "kept_apart": "kept_apart"}
DAY, YEAR = 1440, 525_960  # minutes


def doubt_text(page: Page, one: dict[str, Any]) -> str:
    """What happened, the key where it is one key's, and the entries that say so."""
    facts = one["facts"]
    code = facts.get("doubt") or EXPLAINED[one["code"]]
    shown = ", ".join(line(one, 50 if len(facts["digests"]) < 4 else 12) for one in facts["digests"][:6])
    marks = [page.say("doubt.key", key=line(facts["kid"], 50))] if facts.get("kid") else []
    marks += [page.say("flag_entries", digests=shown)] if shown else []
    small = f' <font color="#646b70" size="7.3">{" ".join(marks)}</font>' if marks else ""
    return f"– {page.say(f'doubt.{code}.what', **_said(page, facts))}{small}"


def explained(page: Page, one: dict[str, Any], text: str) -> list[Any]:
    """The rows of one caution: ``text``, then its explanation in small print where there is one."""
    facts = one["facts"]
    code = facts.get("flag") or facts.get("doubt") or EXPLAINED.get(one["code"])
    rows: list[Any] = [Row(None, Paragraph(text, BODY))]
    if code and page.voice.knows(f"doubt.{code}.means"):
        said = _said(page, facts)
        for part, name, after in (("means", "doubt.meaning", 1), ("do", "doubt.to_do", 7)):
            told = page.say(f"doubt.{code}.{part}", **said)
            rows.append(Row(None, Paragraph(f"<b>{page.say(name)}:</b> {told}", SMALL), after))
    return rows


def _said(page: Page, facts: dict[str, Any]) -> dict[str, Any]:
    who = facts.get("who") or page.say("doubt.nobody")
    names = who if isinstance(who, list) else [who]
    kind, minutes = facts.get("kind"), facts.get("minutes")
    thing = [page.say(f"kind.{kind}"), line(facts.get("name") or "", 60)] if kind else []
    return {
        "who": page.say("doubt.and").join(line(name, 60) for name in names),
        "n": facts.get("n") or facts.get("both") or facts.get("count") or "", "seq": facts.get("seq", ""),
        "thing": " · ".join(filter(None, thing)),
        "place": page.say("doubt.panel", area=line(facts.get("area") or "—", 60), panel=facts.get("panel", "—")),
        "apart": _span(page, int(minutes)) if isinstance(minutes, int) else "",
    }  # fmt: skip


def _span(page: Page, minutes: int) -> str:
    if minutes < 60:
        return page.say("doubt.span.minutes", n=minutes)
    if minutes < 2 * DAY:
        return page.say("doubt.span.hours", h=minutes // 60, m=minutes % 60)
    if minutes < 2 * YEAR:
        return page.say("doubt.span.days", n=round(minutes / DAY))
    return page.say("doubt.span.years", n=round(minutes / YEAR))
