"""The working of a verdict in words: what came out, why, and what was put in."""

import re
from typing import Any

from inspect_app.report.number import UNITS, number
from inspect_app.report.pages.movement import place
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.text import line

PLACED = ("offset", "low", "high", "aim")  # counted from the middle, toward one end or the other
ORDER = (
    "offset",
    "bound",
    "count",
    "of",
    "share",
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
    "spread",
    "own_error",
    "movement",
    "risk",
)
SHARES = ("risk", "share", "acceptance")  # of one; printed in percent, as are all values of a bound of shares
DECIMALS = re.compile(r"[+-]?[0-9]*\.([0-9]+)")
EXPANSIONS = ("/F", "/C", "/K")  # written with a power of ten, all their digits
MOST_DIGITS = 6
# What a released rule takes where nothing was entered: without it a reader cannot do the sum of the bound again.
ASSUMED = {
    "slot@1": {"tap_error": {"value": "3", "unit": "px"}, "head_height": {"value": "0.06", "unit": "in"},
               "tilt": {"value": "20", "unit": "deg"}},
    "clip@1": {"uncertainty": {"value": "0.0625", "unit": "in"}},
}  # fmt: skip
ASSUMED |= {"slot@2": ASSUMED["slot@1"], "clip@2": ASSUMED["clip@1"]}
UNSEEN = ("taps", "card", "gaps", "readings", "reversed")  # drawn or told above, not listed as numbers
CHOSEN = ("acceptance", "third", "end_hidden", "deck", "underlayment", "seam", "seams")  # one of our words


def values_text(page: Page, working: dict[str, Any], result: object) -> str:
    """``offset 0.287 in toward the ridge; bound 0.041 in; …``; the risk of a wrong pass only where it is one."""
    values, rule = working["values"], str(working["rule"]).split("@")[0]
    names = [name for name in ORDER if name in values] + sorted(set(values) - set(ORDER) - {"toward_ridge", "because"})
    told = []
    for name in [one for one in names if one != "risk" or result == "pass"][:24]:
        if rule in ("slot", "clip") and name in PLACED:
            shown = line(place(values[name], working["inputs"], page.voice))
        elif name in SHARES or rule == "share_bound":
            shown = percent(values[name])
        else:
            shown = page.voice.quantity(values[name], places(page, rule, values[name]))
        told.append(f"{line(_named(page, 'value', rule, name), 40)} <b>{shown}</b>")
    return "; ".join(told)


def inputs_text(page: Page, working: dict[str, Any]) -> str:
    """What was put in, to the last digit recorded: whoever does the sum again needs them all."""
    return "; ".join(text for _, text in inputs_named(page, working))


def inputs_named(page: Page, working: dict[str, Any], without: tuple[str, ...] = ()) -> list[tuple[str, str]]:
    """As ``inputs_text``, each by its name; but for those ``without``."""
    told = []
    rule = str(working["rule"]).split("@")[0]
    for name in sorted(working["inputs"]):
        value = working["inputs"][name]
        if name in UNSEEN or name in without or value is None:
            continue
        shown = page.voice.quantity(value, digits(value)) if isinstance(value, dict) else _plain(page, name, value)
        label = line(_named(page, "input", rule, name), 80)
        told.append((label, f"{label} {shown}"))
    marks = [*_taps(page, working["inputs"].get("taps")), *_card(page, working["inputs"].get("card"))]
    return [*told[:30], *(("", text) for text in marks), *(("taken", text) for text in _taken(page, working))]


def _named(page: Page, kind: str, rule: str, name: str) -> str:
    """The words of an input or a value, a rule's own where one name means two things."""
    own = f"{kind}.{rule}.{name}"
    return page.say(own if page.voice.knows(own) else f"{kind}.{name}")


def _taps(page: Page, taps: Any) -> list[str]:
    """The three places that were tapped on the photo, in its pixels."""
    try:
        points = {name: ", ".join(line(one, 12) for one in taps[name]) for name in ("ridge_end", "eave_end", "screw")}
    except (TypeError, KeyError):
        return []
    return [page.say("taps", **points)]


def _card(page: Page, card: Any) -> list[str]:
    """The card's corners in the same pixels."""
    if not isinstance(card, list) or not card:
        return []
    corners = [", ".join(line(one, 12) for one in corner) for corner in card[:4] if isinstance(corner, list)]
    return [page.say("card_corners", corners=" ".join(f"({one})" for one in corners))]


def _taken(page: Page, working: dict[str, Any]) -> list[str]:
    """What the rule took because nothing was entered."""
    rule, given = str(working["rule"]), working["inputs"]
    left = [name for name in ASSUMED.get(rule, {}) if given.get(name) is None]
    if given.get("card"):  # it tells the tilt, and one that was given does not count
        left = [name for name in left if name != "tilt"]
    if not left or (rule.startswith("slot@") and not given.get("taps")):  # other ways to read a slot need none of it
        return []
    told = [f"{page.say(f'input.{name}')} {page.voice.quantity(ASSUMED[rule][name], digits(ASSUMED[rule][name]))}"
            for name in left]  # fmt: skip
    return [page.say("taken", things="; ".join(told))]


def reason_text(page: Page, working: dict[str, Any]) -> str:
    """Why the verdict is what it is, in the rulebook's words where they are known."""
    reason = working["reason"] or {}
    code = reason.get("code")
    if not code:
        return ""
    facts = {}
    for name, value in (reason.get("facts") or {}).items():
        if name == "input":
            facts[name] = line(page.say(f"input.{value}"), 90)
        else:
            facts[name] = page.voice.quantity(value) if isinstance(value, dict) else line(value, 60)
    if page.voice.knows(f"reason.{code}"):
        return page.say(f"reason.{code}", **facts)
    told = ", ".join(f"{line(name, 20)} {value}" for name, value in sorted(facts.items()))
    return line(str(code).replace("_", " "), 60) + (f" ({told})" if told else "")


def rule_text(page: Page, one: dict[str, Any], without: str, brief: bool = False) -> str:
    """Rule, formula and source in words, how the reading was accepted, and whether it was judged again to the same.
    ``without``: what is said where there is no rule. ``brief``: formula and source stand among the rules used."""
    rule = str(one["working"]["rule"] or "")
    known = rule in {used["rule"] for used in page.contents["rules"]}
    told = [page.to("rule", rule) if known else line(rule, 40)] if rule else [page.say(without)]
    for part in () if brief else ("formula", "source"):
        if page.voice.knows(f"rule.{rule}.{part}"):
            told.append(line(page.say(f"rule.{rule}.{part}"), 900))
    if one["accepted"]:
        told.append(page.say(f"accepted.{one['accepted']['used']}"))
    if one["recomputed"]:
        told.append(page.say(f"recomputed.{one['recomputed']}"))
    return " — ".join(told)


def percent(share: Any) -> str:
    """``2.3 %`` of a share of one, as a value of a rule or as its text."""
    value = share.get("value") if isinstance(share, dict) else share
    try:
        return line(number(repr(100 * float(str(value))), "%"))
    except ValueError:
        return line(value, 20)


def _plain(page: Page, name: str, value: Any) -> str:
    if isinstance(value, bool):
        return page.say("yes" if value else "no")
    if isinstance(value, list):
        return ", ".join(page.voice.quantity(one) if isinstance(one, dict) else _plain(page, name, one)
                         for one in value[:24])  # fmt: skip
    if isinstance(value, str) and page.voice.knows(f"said.{value}"):
        return page.say(f"said.{value}")
    if name in CHOSEN and isinstance(value, str):
        return next((page.say(key) for key in (f"choice.{value}", f"seam.{value}")
                     if page.voice.knows(f"report.{key}")), line(value, 60))  # fmt: skip
    return line(value, 60)


def places(page: Page, rule: str, value: Any) -> int | None:
    """Computed lengths to a thousandth of an inch or a hundredth of a millimetre; sheet metal one place finer, as
    the gauge tables are; a slope's angles to a hundredth of a degree. None for the unit's usual."""
    unit = value.get("unit") if isinstance(value, dict) else None
    if unit == "deg" and rule == "slope":
        return 2
    if unit not in ("in", "mm"):
        return None
    return (3 if page.voice.units == "US" else 2) + (rule == "thickness")


def digits(value: dict[str, Any]) -> int | None:
    """The decimals that were recorded, where the unit's usual ones would drop some; None for the usual."""
    found, unit = DECIMALS.fullmatch(str(value.get("value"))), str(value.get("unit", ""))
    usual = UNITS.get(unit, ("", 3))[1]
    return len(found[1]) if found and unit not in EXPANSIONS and usual < len(found[1]) <= MOST_DIGITS else None
