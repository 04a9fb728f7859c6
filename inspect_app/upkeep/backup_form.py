"""What a backup looks like: the files below it, and the page that says what they are.

A folder, or one .tar file (POSIX.1-2001) of the same names. ``backup.json`` is written last and names the rest: what it
does not name is left over from a backup that was cut off. Photos lie as in the vault and are named by what they
contain; the database is always one SQLite file, whichever the server uses.
"""

import hashlib
import json
import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any, NamedTuple

from inspect_app.errors import BadInput
from inspect_app.store.vault import blocks
from inspect_app.upkeep.fault import Fault

PAGE = "backup.json"
PHOTO = re.compile(r"photos/[0-9a-f]{2}/([0-9a-f]{64})")
FILE = re.compile(
    r"server\.key|seal/seal-(?:key|certificate)\.pem|definitions/[\w-]{43}\.json|database-[\w-]+\.sqlite3"
    r"|reports/[0-9a-f-]{36}/(?:report-\d{4,}\.pdf|contents-\d{4,}\.json)"
)
VERSION = 1
LARGEST_PAGE = 64 * 1024 * 1024


class Page(NamedTuple):
    """``at``: when; ``kid``: the server's key; ``last``, ``head``: the newest statement in it; ``database``: its file;
    ``files`` {name: SHA-256 in hexadecimal} of all but photos; ``photos`` {SHA-256: size} it was able to copy."""

    at: str
    kid: str
    last: int
    head: str | None
    database: str
    files: dict[str, str]
    photos: dict[str, int]

    def text(self) -> bytes:
        return (json.dumps({"v": VERSION, **self._asdict()}, sort_keys=True, indent=1) + "\n").encode()


def read_page(data: bytes, shown: str) -> Page:
    """``backup.json``. Raises ``BadInput`` ``not_a_backup`` (``shown`` is what was named) for anything else; no name in
    it leads out of the backup."""
    try:
        said: Mapping[str, Any] = json.loads(data)
        page = Page(**{name: said[name] for name in Page._fields})
        good = said["v"] == VERSION and page.database in page.files and isinstance(page.last, int)
        good = good and isinstance(page.files, dict) and isinstance(page.photos, dict)
        good = good and all(FILE.fullmatch(name) for name in page.files)
        good = good and all(PHOTO.fullmatch(photo_name(name)) for name in page.photos)
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        good = False
    if not good:
        raise BadInput("not_a_backup", "backup", shown)
    return page


def check_files(page: Page, folder: Path, but: str = "") -> list[Fault]:
    """What of all ``but`` one and the photos is not below ``folder`` as the page says it was."""
    faults = []
    for name, digest in page.files.items():
        if name == but:
            continue
        if not (folder / name).is_file():
            faults.append(Fault("backup_file_gone", name))
        elif digest_of(folder / name) != digest:
            faults.append(Fault("backup_file_damaged", name))
    return faults


def photo_name(sha256: str) -> str:
    return f"photos/{sha256[:2]}/{sha256}"


def digest_of(file: Path) -> str:
    """SHA-256 in hexadecimal. Raises ``OSError``."""
    hasher = hashlib.sha256()
    for block in blocks(file):
        hasher.update(block)
    return hasher.hexdigest()
