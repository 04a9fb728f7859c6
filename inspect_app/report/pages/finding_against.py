"""What was required against what was found, side by side. Of an answer the working stands below."""

from typing import Any

from inspect_app.report.pages.mark import sign
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.reading import reading_text
from inspect_app.report.pages.row import Columns, space
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import values_text

# Values of a rule that say how it has to be; the others say how it is.
REQUIRED = ("low", "high", "at_least", "at_most", "equal", "limit", "minimum", "needed", "tested_minimum", "nominal")
REST = ("risk", "grow", "shrink", "aim", "play", "base", "tested_nominal", "rise", "percent")
LONG = 400  # letters: more stands in the note below


def against(page: Page, finding: dict[str, Any], answer: dict[str, Any] | None) -> list[Any]:
    """One row of two columns."""
    told = finding["told"]
    if finding["source"] == "hand":
        required, found = line(told["required"], LONG) + page.recorded(), line(told["found"], LONG) + page.recorded()
    else:
        required, found = _required(page, told, answer), _found(page, told, answer)
    both = [f"<b>{page.say('finding_required')}</b><br/>{required}", f"<b>{page.say('finding_found')}</b><br/>{found}"]
    return [Columns(page.say("finding_against"), both, (0.54, 0.46)), space(3)]


def _required(page: Page, told: dict[str, Any], answer: dict[str, Any] | None) -> str:
    basis = page.voice.both((answer or {}).get("basis"), "")
    return "<br/>".join(part for part in (line(basis, LONG), _values(page, told, REQUIRED)) if part) or "—"


def _found(page: Page, told: dict[str, Any], answer: dict[str, Any] | None) -> str:
    found = told["found"] or {}
    parts = [f"<b>{sign('fail')} {page.voice.result('fail')}</b>"]
    if told["required"] and told["required"]["rule"]:
        values = told["required"]["values"] or {}
        seen = {"reading": found["reading"], "working": _working(told), "instrument": (answer or {}).get("instrument")}
        parts.append(reading_text(page, seen))
        parts.append(_values(page, told, tuple(name for name in values if name not in REQUIRED + REST)))
    if found.get("note"):
        parts.append(f"“{line(found['note'], 160)}”{page.recorded()}")
    return "<br/>".join(part for part in parts if part)


def _working(told: dict[str, Any]) -> dict[str, Any]:
    required = told["required"]
    return {"rule": required["rule"], "inputs": required["inputs"] or {}, "values": required["values"] or {}}


def _values(page: Page, told: dict[str, Any], names: tuple[str, ...]) -> str:
    if not told["required"] or not told["required"]["rule"]:
        return ""
    working = _working(told)
    # A slot's window has a low and a high end toward one side or the other: told by the values' own words.
    few = {name: working["values"][name] for name in working["values"] if name in names}
    return values_text(page, working | {"values": few}, "fail") if few else ""
