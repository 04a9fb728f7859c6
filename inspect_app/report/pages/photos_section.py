"""The photo log: what is beside a finding or was chosen by hand is drawn, two to a row; of drawn places where all
passed, and of open legs after the first of a lot, a line each. All are enclosed by their hash and kept whole."""

from typing import Any

from reportlab.platypus import Paragraph

from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.photo_words import full_caption, why_not_drawn
from inspect_app.report.pages.picture import Pictures
from inspect_app.report.pages.place_row import is_clear
from inspect_app.report.pages.row import Anchor, Heading, Row, room


def photos_section(page: Page, number: str) -> list[Any]:
    """Photos in order of place and time."""
    story: list[Any] = [room(260), Heading(page.say("chapter.photos"), "photos", number=number)]
    if not page.contents["photos"]:
        return [*story, Row("", Paragraph(page.say("no_photos"), BODY), 8)]
    story.append(Row("", Paragraph(page.say("photos_say"), SMALL), 8))
    clear = _clear(page)
    legs: set[Any] = set()
    drawn, listed = [], []
    for photo in page.contents["photos"]:
        again = photo["role"] == "leg" and photo.get("lot") in legs
        (listed if photo["station"] in clear or again else drawn).append(photo)
        legs |= {photo.get("lot")} if photo["role"] == "leg" else set()
    why = lambda photo: why_not_drawn(page, photo)  # noqa: E731
    for at in range(0, len(drawn), 2):
        pair = [(photo, full_caption(page, photo)) for photo in drawn[at : at + 2]]
        story.append(Pictures(pair, page.find, why, 146, marks=True))
    if listed:
        story.append(Row("", Paragraph(page.say("photos_listed", count=len(listed)), SMALL), 4))
    for photo in listed:
        # A photo that is missing or unreadable is said at its line too: a list must not hide it.
        lost = "" if photo["held"] and photo["copy"] else f" · {why_not_drawn(page, photo)}"
        story += [Anchor(f"photo-{photo['n']}"),
                  Row("", Paragraph(" · ".join(full_caption(page, photo)) + lost, SMALL), 0)]  # fmt: skip
    return story


def _clear(page: Page) -> set[Any]:
    answers = {answer["id"]: answer for answer in page.contents["answers"]}
    return {one["n"] for one in page.contents["stations"] if is_clear(one, [answers[name] for name in one["answers"]])}
