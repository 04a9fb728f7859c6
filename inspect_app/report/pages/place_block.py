"""A place told in full: what came of it, each reading beside its figure, what passed by eye."""

from typing import Any

from inspect_app.report.pages.answer_block import answer_block, answer_figure, answer_link
from inspect_app.report.pages.beside import Beside
from inspect_app.report.pages.look import BODY, CELL, HAIR
from inspect_app.report.pages.mark import sign
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.place_asked import Own, is_row, question_of
from inspect_app.report.pages.place_row import by_eye, is_plain
from inspect_app.report.pages.reading import metal_text, reading_text
from inspect_app.report.pages.row import Anchor, Drawing, Row, space, together
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import rule_text, values_text


def place_block(page: Page, station: dict[str, Any], answers: list[dict[str, Any]], own: Own) -> list[Any]:
    """``answers``: its own; ``own``: what was put in there alone, of each answer that is a row."""
    rows = [one for one in answers if is_row(station, one)]
    found = [one for one in answers if one["finding"]]
    eye = [one for one in answers if one not in rows and one not in found and is_plain(one)]
    full = [answer_block(page, one) for one in answers if one not in [*rows, *found, *eye]]
    links = [answer_link(page, one) for one in found]
    told = _rows(page, rows, own, _same_said(rows)) + (by_eye(page, eye, CELL) if eye else [])
    head = [*_head(page, station, rows), *links]
    if not full:
        return [together([*head, *told]), space(6)]
    story: list[Any] = [together([*head, *full[0][:1]]), *full[0][1:]]
    for block in full[1:]:
        story += [space(3), *block]
    return [*story, *([space(3), together(told)] if told else []), space(6)]


def _head(page: Page, station: dict[str, Any], rows: list[dict[str, Any]]) -> list[Any]:
    label = f"<b>{page.say('place_n', n=station['n'])}</b> · {page.say('reached.' + str(station['reached']))}"
    where = f"<b>{page.where(station)}</b>"
    if _same_said(rows):
        first = min(rows, key=lambda one: str(one["at"]))
        told = page.say("place_since", who=page.voice.person(first["by"]), moment=page.voice.moment(first["at"]))
        where += f'<br/><font color="#646b70" size="7.3">{told}</font>'

    def paint(canvas: Any, width: float, height: float) -> None:
        canvas.setStrokeColor(HAIR)
        canvas.setLineWidth(0.5)
        canvas.line(0, 6, width, 6)

    return [Drawing(7, paint, 0), Anchor(f"place-{station['n']}"),
            Row(f"{label}<br/>{page.say('chosen.' + str(station['chosen']))}", Paragraph(where, BODY), 3)]  # fmt: skip


def _same_said(rows: list[dict[str, Any]]) -> bool:
    """Whether one person said all of it on one day, by one offset: then each says its time alone."""
    said = {(str((one["by"] or {}).get("id")), str(one["at"])[:10], str(one["at"])[23:]) for one in rows}
    return len(said) == 1


def _rows(page: Page, rows: list[dict[str, Any]], own: Own, same: bool) -> list[Any]:
    """What is drawn beside its numbers; then the others, two to a row."""
    story: list[Any] = []
    plain = []
    for one in rows:
        told, figure = _told(page, one, own[one["id"]], same), answer_figure(page, one)
        if figure:
            story.append(Beside(figure, told))
        else:
            plain.append(told)
    return [*story, *(Beside(*plain[at : at + 2]) for at in range(0, len(plain), 2))]


def _told(page: Page, answer: dict[str, Any], inputs: list[str], same: bool) -> Any:
    shown = "recorded" if answer["recorded"] else answer["result"]
    head = f"<b>{sign(shown)} {page.voice.result(shown)}</b> · {question_of(page, answer)}"
    read = reading_text(page, answer)
    values = values_text(page, answer["working"], answer["result"])
    text = f"{page.say('reading_count' if answer['instrument'] == 'count' else 'reading')} {read}" if read else ""
    text = f"{text} → {values}" if text and values else text or f"{page.say('values')} {values}"
    own = f'<font color="#646b70">{_own(page, answer, inputs, same)}</font>'
    return Paragraph("<br/>".join(part for part in (head, text, own) if part), CELL)


def _own(page: Page, answer: dict[str, Any], inputs: list[str], same: bool) -> str:
    rule = rule_text(page, answer | {"accepted": None, "recomputed": None}, "rule", brief=True)
    parts = [f"{page.say('put_in')}: {'; '.join(inputs) or page.say('all_alike')}. {rule}"]
    if metal := metal_text(page, answer):
        parts.append(f"{page.say('metal_then')} {metal}")
    if answer["photos"]:
        parts.append(page.say("photos_are", photos=page.photo_links(answer["photos"]), count=len(answer["photos"])))
    if same:
        parts.append(line(str(answer["at"])[11:19]))
    else:
        parts += [page.voice.person(answer["by"]), page.voice.moment(answer["at"])]
    return " · ".join([*parts, page.say("entry", digest=line(answer["digest"], 50))])
