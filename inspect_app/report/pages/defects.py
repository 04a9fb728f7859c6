"""What fails most often: findings by what was asked, the most frequent first, each bar split by severity. Counted as
``record.trend_pareto`` counts; what is often looked at is often found, so the looks stand beside."""

from typing import Any

from inspect_app.record.trend_pareto import GROUPED_BY, pareto
from inspect_app.report.pages.hatch import hatch
from inspect_app.report.pages.look import BOLD, GREY, INK, PLAIN
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.row import Drawing, Row
from inspect_app.report.pages.text import plain
from inspect_app.report.pages.working import percent

MOST, FEW = 10, 2  # bars drawn; fewer kinds, or fewer of the first, make no order
LINE, BAR, LEFT, SMALL = 15.0, 8.5, 196.0, 6.6
COUNT = 24.0  # room for a bar's number
SEVERITIES = {"critical": "covered_unseen", "major": "looked_at", "minor": "to_come"}  # each in the hatch of a state
Group = dict[str, Any]


def defects(page: Page) -> list[Any]:
    """One figure, or nothing where findings are few or all of one kind."""
    findings = {one["id"]: one for one in page.contents["findings"]}
    rows = [dict.fromkeys(GROUPED_BY, "") | {"id": one["id"], "state": one["state"], "item": _kind(one),
                                             "digest": one["told"]["opened"]["digest"]}
            for one in findings.values()]  # fmt: skip
    groups = pareto(rows, {"item": _looks(page)})["by"]["item"]
    if len(groups) < FEW or groups[0]["n"] < FEW:
        return []
    shown = groups[:MOST]
    names = [_name(page, group, findings) for group in shown]
    told = list(zip(names, shown, strict=True))
    alt = f"{page.say('alt.pareto')}: " + "; ".join(f"{name}: {group['n']}" for name, group in told)
    paint = lambda canvas, width, height: _draw(canvas, width, height, page, told, findings)  # noqa: E731
    return [Row(page.say("pareto"), Drawing(LINE * len(shown) + 16, paint, 4, alt))]


def _kind(finding: dict[str, Any]) -> str:
    """The item that failed; empty for what somebody found without being asked."""
    return "/".join(finding["id"].split("/")[1:]) if finding["source"] == "answer" else ""


def _looks(page: Page) -> dict[str, int]:
    told: dict[str, int] = {}
    for one in page.contents["answers"]:
        if one["result"] in ("pass", "fail") and one["severity"] != "record":
            key = "/".join(one["id"].split("/")[1:])
            told[key] = told.get(key, 0) + 1
    return told


def _name(page: Page, group: Group, findings: dict[str, Any]) -> str:
    if not group["key"]:
        return page.say("pareto_by_hand")
    asked: dict[str, Any] = next((one for one in page.contents["answers"] if one["id"] == group["findings"][0]), {})
    return plain(page.voice.both(asked.get("question"), group["key"]), 48)


def _draw(canvas: Any, width: float, height: float, page: Page, told: list[tuple[str, Group]], findings: dict[str, Any],
          ) -> None:  # fmt: skip
    most = max(group["n"] for _, group in told)
    notes = [_note(page, group) for _, group in told]
    per = max(width - LEFT - COUNT - max(canvas.stringWidth(note, PLAIN, SMALL) for note in notes), COUNT) / most
    for at, (name, group) in enumerate(told):
        y = height - LINE * (at + 1) + 3
        canvas.setFillColor(INK)
        canvas.setFont(PLAIN, 7)
        canvas.drawString(0, y + 1.5, name)
        x = LEFT
        for severity, state in SEVERITIES.items():
            n = len([one for one in group["findings"] if findings[one]["severity"] == severity])
            if n:
                _bar(canvas, x, y, n * per, state)
            x += n * per
        canvas.setFont(BOLD, 7.4)
        canvas.setFillColor(INK)
        canvas.drawString(x + 5, y + 1.5, str(group["n"]))
        canvas.setFont(PLAIN, SMALL)
        canvas.setFillColor(GREY)
        canvas.drawRightString(width, y + 1.5, notes[at])
    x = LEFT
    for severity, state in SEVERITIES.items():
        _bar(canvas, x, 0.5, 12, state)
        word = page.say(f"severity.{severity}")
        canvas.setFillColor(INK)
        canvas.setFont(PLAIN, SMALL)
        canvas.drawString(x + 16, 2, word)
        x += 26 + canvas.stringWidth(word, PLAIN, SMALL)


def _note(page: Page, group: Group) -> str:
    facts = {"open": group["open"], "count": group["looks"], "cumulative": percent(round(group["cumulative"], 4))}
    return page.say("pareto_row" if group["looks"] else "pareto_row_unasked", **facts)


def _bar(canvas: Any, x: float, y: float, wide: float, state: str) -> None:
    hatch(canvas, [(x, y), (x + wide, y), (x + wide, y + BAR), (x, y + BAR)], state)
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(0.4)
    canvas.rect(x, y, wide, BAR, stroke=1, fill=0)
