"""The names that a package may hold: a fixed layout, so that no name leads anywhere else."""

import re
from typing import NamedTuple

BAGIT, INFO, PAYLOAD, TAGS, PAGE = (
    "bagit.txt", "bag-info.txt", "manifest-sha256.txt", "tagmanifest-sha256.txt", "verify.html",
)  # fmt: skip
PACKAGE, KEYS = "data/package.json", "data/keys.json"
TOKENS = ("data/enrolments.txt", "data/entries.txt", "data/receipts.txt", "data/server-key.json")
OF_THE_BAG = (BAGIT, INFO, PAYLOAD, TAGS)
NEEDED = (*OF_THE_BAG, PAGE, PACKAGE, KEYS, *TOKENS)
PHOTO = re.compile(r"data/photos/([0-9a-f]{64})\.(jpg|png|webp|heic|bin)")
DEFINITION = re.compile(r"data/definitions/([A-Za-z0-9_-]{43})\.json")
REPORT = re.compile(r"data/reports/([1-9][0-9]{0,8})-([a-z0-9_-]{1,80})\.pdf")
SYSTEM = (".DS_Store", "Thumbs.db", "desktop.ini")  # what a system puts into folders that were looked at

# Bytes of a file that is read whole; photos and definitions are only hashed, block by block.
LARGEST_TOKENS, LARGEST_REPORT, LARGEST_TEXT = 256 * 1024**2, 1024**3, 32 * 1024**2
MOST = 200_000  # files: a list beyond is no package


class Strange(NamedTuple):
    """What stands in a package and is no plain file: ``code`` ``link`` (a symbolic link) or ``special``."""

    name: str
    code: str


def belongs(name: str) -> bool:
    """Whether the layout has a place for this name."""
    return name in NEEDED or any(one.fullmatch(name) for one in (PHOTO, DEFINITION, REPORT))


def of_the_system(name: str) -> bool:
    """A file that an operating system left there by itself; it is not read, and counted."""
    return name.rpartition("/")[2] in SYSTEM
