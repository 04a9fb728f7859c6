"""A drawn place where all that is asked passed: one row of readings, since a week of them would hide what failed."""

from typing import Any

from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.mark import sign
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.reading import reading_text
from inspect_app.report.pages.row import Anchor, Row, space, together
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import values_text

MEASURED = ("slot", "clip", "spacing")  # readings that a reader wants at every place; the rest is enclosed
FEW_WORDS = 200  # letters


def is_clear(station: dict[str, Any], answers: list[dict[str, Any]]) -> bool:
    """Whether a row says enough: drawn, reached, everything passed by the rules as they are, nothing written beside
    it, nothing corrected."""
    return (
        station["chosen"] == "drawn"
        and station["reached"] == "yes"
        and station["result"] == "pass"
        and all(is_plain(answer) for answer in answers)
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


def place_row(page: Page, station: dict[str, Any], answers: list[dict[str, Any]]) -> list[Any]:
    """The flowables of a clear place."""
    told = [f"{sign('pass')} {page.say('place_clear', count=len(answers))}"]
    for answer in answers:
        working = answer["working"]
        rule = str((working or {}).get("rule")).split("@")[0]
        if rule in MEASURED:
            question = line(page.voice.both(answer["question"], str(answer["item"])), 60)
            told.append(f"{question} {found_text(page, answer)}")
    photos = [photo for answer in answers for photo in answer["photos"]]
    if photos:
        told.append(page.say("photos_are", photos=page.photo_links(photos), count=len(photos)))
    day = next((one for one in page.contents["days"] if one["n"] == station["walk"]), None)
    if day and day["by"] == station["by"] and str(day["at"])[:10] == str(station["at"])[:10]:
        told.append(f"{page.say('walk_n', n=day['n'])}, {line(str(station['at'])[11:19])}")
    else:
        told.append(f"{page.voice.person(station['by'])}, {page.voice.moment(station['at'])}")
    return [
        together([
            Anchor(f"place-{station['n']}"),
            Row(page.say("place_n", n=station["n"]), Paragraph(page.where(station), BODY), 0),
            Row("", Paragraph(" · ".join(told), SMALL), 0),
        ]),
        space(3),
    ]  # fmt: skip
