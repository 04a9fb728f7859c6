"""The fit check of each area: a ledger of what was asked for against what this roof has, the worst first and in full;
what passes is a row."""

from typing import Any

from inspect_app.report.order import RESULTS
from inspect_app.report.pages.fit_passed import is_brief, passed_table
from inspect_app.report.pages.fit_sides import line_name, sides
from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.mark import sign
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.row import Columns, Heading, Row, paragraphs, room, space, together
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import inputs_text, reason_text, rule_text, values_text

SHARES = (0.42, 0.32, 0.26)
WHOLE = 30  # letters of a limit that are not parted
# Said above in the line's own unit: the two sides and what is between them.
PAIRED = ("minimum", "tested_minimum", "rise", "reading", "at_least", "at_most", "equal", "aimed", "centred", "run",
          "needed", "return", "low", "high", "gap", "clearance", "spacing", "reached", "least", "penetration", "margin",
          "days_left")  # fmt: skip


def fit_section(page: Page, number: str) -> list[Any]:
    """One part for each area that was checked; those that were not are in the section of what was not looked at."""
    story: list[Any] = [Heading(page.say("chapter.fit"), "fit", number=number)]
    if not page.contents["fits"]:
        return [*story, Row("", Paragraph(page.say("fit_none"), BODY), 8)]
    chapter = [*story, Row("", Paragraph(page.say("fit_says"), SMALL), 4)]
    story = []
    for at, one in enumerate(page.contents["fits"]):
        story += _area(page, one, at, chapter)
        chapter = []  # it stands over the first area's lines, on the same page
    return story


def _area(page: Page, one: dict[str, Any], at: int, chapter: list[Any]) -> list[Any]:
    name = line(one["name"], 90)
    said = line(one["said_by"]["name"], 80)
    who = page.voice.person(one["by"])
    if one["by"].get("name") != one["said_by"]["name"]:
        who += f" ({page.say('fit_named', name=said)})"
    head: list[Any] = [
        *chapter,
        Heading(name, f"fit-{at + 1}", 1, name),
        Row(page.say("fit_recorded"), Paragraph(f"{page.voice.moment(one['at'])} · {who}", BODY)),
        Row(page.say("fit_for"), Paragraph(page.say("fit_for_says", day=page.voice.day(one["day"]),
                                                    assembly=line(one["assembly"])), BODY)),
        Row(page.say("fit_lines"), Paragraph(page.tally(_tally(one)), BODY)),
    ]  # fmt: skip
    warned = [page.say(f"fit_later.{each['what']}", at=page.voice.moment(each["at"])) for each in one["later"]]
    if one["left_out"]:
        warned.append(page.say("fit_left_out", lines=", ".join(line_name(page, each) for each in one["left_out"][:12])))
    if one["heads"] > 1:
        warned.append(page.say("fit_several", count=one["heads"]))
    head += paragraphs(page.say("fit_mind"), warned)
    notes = page.passage(one["note"])
    head += paragraphs(page.say("note"), [*notes[:-1], notes[-1] + page.recorded()] if notes else [])
    head += paragraphs("", [page.say("entry", digest=line(one["digest"], 50))], SMALL)
    head += [_version(page, each) for each in one["versions"]]
    ranked = sorted(one["lines"], key=lambda each: _rank(each["result"]))
    blocks = [_line(page, each) for each in ranked if not is_brief(each)]
    brief = [each for each in ranked if is_brief(each)]
    passed = passed_table(page, brief) if brief else []
    if not blocks:
        return [room(260), together(head), *passed]  # a head over two rows is hardly a table
    columns = [page.say("fit_asked"), page.say("fit_has"), page.say("fit_spare")]
    head += [space(5), Columns("", columns, SHARES, SMALL, True)]
    return [together([*head, *blocks[0]]), *map(together, blocks[1:]), *passed]


def _rank(result: Any) -> int:
    return RESULTS.index(result if result in RESULTS else "not_determinable")


def _tally(one: dict[str, Any]) -> list[dict[str, Any]]:
    ranks = [_rank(each["result"]) for each in one["lines"]]
    return [{"result": RESULTS[at], "count": ranks.count(at)} for at in sorted(set(ranks))]


def _line(page: Page, one: dict[str, Any]) -> list[Any]:
    limit, found, spare = sides(page, one)
    name = line_name(page, one["line"])
    strong = f"<b>{sign(one['result'])} {page.voice.result(one['result'])}</b>"
    asked = f"<b>{name}</b>" + (f" {limit if len(limit) > WHOLE else limit.replace(' ', chr(160))}" if limit else "")
    story: list[Any] = [Columns(strong, [asked, found, spare], SHARES)]
    if one["now"]:
        story += paragraphs("", [page.say("fit_now", result=page.voice.result(one["now"]))])
    if one["get"] and one["result"] != "pass":
        key = f"fit.get.{one['get']}"
        what = line(page.say(key), 300) if page.voice.knows(key) else line(one["get"], 80)
        story += paragraphs("", [page.say("fit_get", what=what)])
    left = {name: value for name, value in one["working"]["values"].items() if name not in PAIRED}
    working = one["working"] | {"rule": one["working"]["rule"] or "", "values": left}
    told = [reason_text(page, working)]
    if values := values_text(page, working, one["result"]):
        told.append(f"{page.say('values')}: {values}")
    if inputs := inputs_text(page, working):
        told.append(f"{page.say('put_in')}: {inputs}")
    story += paragraphs("", [" ".join(part for part in told if part)] if any(told) else [], SMALL)
    story += paragraphs("", [rule_text(page, one, "fit_by_record")], SMALL)
    return [*story, space(5)]


def _version(page: Page, one: dict[str, Any]) -> Any:
    stands = page.say("version_stands" if one["stands"] else "version_replaced")
    text = page.say("version", result=page.voice.result(one["result"]), stands=stands,
                    who=page.voice.person(one["by"]), at=page.voice.moment(one["at"]))  # fmt: skip
    return Row("", Paragraph(text, SMALL))
