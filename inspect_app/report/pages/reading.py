"""What was read, counted or felt, by its instrument, in words; and the metal's temperature that goes with it."""

import re
from itertools import groupby
from typing import Any

from inspect_app.report.pages.movement import side
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import digits

SIGNED = re.compile(r"([+-]?)([0-9]+(?:\.[0-9]+)?)")


def reading_text(page: Page, answer: dict[str, Any]) -> str:
    """The reading; empty for taps without a card (they are drawn) and where nothing was read."""
    reading = answer["reading"]
    if not isinstance(reading, dict):
        return ""
    if isinstance(reading.get("value"), dict):
        return _value(page, answer, reading)
    if isinstance(reading.get("gaps"), list):
        gaps = [one for one in reading["gaps"] if isinstance(one, dict)]
        alike = groupby(page.voice.quantity(one, digits(one)) for one in gaps[:24])
        runs = [(len(list(same)), gap) for gap, same in alike]
        return ", ".join(f"{count} × {gap}" if count > 1 else gap for count, gap in runs) + ("…" if gaps[24:] else "")
    if isinstance(reading.get("count"), int):
        return _count(page, reading)
    if isinstance(reading.get("readings"), list):
        told = page.say("slopes_read", count=len(reading["readings"]))
        turned = reading.get("reversed")
        return told + (page.say("slopes_turned", count=len(turned)) if isinstance(turned, list) else "")
    return page.say("card_beside") if reading.get("card") else ""


def metal_text(page: Page, answer: dict[str, Any]) -> str:
    """The metal's temperature that was read for this very answer; empty where the walk's holds."""
    reading = answer["reading"] if isinstance(answer["reading"], dict) else {}
    metal, age = reading.get("metal_temperature"), reading.get("metal_age")
    if not isinstance(metal, dict):
        return ""
    text = page.voice.quantity(metal, digits(metal))
    if isinstance(reading.get("metal_uncertainty"), dict):
        text += f" ± {page.voice.quantity(reading['metal_uncertainty'])}"
    if reading.get("metal_by"):
        text += f", {line(page.say('metal_by.' + str(reading['metal_by'])), 60)}"
    if isinstance(age, int):
        key, count = ("metal_seconds", age) if age < 120 else ("metal_minutes", age // 60)
        text += f", {page.say(key, count=count)}"
    return text


def _value(page: Page, answer: dict[str, Any], reading: dict[str, Any]) -> str:
    value = reading["value"]
    shown = f"<b>{_measured(page, value, answer['working'] or {})}</b>"
    if answer["instrument"] == "feeler":
        entered = any(digit in str(value.get("value")) for digit in "123456789")
        return page.say("feeler_entered", blade=shown) if entered else page.say("feeler_none")
    if isinstance(reading.get("coated"), bool):
        shown += ", " + page.say("metal_coated" if reading["coated"] else "metal_bare")
        if isinstance(reading.get("coating"), dict):
            shown += ", " + page.say("coating_is", amount=page.voice.quantity(reading["coating"],
                                                                              digits(reading["coating"])))  # fmt: skip
    return shown


def _count(page: Page, reading: dict[str, Any]) -> str:
    count = f"<b>{reading['count']}</b>"
    if isinstance(reading.get("of"), int):
        return page.say("counted_of", number=count, of=reading["of"])
    over = reading.get("over")
    return page.say("counted_over", number=count, length=page.voice.quantity(over)) if over else count


def _measured(page: Page, value: dict[str, Any], working: dict[str, Any]) -> str:
    """What was read; a tab's place with its side, since its sign means the ridge only to who knows the rule."""
    found, inputs = SIGNED.fullmatch(str(value.get("value"))), working.get("inputs") or {}
    tab = str(working.get("rule")).startswith("clip@") and inputs.get("tab") == value and inputs.get("station")
    if not tab or not found:
        return page.voice.quantity(value, digits(value))
    size = value | {"value": found[2]}
    ridgeward = float(found[2]) * (-1 if found[1] == "-" else 1)
    return side(ridgeward, page.voice.quantity(size, digits(size)), page.voice)
