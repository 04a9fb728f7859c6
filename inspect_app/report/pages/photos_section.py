"""The photo log: every photo, two to a row, with its full caption."""

from typing import Any

from reportlab.platypus import Paragraph

from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.photo_words import full_caption, why_not_drawn
from inspect_app.report.pages.picture import Pictures
from inspect_app.report.pages.row import Heading, Row, room


def photos_section(page: Page, number: str) -> list[Any]:
    """Photos in order of place and time."""
    story: list[Any] = [room(260), Heading(page.say("chapter.photos"), "photos", number=number)]
    if not page.contents["photos"]:
        return [*story, Row("", Paragraph(page.say("no_photos"), BODY), 8)]
    story.append(Row("", Paragraph(page.say("photos_say"), SMALL), 8))
    photos = page.contents["photos"]
    why = lambda photo: why_not_drawn(page, photo)  # noqa: E731
    for at in range(0, len(photos), 2):
        pair = [(photo, full_caption(page, photo)) for photo in photos[at : at + 2]]
        story.append(Pictures(pair, page.find, why, 146, marks=True))
    return story
