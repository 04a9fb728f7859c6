"""What is written under a photo: which, where, when by which clock, who, and its hash."""

from typing import Any

from inspect_app.report.pages.look import CAPTION_HASH, CAPTION_HEAD
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.picture import Words
from inspect_app.report.pages.text import line


def short_caption(page: Page, photo: dict[str, Any]) -> list[Words]:
    """Number and role, when, who, hash, for a photo beside its finding, which says where."""
    log = page.to("photo", photo["n"], page.say("photo_n", n=photo["n"]))
    return [
        f"{log} · {page.say('photo_role.' + str(photo['role']))}",
        page.voice.moment(photo["at"]) + " · " + page.voice.person(photo["by"]),
        *_own_clock(page, photo), hash_line(photo["sha256"]),
    ]  # fmt: skip


def hash_line(sha256: Any) -> Words:
    """The hash, small: it is compared letter by letter, not read."""
    return line(sha256, 64), CAPTION_HASH


def _own_clock(page: Page, photo: dict[str, Any]) -> list[str]:
    """What the picture says itself of when it was taken, where that is not what the phone said."""
    if photo["clocks"] == "unknown":
        return [page.say("own_clock_none")]
    if photo["clocks"] != "differ":
        return []
    time = line(f"{photo['exif_time']} {photo['exif_offset'] or ''}".strip(), 40)
    return [page.say("own_clock", time=time, zone="" if photo["exif_offset"] else page.say("zone_unknown"))]


def full_caption(page: Page, photo: dict[str, Any]) -> list[Words]:
    """Everything the log says of a photo that it draws."""
    source = page.say(f"photo_source.{photo['source']}")
    role = page.say(f"photo_role.{photo['role']}")
    told: list[Words] = [
        (f"{page.say('photo_n', n=photo['n'])} · {role} · {source}", CAPTION_HEAD),
        taken_at(page, photo),
        page.voice.moment(photo["at"]) + " · " + page.voice.person(photo["by"]),
    ]
    told += _own_clock(page, photo)
    position = photo["position"]
    if isinstance(position, dict):
        told.append(
            page.say(
                "position",
                latitude=line(position.get("latitude"), 20),
                accuracy=line(position.get("accuracy"), 12),
                longitude=line(position.get("longitude"), 20),
            )
        )
    if not photo["copy"]:
        told.append(page.say("photo_original", size=line(photo["size"], 20), type=line(photo["type"], 30)))
    return [*told, hash_line(photo["sha256"])]


def taken_at(page: Page, photo: dict[str, Any]) -> str:
    """Its place; of an open leg the panel."""
    if photo["station"] is None and photo["panel"] is not None:
        return page.say("leg_at", area=page.area(photo["area"]), panel=line(photo["panel"], 12))
    return page.place(photo["station"])


def photo_cells(page: Page, photo: dict[str, Any]) -> list[str]:
    """A row of the log: number, what it shows, where, when, hash; what the picture's own clock says, where it differs;
    why it cannot be drawn, where it cannot."""
    where = taken_at(page, photo) if photo["panel"] is not None else page.say("whole_walk")
    if photo["station"] is not None:
        where = page.to("place", photo["station"], page.say("place_n", n=photo["station"]))
    beneath = [page.say("own_clock", time=line(photo["exif_time"], 40), zone="")] if photo["clocks"] == "differ" else []
    if not photo["held"] or not photo["copy"]:
        beneath.append(why_not_drawn(page, photo))
    told = line(photo["sha256"], 64) + "".join(f'<br/><font size="7.3">{one}</font>' for one in beneath)
    return [line(photo["n"]), page.say("photo_role." + str(photo["role"])), where, line(str(photo["at"])[11:19]), told]


def why_not_drawn(page: Page, photo: dict[str, Any]) -> str:
    """The note in the place of a picture."""
    if not photo["held"]:
        return page.say(f"photo_{photo['lost']}" if photo["lost"] else "photo_not_held", n=photo["n"])
    reason = page.say(f"undecodable.{photo['undecodable'] or 'no_copy'}")
    return page.say("photo_not_drawn", n=photo["n"], reason=reason)
