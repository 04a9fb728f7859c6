"""The lines of a fit check that pass, each on a row: what was asked for, what this roof has, what is to spare."""

from typing import Any

from inspect_app.report.pages.cells import Cells
from inspect_app.report.pages.fit_sides import line_name, sides
from inspect_app.report.pages.look import CELL, SMALL
from inspect_app.report.pages.mark import sign
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.put_in import parted
from inspect_app.report.pages.row import Row, room, space
from inspect_app.report.pages.working import digits, inputs_named, rule_text

SHARES = (0.25, 0.185, 0.15, 0.145, 0.27)
COMPARED = ("at_least", "at_most", "clearance", "day", "equal", "expires", "gap", "least", "minimum", "reading",
            "return", "run", "slope", "spacing")  # inputs that stand on one of the two sides, where they are the same


def is_brief(one: dict[str, Any]) -> bool:
    """Whether a row says all of it: it passes, did so when it was judged again, and would now."""
    return one["result"] == "pass" and not one["now"] and one["recomputed"] in ("same", None)


def passed_table(page: Page, lines: list[dict[str, Any]]) -> list[Any]:
    """``lines``: those that are brief. Their rules' formulas and sources stand once, among the rules used."""
    told = parted([(str(one["working"]["rule"]), _inputs(page, one)) for one in lines])
    rows = [_row(page, one, own) for one, own in zip(lines, told.own, strict=True)]
    head = [page.say(f"fit_{name}") for name in ("line", "asked", "has", "spare", "by")]
    story: list[Any] = [space(5), room(110)]
    if told.alike:
        alike = page.say("fit_alike", inputs="; ".join(told.alike))
        story.append(Row(f"{sign('pass')} {page.voice.result('pass')}", Paragraph(alike, SMALL), 3))
    return [*story, Cells(head, rows, SHARES, styles=(CELL,) * len(SHARES))]


def _row(page: Page, one: dict[str, Any], own: list[str]) -> list[str]:
    rule = rule_text(page, one | {"accepted": None, "recomputed": None}, "fit_by_record", True)
    by = " · ".join([rule, "; ".join(own)] if own else [rule])
    return [f"{sign('pass')} <b>{line_name(page, one['line'])}</b>", *(side or "—" for side in sides(page, one)), by]


def _inputs(page: Page, one: dict[str, Any]) -> list[tuple[str, str]]:
    """All but what stands in the row's own two sides."""
    compared = [one["pair"].get(name) for name in ("found", "limit", "upper")]
    inputs = one["working"]["inputs"] if one["working"]["rule"] else {}
    beside = tuple(name for name in COMPARED if name in inputs and any(_same(inputs[name], side) for side in compared))
    return inputs_named(page, one["working"], beside) if inputs else []


def _same(value: Any, side: Any) -> bool:
    if isinstance(value, dict) and isinstance(side, dict):
        try:  # a side is printed as finely as its unit is worth, an input to its last digit
            equal = value.get("unit") == side.get("unit") and float(value["value"]) == float(side["value"])
            return equal and digits(value) is None
        except (KeyError, TypeError, ValueError):
            return False
    plain = isinstance(value, str | int) and not isinstance(value, bool)
    return plain and (value == side or (isinstance(side, dict) and side.get("value") == value and not side.get("unit")))
