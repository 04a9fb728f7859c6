"""One lot on half a page: what and where, what was drawn, the decision, each severity's plan, findings and bounds."""

from typing import Any

from inspect_app.report.pages.drawn_strip import HEIGHT as STRIP
from inspect_app.report.pages.drawn_strip import draw_strip, drawn_words
from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.lot_words import lot_where, ranges, sentences
from inspect_app.report.pages.mark import sign
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.risk_figure import HEIGHT as CURVE
from inspect_app.report.pages.risk_figure import curve_of, draw_curves
from inspect_app.report.pages.row import Columns, Drawing, Heading, Row, paragraphs, space, together
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import percent

SEVERITIES = ("critical", "major", "minor")
THIRDS = (1 / 3, 1 / 3, 1 / 3)
SHOWN = {"accepted": "pass", "not_accepted": "fail", "not_determinable": "not_determinable"}
VERDICT = ("accepted", "not_accepted", "open", "sample_small", "draw_small", "nonresponse", "nothing_set",
           "nothing_asked", "no_plan", "undecided", "laxer", "stricter")  # fmt: skip


def lot_name(page: Page, lot: dict[str, Any]) -> str:
    """``Lot 3``, ``Audit, lot 4``."""
    name = page.say("lot_n", n=lot["n"])
    return name if lot["purpose"] == "work" else f"{name} · {page.say('lot.purpose.' + str(lot['purpose']))}"


def lot_block(page: Page, lot: dict[str, Any]) -> list[Any]:
    """The flowables of one lot."""
    where = "; ".join(
        lot_where(page, row["area"], row["from"], row["to"]) for row in lot["rows"][:4]
    )
    crew = line(lot["crew"], 40) if str(lot["crew"] or "").strip() else ""
    title = " · ".join(part for part in (lot_name(page, lot), where, crew, page.voice.day(lot["day"])) if part)
    state = lot["decision"]["state"]
    strong = f"<b>{sign(SHOWN.get(state))} {page.say('lot.state.' + state)}</b>"
    head: list[Any] = [
        Heading(title, f"lot-{lot['n']}", 1, title),
        Row(strong, Paragraph(sentences(page, lot, None, *VERDICT), BODY), 4),
        Row(page.say("lot_drawn", n=len(lot["stops"]), size=lot["size"]),
            Drawing(STRIP, lambda canvas, width, _: draw_strip(canvas, width, lot, page), 1,
                    page.say("alt.drawn"))),
        Row("", Paragraph(" ".join([f"{drawn_words(page, lot)}.", _odd(page, lot)]), SMALL), 3),
    ]  # fmt: skip
    story: list[Any] = [
        Columns("", [f"<b>{page.say('lot.severity.' + one)}</b>" for one in SEVERITIES], THIRDS, SMALL, True),
        _columns(page, lot, "lot_plan", "plan", "not_asked", "no_plan"),
        _columns(page, lot, "lot_found", "found", "unknown"),
    ]  # fmt: skip
    if any(curve_of(lot, one) for one in SEVERITIES):
        paint = lambda canvas, width, _: draw_curves(canvas, width, lot, page)  # noqa: E731
        story.append(Row(page.say("lot_lets_through"), Drawing(CURVE, paint, 2, page.say("alt.curve"))))
    if lot["decision"]["lot"]["looked"]:
        story.append(_columns(page, lot, "lot_bound", "bound", to_date=True))
    return [together(head), together(story), *_after(page, lot), space(7)]


def _columns(page: Page, lot: dict[str, Any], label: str, *about: str, to_date: bool = False) -> Any:
    cells = []
    for one in SEVERITIES:
        cell = sentences(page, lot, one, *about)
        so_far = page.contents["to_date"].get(one) or {}
        if to_date and cell and lot["purpose"] == "work" and so_far.get("n"):
            cell += " " + page.say("lot_to_date", high=percent(so_far["high"]), found=so_far["found"], n=so_far["n"])
        cells.append(cell)
    return Columns(page.say(label), cells, THIRDS, SMALL)


def _odd(page: Page, lot: dict[str, Any]) -> str:
    """What of the sample was not as planned, and the holds that were not kept."""
    told = [sentences(page, lot, None, "dropped", "unseen", "changed")]
    missed = (lot["rolling"] or {}).get("missed")
    if missed:
        told.append(page.say("lot_legs_missed", panels=ranges(page, missed), count=len(set(missed))))
    for one in lot["holds"]:
        why = page.say(f"hold.why.{one['why']}")
        if one["state"] == "covered_against":
            told.append(f"<b>{page.say('lot.holds.over', panel=one['panel'], why=why)}</b>")
        elif one["unseen"]:
            told.append(page.say("lot.holds.unseen", panel=one["panel"], why=why))
    return " ".join(part for part in told if part)


def _after(page: Page, lot: dict[str, Any]) -> list[Any]:
    """Looking both ways, what the technical lead chose, and the draw after rework."""
    texts = []
    for one in lot["failed"] or []:
        facts = {name: one[name] for name in ("panel", "toward_start", "toward_end")}
        bounded = page.say("lot.failed.bounded" if one["bounded"] else "lot.failed.not_bounded")
        text = f"{page.say('lot.failed', **facts)} {bounded}"
        texts += [] if text in texts else [text]
    story = paragraphs(page.say("lot_both_ways"), texts, SMALL)
    chosen = lot["disposition"]
    if chosen:
        told = page.say(f"lot.disposition.{chosen['choice']}", reason=line(chosen["reason"], 300),
                        reference=line(chosen["reference"] or (chosen["document"] or "—")[:16], 60))  # fmt: skip
        if not chosen["stands"]:
            bare = "no_document" if chosen["choice"] == "accept" else "no_authority"
            told += " " + page.say(f"lot.disposition.{bare}")
        who = f"{line(chosen['name'], 60)}, {line(chosen['role'], 40)}, {page.voice.moment(chosen['at'])}"
        story += paragraphs(page.say("lot_chosen"), [f"{told}{page.recorded()} · {who}"])
    linked = [one for one in page.contents["lots"] if one["reworks"] == lot["lot"] or one["lot"] == lot["reworks"]]
    for one in linked:
        key = "lot_reworked_by" if one["reworks"] == lot["lot"] else "lot_reworks"
        word = page.say("lot.state." + one["decision"]["state"])
        to = f'<link destination="#lot-{one["n"]}" color="#8a3f17">{lot_name(page, one)}</link>'
        story += paragraphs(page.say("lot_rework"), [page.say(key, lot=to, state=word)])
    return [together(story)] if story else []
