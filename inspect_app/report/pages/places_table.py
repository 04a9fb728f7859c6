"""Every place of an area in one table, so that a week of good ones hides none that is bad; what needs its working
stands below it."""

from typing import Any

from inspect_app.report.pages.cells import Cells
from inspect_app.report.pages.mark import sign
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.place_row import MEASURED, found_text, is_told
from inspect_app.report.pages.text import line

MOST = 2  # columns of readings
SHARES = (
    (0.08, 0.08, 0.16, 0.12, 0.24, 0.16, 0.16),
    (0.07, 0.07, 0.12, 0.09, 0.17, 0.24, 0.13, 0.11),
    (0.06, 0.06, 0.1, 0.085, 0.11, 0.165, 0.22, 0.105, 0.095),
)  # by how many columns of readings there are


def places_table(page: Page, stations: list[dict[str, Any]], answers: dict[str, Any]) -> Any:
    """``stations``: of one area, in the order of their numbers."""
    own = {one["n"]: [answers[name] for name in one["answers"]] for one in stations}
    asked = _asked(page, [answer for each in own.values() for answer in each])
    head = [page.say(f"place_head.{name}") for name in ("n", "panel", "from_low_end", "zone", "result")]
    head += [line(question, 80) for question in asked] + [page.say("place_head.photos"), page.say("place_head.said")]
    rows = [_row(page, one, own[one["n"]], asked) for one in stations]
    marks = [[f"place-{one['n']}"] if is_told(one, own[one["n"]]) else [] for one in stations]
    return Cells(head, rows, SHARES[len(asked)], marks)


def _rule(answer: dict[str, Any]) -> str:
    return str((answer["working"] or {}).get("rule")).split("@")[0]


def _asked(page: Page, answers: list[dict[str, Any]]) -> list[str]:
    """The questions whose reading one wants at every place, the most frequent first."""
    measured = [page.voice.both(one["question"], str(one["item"])) for one in answers if _rule(one) in MEASURED]
    return sorted(set(measured), key=lambda each: (-measured.count(each), each))[:MOST]


def _row(page: Page, station: dict[str, Any], answers: list[dict[str, Any]], asked: list[str]) -> list[str]:
    found = {page.voice.both(one["question"], str(one["item"])): _value(found_text(page, one)) for one in answers
             if _rule(one) in MEASURED}  # fmt: skip
    n = line(station["n"], 12)
    name = f"<b>{n}</b>" if is_told(station, answers) else page.to("place", n, f"<b>{n}</b>")
    photos = [photo for answer in answers for photo in answer["photos"]]
    return [
        name, line(station["panel"], 12), page.voice.quantity(station["from_low_end"]), page.zone(station["zone"]),
        _result(page, station, answers), *(found.get(question) or "—" for question in asked),
        page.photo_links(photos) or "—", _said(page, station),
    ]  # fmt: skip


def _value(text: str) -> str:
    """A reading without its emphasis, and without the name that the head of its column tells."""
    return (text[text.index("<b>") :] if "<b>" in text else text).replace("<b>", "").replace("</b>", "")


def _result(page: Page, station: dict[str, Any], answers: list[dict[str, Any]]) -> str:
    """Marks with their counts; why it was not reached; and the finding that came of it."""
    if station["reached"] != "yes":
        return f"{page.say('reached.' + str(station['reached']))} ({page.say('chosen.' + str(station['chosen']))})"
    shown = ["recorded" if one["recorded"] else one["result"] for one in answers]
    told = " ".join(f"{sign(one)} {shown.count(one)}" for one in dict.fromkeys(sorted(shown, key=_rank)))
    findings = ", ".join(page.to("finding", one["finding"]) for one in answers if one["finding"])
    return told + (f" · {page.say('place_findings', numbers=findings)}" if findings else "") or "—"


def _rank(result: Any) -> int:
    order = ("fail", "too_close", "not_determinable", "pass", "not_applicable", "recorded")
    return order.index(result) if result in order else len(order)


def _said(page: Page, station: dict[str, Any]) -> str:
    day = next((one for one in page.contents["days"] if one["n"] == station["walk"]), None)
    if day and day["by"] == station["by"] and str(day["at"])[:10] == str(station["at"])[:10]:
        return page.to("walk", day["n"], page.say("place_walk", n=day["n"])) + f", {line(str(station['at'])[11:16])}"
    return f"{page.voice.person(station['by'])}, {page.voice.moment(station['at'])}"
