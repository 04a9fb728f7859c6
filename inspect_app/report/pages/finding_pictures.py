"""The photos of a finding: first how it was beside how it is, then the others."""

from typing import Any

from inspect_app.report.pages.page import Page
from inspect_app.report.pages.photo_words import hash_line, short_caption, why_not_drawn
from inspect_app.report.pages.picture import Pictures, Words
from inspect_app.report.pages.row import space

TALLEST = 84


def finding_pictures(page: Page, finding: dict[str, Any]) -> list[Any]:
    """Two to a row, each over what it shows, when and its number in the log, or its hash where the log has none."""
    log = {one["sha256"]: one for one in page.contents["photos"]}
    # What an answer names and nobody declared is told among what is missing.
    known = [one for one in finding["pictures"] if one["n"] or one["role"] != "before" or finding["source"] == "hand"]
    story: list[Any] = []
    cells = [(one, _caption(page, finding, one, log.get(one["sha256"]))) for one in _paired(known)]
    for at in range(0, len(cells), 2):
        why = lambda photo: _why(page, photo)  # noqa: E731
        story += [space(4), Pictures(cells[at : at + 2], page.find, why, TALLEST, beside=True)]
    return story


def _paired(pictures: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """The last photo before beside the first of the last correction: the same view, where somebody matched it."""
    before = [one for one in pictures if one["role"] == "before"]
    after = [one for one in pictures if one["role"] == "after"]
    if not before or not after:
        return pictures
    first = [before[-1], next(one for one in after if one["of"] == after[-1]["of"])]
    return first + [one for one in pictures if one not in first]


def _caption(page: Page, finding: dict[str, Any], one: dict[str, Any], logged: dict[str, Any] | None) -> list[Words]:
    role = f"<b>{page.say('finding_photo.' + one['role'])}</b>"
    if logged:
        first, *more = short_caption(page, logged)
        return [f"{role} · {first}", *more]
    who = page.voice.person(finding["people"].get(one["by"]))
    return [role, f"{page.voice.moment(one['at'])} · {who}", hash_line(one["sha256"])]


def _why(page: Page, photo: dict[str, Any]) -> str:
    if photo["n"]:
        return why_not_drawn(page, photo)
    if not photo["held"]:
        return page.say(f"finding_photo_{photo['lost'] or 'not_held'}")
    return page.say("finding_photo_not_drawn", reason=page.say(f"undecodable.{photo['undecodable'] or 'no_copy'}"))
