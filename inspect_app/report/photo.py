"""The photo log: every photo declared, held or not."""

import re
from datetime import datetime, timedelta
from typing import Any

from inspect_app.report.person import person

EXIF_TIME = re.compile(r"(\d{4}):(\d\d):(\d\d) (\d\d):(\d\d):(\d\d)")
AGREE = timedelta(seconds=90)  # our choice: a phone writes EXIF and entry within a minute of each other


def photos(record: dict[str, Any], people: dict[str, Any], numbers: dict[str, Any], held: dict[str, Any],
           ) -> list[dict[str, Any]]:  # fmt: skip
    """Each photo: number, hash, where and to what it belongs, role, who, the entry's time and the picture's
    own
    time, whether its bytes are held, how they were lost after their receipt (``lost``: gone, ``damaged``: no
    longer of that hash), the digest of the copy that is printed, and why it cannot be drawn."""
    told = []
    for sha256, n in numbers["photos"].items():
        photo, facts = record["photos"][sha256], held.get(sha256) or {}
        told.append(
            {
                "n": n,
                "sha256": sha256,
                "digest": photo.get("digest"),
                "walk": numbers["walks"].get(photo.get("walk")),
                "station": numbers["stations"].get(photo.get("station") or ""),
                "answer": photo.get("answer"),
                "role": photo.get("role"),
                "area": photo.get("area"),
                "panel": photo.get("panel"),
                "lot": photo.get("lot"),
                "source": photo.get("source"),
                "type": photo.get("type"),
                "size": photo.get("size"),
                "by": person(people, photo.get("by")),
                "at": photo.get("at"),
                "exif_time": facts.get("exif_time"),
                "exif_offset": facts.get("exif_offset"),
                "clocks": clocks(photo.get("at"), facts.get("exif_time"), facts.get("exif_offset")),
                "position": photo.get("position"),
                "held": bool(facts.get("held")),
                "lost": facts.get("lost"),
                "copy": facts.get("copy"),
                "undecodable": facts.get("undecodable"),
                "width": facts.get("width"),
                "height": facts.get("height"),
            }
        )
    return told


def clocks(at: Any, exif: Any, offset: Any = None) -> str:
    """``same``, ``differ`` or ``unknown``: the entry's clock against the picture's. EXIF without an offset is
    local time of an unknown zone (Exif 2.31 added the offset), so it is compared with the local reading."""
    found = EXIF_TIME.fullmatch(exif) if isinstance(exif, str) else None
    try:
        entry = datetime.fromisoformat(at)
        picture = datetime(*(int(part) for part in found.groups())) if found else None  # type: ignore[arg-type]
        if picture is None:
            return "unknown"
        if isinstance(offset, str) and re.fullmatch(r"[+-]\d\d:\d\d", offset):
            apart = entry - datetime.fromisoformat(picture.isoformat() + offset)
        else:
            apart = entry.replace(tzinfo=None) - picture
    except (TypeError, ValueError, OverflowError):
        return "unknown"
    return "same" if abs(apart) <= AGREE else "differ"
