"""Words of a day's record: what was pressed is said in the report's language, what was typed stands as it is."""

from typing import Any

from inspect_app.report.pages.page import Page
from inspect_app.report.pages.text import line

FINE = 4  # places of a sheet's thickness in inches: a gauge's published minimum has so many


def worded(page: Page, group: str, text: Any) -> str:
    """``rain`` → ``rain``, ``lluvia``; several pressed with typed words behind them are parted by ``; ``."""
    parts = []
    for part in str(text or "").split("; "):
        key = f"day_record.{group}.{part}"
        parts.append(page.say(key) if page.voice.knows(key) else line(part, 600))
    return "; ".join(part for part in parts if part)


def at_hour(at: Any) -> str:
    """``07:30`` of an entry's or a row's moment, by the site's clock."""
    return line(str(at)[11:16] if len(str(at)) > 5 else at, 5)


def against_approval(page: Page, material: dict[str, Any]) -> list[str]:
    """What came of holding a label to each approved assembly, as sentences; what is lighter stands out."""
    told = []
    names = {one["id"]: one["name"] for one in page.contents["assemblies"]}
    for one in material["compared"]:
        says = [_gauge(page, one["gauge"]), _coating(page, one["coating"])]
        where = page.say("day_record.against", assembly=line(names.get(one["assembly"]) or one["assembly"], 60))
        told.append(f"{where}: {' '.join(says)}")
    return told


def _gauge(page: Page, gauge: dict[str, Any]) -> str:
    facts = {name: line(gauge[name] or "—", 20) for name in ("told", "system", "approved", "approved_system")}
    code = gauge["because"] or "agree"
    least, wanted = (page.voice.quantity(gauge["values"].get(name), FINE) for name in ("minimum", "tested_minimum"))
    against = page.say(f"day_record.gauge.against.{gauge['against']}")
    text = page.say(f"day_record.gauge.{code}", **facts, least=least, wanted=wanted, against=against)
    return f"<b>◆ {text}</b>" if code == "lighter" else text


def _coating(page: Page, coating: dict[str, Any]) -> str:
    facts = {name: line(coating[name] or "—", 60) for name in ("told", "approved")}
    text = page.say(f"day_record.coating.{coating['because'] or 'agree'}", **facts)
    return f"<b>◇ {text}</b>" if coating["because"] == "differs" else text
