"""The photo log: what was chosen by hand or needs a look is drawn, three to a row, and of each lot one open leg, each
over its hash; every other photo has its line with its hash. The bytes of all are kept whole."""

from itertools import groupby
from typing import Any

from inspect_app.report.pages.cells import Cells
from inspect_app.report.pages.look import BODY, CELL, CELL_HASH, SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.photo_words import full_caption, photo_cells, why_not_drawn
from inspect_app.report.pages.picture import Pictures
from inspect_app.report.pages.place_row import is_plain
from inspect_app.report.pages.row import Heading, Row, room, space
from inspect_app.report.pages.text import line

TALLEST, BESIDE = 80.0, 3
SHARES, STYLES = (0.06, 0.13, 0.205, 0.095, 0.51), (CELL, CELL, CELL, CELL, CELL_HASH)


def photos_section(page: Page, number: str) -> list[Any]:
    """In the order of the log."""
    story: list[Any] = [room(320), Heading(page.say("chapter.photos"), "photos", number=number)]
    if not page.contents["photos"]:
        return [*story, Row("", Paragraph(page.say("no_photos"), BODY), 8)]
    story.append(Row("", Paragraph(page.say("photos_say"), SMALL), 8))
    drawn, listed = sorted_out(page.contents)
    why = lambda photo: why_not_drawn(page, photo)  # noqa: E731
    for at in range(0, len(drawn), BESIDE):
        some = [(photo, full_caption(page, photo)) for photo in drawn[at : at + BESIDE]]
        story.append(Pictures(some, page.find, why, TALLEST, marks=True, columns=BESIDE))
    if not listed:
        return story
    says = page.say("photos_each", count=len(listed))
    return [*story, space(4), room(70), Row("", Paragraph(says, SMALL), 4), *_log(page, listed)]


def _log(page: Page, listed: list[Any]) -> list[Any]:
    """A table for each person and day of the photos that are not drawn here, in the order of the log."""
    taken = lambda photo: (page.voice.day(photo["at"]), page.voice.person(photo["by"]))  # noqa: E731
    head = [page.say(f"photo_head.{name}") for name in ("n", "what", "where", "at", "hash")]
    story: list[Any] = []
    for (day, who), some in groupby(listed, taken):
        photos = list(some)
        by = page.say("photo_by", day=day, who=line(who, 90))
        marks = [[f"photo-{photo['n']}"] for photo in photos]
        table = Cells(head, [photo_cells(page, photo) for photo in photos], SHARES, marks, STYLES)
        story += [room(70), Paragraph(f"<b>{by}</b>", BODY), table, space(4)]
    return story


def sorted_out(contents: dict[str, Any]) -> tuple[list[Any], list[Any]]:
    """``(drawn, listed)``. Drawn: of places chosen by hand, of answers that did not pass and stand beside no finding,
    of nothing that the checklist asked, and the first open leg of each lot. A place of a finding draws its own."""
    hand = {one["n"] for one in contents["stations"] if one["chosen"] != "drawn"}
    told = {photo["sha256"] for one in contents["answers"] if one["finding"] for photo in one["photos"]}
    plain = {photo["sha256"] for one in contents["answers"] if is_plain(one) for photo in one["photos"]}
    legs: set[Any] = set()
    drawn: list[Any] = []
    listed: list[Any] = []
    for photo in contents["photos"]:
        leg = photo["role"] == "leg"
        needed = photo["lot"] not in legs if leg else photo["station"] in hand or photo["sha256"] not in plain
        (drawn if needed and photo["sha256"] not in told else listed).append(photo)
        legs |= {photo["lot"]} if leg else set()
    return drawn, listed
