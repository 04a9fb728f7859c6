"""Uploads in progress: their declarations read, their bytes are no more than declared, each in its own place."""

import json
from pathlib import Path

from inspect_app.intake.uploads_place import Upload, folder_of, upload_id
from inspect_app.upkeep.fault import Fault


def check_uploads(data: Path) -> tuple[int, list[Fault]]:
    """How many there are, and what is wrong. No receipt hangs on any of this: the phone still holds every byte. What
    finishes while it is looked at is passed over."""
    folder, faults, count = data / "uploads", list[Fault](), 0
    for state in sorted(folder.glob("*/*.json")):
        where = state.relative_to(data).as_posix()
        try:
            upload = Upload(**json.loads(state.read_text("utf-8")))
            named = upload_id(upload.device, upload.job, upload.sha256)
            placed = (folder_of(folder, upload.device), f"{named}.json") == (state.parent, state.name)
            size = state.with_suffix(".part").stat().st_size
            longer = size > upload.length
            count += 1
        except FileNotFoundError:  # finished, or held already: a declaration without bytes is a complete one
            continue
        except (ValueError, TypeError, RecursionError):
            faults.append(Fault("upload_unreadable", where))
            continue
        if not placed or upload.id != named:
            faults.append(Fault("upload_misplaced", where))
        elif longer:
            faults.append(Fault("upload_too_long", where, {"size": size, "length": upload.length}))
    for part in sorted(folder.glob("*/*.part")):
        if not part.with_suffix(".json").exists():
            faults.append(Fault("upload_undeclared", part.relative_to(data).as_posix(), note=True))
    return count, faults
