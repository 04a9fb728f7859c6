"""Take away packages that stay in the data folder and that nobody has touched for a week: they can be made again at any
time, and a copy of a job's photos takes as much room as the photos."""

import re
import shutil
from datetime import datetime, timedelta
from pathlib import Path
from uuid import uuid4

KEPT = timedelta(days=7)
# Ours alone, and what a command that was ended left of one; whatever else lies there is somebody's own.
OURS = re.compile(r"(seamwalk-package-[0-9a-f]{8}-[0-9]{8}T[0-9]{6}Z)(\.[0-9a-f]{32}\.part)?")


def sweep(folder: Path, now: datetime) -> None:
    """``folder``: where packages without a place of their own are written; a download over HTTP holds nothing in it.
    What cannot be taken away stays, and keeps no package from being made."""
    for one in folder.glob("seamwalk-package-*"):
        found = OURS.fullmatch(one.name)
        try:
            if not found or one.is_symlink() or not one.is_dir() or _touched(one) > (now - KEPT).timestamp():
                continue
            gone = one.with_name(f"{found[1]}.{uuid4().hex}.part")  # half a package must not look like one
            one.rename(gone)
        except OSError:
            continue
        shutil.rmtree(gone, ignore_errors=True)


def _touched(package: Path) -> float:
    """When it was last written, listed or read, as far as the system notes it, in seconds, which may be of a year that
    no calendar has: of its own folders and lists, since its photos are the vault's."""
    own = (package, package / "data", package / "data" / "photos", package / "manifest-sha256.txt")
    times = [time for one in own if one.exists() for time in (one.stat().st_mtime, one.stat().st_atime)]
    return max(times)
