"""The working of a verdict in words: what came out, why, and what was put in."""

import re
from typing import Any

from inspect_app.report.number import UNITS
from inspect_app.report.pages.movement import place, side
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.text import line

PLACED = ("offset", "low", "high", "aim")  # counted from the middle, toward one end or the other
ORDER = (
    "offset",
    "bound",
    "low",
    "high",
    "aim",
    "grow",
    "shrink",
    "play",
    "longest",
    "mean",
    "reading",
    "nominal",
    "minimum",
    "base",
    "at_least",
    "at_most",
    "limit",
    "margin",
    "rise",
    "degrees",
    "percent",
    "movement",
)
SIGNED = re.compile(r"([+-]?)([0-9]+(?:\.[0-9]+)?)")
DECIMALS = re.compile(r"[+-]?[0-9]*\.([0-9]+)")
EXPANSIONS = ("/F", "/C", "/K")  # written with a power of ten, all their digits
MOST_DIGITS = 6
# What a released rule takes where nothing was entered: without it a reader cannot do the sum of the bound again.
ASSUMED = {
    "slot@1": {"tap_error": {"value": "3", "unit": "px"}, "head_height": {"value": "0.06", "unit": "in"},
               "tilt": {"value": "20", "unit": "deg"}},
    "clip@1": {"uncertainty": {"value": "0.0625", "unit": "in"}},
}  # fmt: skip
UNSEEN = ("taps", "gaps")  # drawn above, not listed as numbers


def values_text(page: Page, working: dict[str, Any]) -> str:
    """``offset 0.287 in toward the ridge; bound 0.041 in; …``"""
    values, rule = working["values"], str(working["rule"]).split("@")[0]
    names = [name for name in ORDER if name in values] + sorted(set(values) - set(ORDER) - {"toward_ridge"})
    told = []
    for name in names[:24]:
        if rule in ("slot", "clip") and name in PLACED:
            shown = line(place(values[name], working["inputs"], page.voice))
        else:
            shown = page.voice.quantity(values[name], _places(page, rule, values[name]))
        told.append(f"{line(page.say(f'value.{name}'), 40)} <b>{shown}</b>")
    return "; ".join(told)


def inputs_text(page: Page, working: dict[str, Any]) -> str:
    """What was put in, to the last digit recorded: whoever does the sum again needs them all."""
    told = []
    for name in sorted(working["inputs"]):
        value = working["inputs"][name]
        if name in UNSEEN or value is None:
            continue
        shown = page.voice.quantity(value, _digits(value)) if isinstance(value, dict) else _plain(page, value)
        told.append(f"{line(page.say(f'input.{name}'), 40)} {shown}")
    return "; ".join([*told[:30], *_taps(page, working["inputs"].get("taps")), *_taken(page, working)])


def _taps(page: Page, taps: Any) -> list[str]:
    """The three places that were tapped on the photo, in its pixels."""
    try:
        points = {name: ", ".join(line(one, 12) for one in taps[name]) for name in ("ridge_end", "eave_end", "screw")}
    except (TypeError, KeyError):
        return []
    return [page.say("taps", **points)]


def _taken(page: Page, working: dict[str, Any]) -> list[str]:
    """What the rule took because nothing was entered."""
    rule, given = str(working["rule"]), working["inputs"]
    left = [name for name in ASSUMED.get(rule, {}) if given.get(name) is None]
    if not left or (rule == "slot@1" and not given.get("taps")):  # other ways of reading a slot need none of it
        return []
    told = [f"{page.say(f'input.{name}')} {page.voice.quantity(ASSUMED[rule][name], _digits(ASSUMED[rule][name]))}"
            for name in left]  # fmt: skip
    return [page.say("taken", things="; ".join(told))]


def reading_text(page: Page, answer: dict[str, Any]) -> str:
    """The number that was read or counted; empty for taps (they are drawn) and where nothing was read."""
    reading = answer["reading"]
    if not isinstance(reading, dict):
        return ""
    if isinstance(reading.get("value"), dict):
        return f"<b>{_measured(page, reading['value'], answer['working'] or {})}</b>"
    if isinstance(reading.get("gaps"), list):
        gaps = [one for one in reading["gaps"] if isinstance(one, dict)]
        return ", ".join(page.voice.quantity(one, _digits(one)) for one in gaps[:24]) + ("…" if gaps[24:] else "")
    if isinstance(reading.get("count"), int):
        count = f"<b>{reading['count']}</b>"
        over = reading.get("over")
        return page.say("counted_over", number=count, length=page.voice.quantity(over)) if over else count
    return ""


def _measured(page: Page, value: dict[str, Any], working: dict[str, Any]) -> str:
    """What was read; a tab's place with its side, since its sign means the ridge only to who knows the rule."""
    found, inputs = SIGNED.fullmatch(str(value.get("value"))), working.get("inputs") or {}
    tab = str(working.get("rule")).startswith("clip@") and inputs.get("tab") == value and inputs.get("station")
    if not tab or not found:
        return page.voice.quantity(value, _digits(value))
    size = value | {"value": found[2]}
    ridgeward = float(found[2]) * (-1 if found[1] == "-" else 1)
    return side(ridgeward, page.voice.quantity(size, _digits(size)), page.voice)


def reason_text(page: Page, working: dict[str, Any]) -> str:
    """Why the verdict is what it is, in the rulebook's words where they are known."""
    reason = working["reason"] or {}
    code = reason.get("code")
    if not code:
        return ""
    facts = {}
    for name, value in (reason.get("facts") or {}).items():
        if name == "input":
            facts[name] = line(page.say(f"input.{value}"), 40)
        else:
            facts[name] = page.voice.quantity(value) if isinstance(value, dict) else line(value, 60)
    if page.voice.knows(f"reason.{code}"):
        return page.say(f"reason.{code}", **facts)
    told = ", ".join(f"{line(name, 20)} {value}" for name, value in sorted(facts.items()))
    return line(str(code).replace("_", " "), 60) + (f" ({told})" if told else "")


def _plain(page: Page, value: Any) -> str:
    if isinstance(value, bool):
        return page.say("yes" if value else "no")
    if isinstance(value, list):
        return ", ".join(page.voice.quantity(one) if isinstance(one, dict) else line(one, 20) for one in value[:24])
    return line(value, 60)


def _places(page: Page, rule: str, value: Any) -> int | None:
    """Computed lengths to a thousandth of an inch or a hundredth of a millimetre; sheet metal one place finer, as
    the gauge tables are."""
    unit = value.get("unit") if isinstance(value, dict) else None
    if unit not in ("in", "mm"):
        return None
    return (3 if page.voice.units == "US" else 2) + (rule == "thickness")


def _digits(value: dict[str, Any]) -> int | None:
    """The decimals that were recorded, where the unit's usual ones would drop some; None for the usual."""
    found, unit = DECIMALS.fullmatch(str(value.get("value"))), str(value.get("unit", ""))
    usual = UNITS.get(unit, ("", 3))[1]
    return len(found[1]) if found and unit not in EXPANSIONS and usual < len(found[1]) <= MOST_DIGITS else None
