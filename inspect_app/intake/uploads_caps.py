"""How much may lie unfinished, and for how long."""

import json
from pathlib import Path
from typing import NamedTuple

from inspect_app.intake.uploads_refused import UploadRefused

DAY = 86_400


class Caps(NamedTuple):
    """Limits: bytes of one photo; unfinished uploads of one device and the bytes they declare; days until one
    that nobody continues is swept. An upload that was begun can always be continued, so a phone that has
    reached a limit empties itself."""

    photo: int = 40_000_000
    unfinished: int = 64
    bytes: int = 1_000_000_000
    days: float = 7


DEFAULT_CAPS = Caps()


def check_room(folder: Path, length: int, caps: Caps) -> None:
    """Refuse one more upload of ``length`` bytes in this device's folder where it would pass a limit."""
    parts = list(folder.glob("*.part"))
    if len(parts) >= caps.unfinished:
        raise UploadRefused("upload_too_many", "upload", len(parts), most=caps.unfinished)
    waiting = sum(_declared(part) for part in parts)
    if waiting + length > caps.bytes:
        raise UploadRefused("upload_too_many_bytes", "Upload-Length", length, waiting=waiting, most=caps.bytes)


def sweep(folder: Path, now: float, caps: Caps) -> int:
    """Remove uploads, and what a crash left of them, that nobody touched for ``caps.days``; returns how many.
    ``now``: seconds since 1970, by the clock that dates the files."""
    newest: dict[Path, float] = {}
    for file in folder.glob("*/*.*"):
        stem = file.with_suffix("")
        newest[stem] = max(newest.get(stem, 0.0), _touched(file))
    stale = [stem for stem, touched in newest.items() if touched < now - caps.days * DAY]
    for stem in stale:
        for ending in (".json", ".part", ".turn", ".new"):
            stem.with_suffix(ending).unlink(missing_ok=True)
    return len(stale)


def _touched(file: Path) -> float:
    try:
        return file.stat().st_mtime
    except FileNotFoundError:  # finished in this moment
        return 0.0


def _declared(part: Path) -> int:
    try:
        return int(json.loads(part.with_suffix(".json").read_text("utf-8"))["length"])
    except (FileNotFoundError, ValueError, KeyError):
        return 0
