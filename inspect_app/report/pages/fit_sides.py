"""The sides of a line of a fit check in words: what is asked for, what this roof has, what is to spare."""

from datetime import date
from typing import Any

from inspect_app.report.pages.page import Page
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import places

CHOICES = ("as_approved", "other")


def line_name(page: Page, name: str) -> str:
    """``Slope, as drawn``; a zone's line by its zone. A line of another release stands for itself."""
    kind, _, zone = name.partition(":")
    if kind == "zone":
        return page.say("fit.line.zone", zone=page.zone(zone))
    return line(page.say(f"fit.line.{kind}"), 80)


def sides(page: Page, one: dict[str, Any]) -> tuple[str, str, str]:
    """``(asked for, found, to spare)`` as markup; empty where the line has none."""
    pair, rule, name = one["pair"], str(one["working"]["rule"]), one["line"]
    limit = _shown(page, pair.get("limit"), rule, name)
    if pair.get("sense") == "between" and pair.get("upper"):
        limit = page.say("fit_between", low=limit, high=_shown(page, pair["upper"], rule, name))
    asked = page.say(f"fit_sense.{pair.get('sense')}", limit=limit) if limit else ""
    found = _shown(page, pair.get("found"), rule, name)
    if not found and one["result"] != "pass":  # what passes without a number of this roof needs none: a clip's zone
        found = page.say("fit_not_found")
    if pair.get("other"):
        found += "<br/>" + page.say("fit_centred", length=_shown(page, pair["other"], rule, name))
    return asked, found, _spare(page, pair, rule, name)


def _shown(page: Page, value: Any, rule: str, name: str) -> str:
    if value is None:
        return ""
    if isinstance(value, list):
        return ", ".join(_shown(page, each, rule, name) for each in value[:12])
    if isinstance(value, str):
        if value in CHOICES:
            return page.say(f"choice.{value}")
        return page.say(f"seam.{value}") if page.voice.knows(f"report.seam.{value}") else _day_or_text(page, value)
    if name == "fixed_count":
        count = line(value.get("value"), 8)
        return page.say("fit_places", count=int(count) if count.isdecimal() else count)
    return page.voice.quantity(value, _fine(page, rule, value))


def _fine(page: Page, rule: str, value: Any) -> int | None:
    """Sheet metal as finely as the gauge tables; the rest as finely as the unit is worth."""
    return places(page, "thickness", value) if rule.startswith("thickness@") else None


def _day_or_text(page: Page, value: str) -> str:
    try:
        date.fromisoformat(value)
    except ValueError:
        return line(value)
    return page.voice.day(value)


def _spare(page: Page, pair: dict[str, Any], rule: str, name: str) -> str:
    try:
        margin = float(pair["margin"]["value"])
    except (KeyError, TypeError, ValueError):
        return ""
    if pair["sense"] == "until":
        return page.say("fit_days_past" if margin < 0 else "fit_days_left", count=round(abs(margin)))
    if pair["sense"] == "equal":
        return "" if margin else page.say("fit_exact")
    shown = page.voice.quantity(pair["margin"] | {"value": repr(abs(margin))}, _fine(page, rule, pair["margin"]))
    if not any(digit in shown for digit in "123456789"):  # what is left is less than is shown
        return page.say("fit_exact")
    if margin >= 0:
        return page.say("fit_to_spare", margin=shown)
    return page.say("fit_too_much" if pair["sense"] == "at_most" else "fit_short", margin=shown)
