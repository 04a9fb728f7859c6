"""Sign-offs: statement, name, and the signature as it was drawn."""

from typing import Any

from inspect_app.report.pages.beside import Beside
from inspect_app.report.pages.look import BODY, CELL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.row import Drawing, Heading, Row, room, space, together
from inspect_app.report.pages.strokes import HEIGHT, draw_strokes
from inspect_app.report.pages.text import line, plain


def signoff_section(page: Page, number: str) -> list[Any]:
    """One for each walk; a walk that nobody signed says so."""
    story: list[Any] = [room(200), Heading(page.say("chapter.signoff"), "signoff", number=number)]
    for one in page.contents["signoffs"]:
        story += _signoff(page, one)
    if not page.contents["signoffs"]:
        story.append(Row("", Paragraph(page.say("no_walks"), BODY), 8))
    return story


def _mark(page: Page, statement: Any) -> str:
    """The phone's own statement tells its language; a statement in other words is taken as the job's."""
    keys = ("sign.statement", "sign.statement.area")
    known = next((one for key in keys if (one := page.voice.language_of(key, statement))), None)
    if known is None:
        return page.recorded()
    return "" if known == page.voice.language else page.recorded("as_signed", known)


def _signoff(page: Page, one: dict[str, Any]) -> list[Any]:
    label = page.say("walk_n", n=one["walk"])
    if not one["signed"]:
        return [Row(label, Paragraph(page.say("walk_unsigned"), BODY), 8)]
    said = page.passage(one["statement"])
    said = [*said[:-1], said[-1] + _mark(page, one["statement"])] if said else []
    rows: list[Any] = [Row(label if at == 0 else "", Paragraph(text, BODY)) for at, text in enumerate(said)]
    rows += [space(3), Row(page.say("signature"), _signature(page, one))]
    return [together(rows), space(9)]


def _signature(page: Page, one: dict[str, Any]) -> Any:
    """As it was drawn, beside who signed, when, what the signature names, and the key that bears it out."""
    strokes, size = one["strokes"], one["canvas"]
    signed = [f"<b>{line(one['name'], 80)}</b>, {page.say('role.' + str(one['role']))}", page.voice.moment(one["at"])]
    covers = page.say("covers", count=one["covers"])
    if one["uncovered"]:
        covers += " " + page.say("covers_not", count=len(one["uncovered"]))
    small = [covers, page.say("entry", digest=line(one["digest"], 50))]
    small += [page.say("signoff_key", kid=line(one["kid"], 50))] if one.get("kid") else []
    told = "<br/>".join([*signed, *(f'<font color="#646b70">{text}</font>' for text in small)])
    if not strokes:
        return Paragraph(f"{page.say('no_strokes')}<br/>{told}", CELL)
    drawn = Drawing(HEIGHT, lambda canvas, width, _: draw_strokes(canvas, width, strokes, size),
                    alt=page.say("alt.signature", name=plain(one["name"], 80)))  # fmt: skip
    return Beside(drawn, Paragraph(told, CELL))
