"""What needs few words: places where all that is asked passed, and answers that a line says in full."""

from typing import Any

from inspect_app.report.pages.look import BODY
from inspect_app.report.pages.mark import sign
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.reading import reading_text
from inspect_app.report.pages.row import Row
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import values_text

MEASURED = ("slot", "clip", "spacing")  # readings that a reader wants at every place; the rest is enclosed
FEW_WORDS = 200  # letters


def is_told(station: dict[str, Any], answers: list[dict[str, Any]]) -> bool:
    """Whether its row in the table says enough: nobody answered there; or it was drawn, and whatever is not plain is a
    finding."""
    return not answers or (
        station["chosen"] == "drawn"
        and station["reached"] == "yes"
        and all(is_plain(answer) or answer["finding"] for answer in answers)
    )


def is_plain(answer: dict[str, Any]) -> bool:
    """Passed by the rules as they are, or only written down; nothing written beside it, nothing corrected."""
    good = answer["recorded"] or answer["result"] in ("pass", "not_applicable")
    return good and not answer["note"] and not answer["versions"] and answer["recomputed"] in ("same", None)


def is_short(answer: dict[str, Any]) -> bool:
    """As plain, or written down in a few words: a line says all of it."""
    few = answer["recorded"] and len(answer["note"]) <= FEW_WORDS and "\n" not in answer["note"]
    computed = answer["recorded"] and bool((answer["working"] or {}).get("values"))  # no limit, yet a figure to show
    return is_plain(answer | {"note": "" if few else answer["note"]}) and not computed


def found_text(page: Page, answer: dict[str, Any]) -> str:
    """What was read, else the first value of its rule; empty for a judgement by eye."""
    told = reading_text(page, answer)
    return told or (values_text(page, answer["working"], answer["result"]).split("; ")[0] if answer["working"] else "")


def by_eye(page: Page, answers: list[dict[str, Any]], style: Any = BODY) -> list[Any]:
    """What passed by eye, one after the other under its result: of each the question, its photos, what was read."""
    rows = []
    for shown in dict.fromkeys(_shown(one) for one in answers):
        told = [_briefly(page, one) for one in answers if _shown(one) == shown]
        strong = f"{sign(shown)} {page.voice.result(shown)}"
        rows.append(Row(strong, Paragraph(" · ".join(told), style), 2))
    return rows


def _shown(answer: dict[str, Any]) -> Any:
    return "recorded" if answer["recorded"] else answer["result"]


def _briefly(page: Page, answer: dict[str, Any]) -> str:
    small = [found_text(page, answer)]
    if answer["photos"]:
        small.append(page.say("photos_are", photos=page.photo_links(answer["photos"]), count=len(answer["photos"])))
    text = " · ".join(part for part in small if part)
    question = line(page.voice.both(answer["question"], str(answer["item"])), 160)
    return question + (f' <font color="#646b70" size="7.3">{text}</font>' if text else "")


def answer_row(page: Page, answer: dict[str, Any], day: dict[str, Any] | None = None) -> Any:
    """One answer that passed, on a line. ``day``: the walk that it speaks of as a whole; then person
    and date stand here where they are not the walk's own."""
    told = [line(page.voice.both(answer["question"], str(answer["item"])), 160)]
    if answer["note"]:
        told[0] += f" <b>{line(answer['note'], FEW_WORDS)}</b>{page.recorded()}"
    if read := reading_text(page, answer):
        told.append(f"{page.say('reading_count' if answer['instrument'] == 'count' else 'reading')} {read}")
    elif found := found_text(page, answer):
        told.append(found)
    if answer["station"] is None and answer["area"]:
        told.append(page.say("of_area", area=page.area(answer["area"])))
    if answer["photos"]:
        told.append(page.say("photos_are", photos=page.photo_links(answer["photos"]), count=len(answer["photos"])))
    if day:
        told += [page.voice.person(answer["by"])] if answer["by"] != day["by"] else []
        same = str(answer["at"])[:10] == str(day["at"])[:10]
        told.append(line(str(answer["at"])[11:19]) if same else page.voice.moment(answer["at"]))
    shown = "recorded" if answer["recorded"] else answer["result"]
    small = " · ".join(told[1:])
    text = told[0] + (f' <font color="#646b70" size="7.3">{small}</font>' if small else "")
    return Row(f"{sign(shown)} {page.voice.result(shown)}", Paragraph(text, BODY), 1)
