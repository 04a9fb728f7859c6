"""A piece of the museum: one phone's database and its office's folder, as a build left them.

The keys in it were made for it alone, for invented people and an invented office.
"""

import gzip
import json
import zipfile
from dataclasses import dataclass
from pathlib import Path
from typing import Any

HERE = Path(__file__).parent
RELEASES = sorted((int(place.name.removeprefix("release_")) for place in HERE.glob("release_*")), reverse=True)


@dataclass(frozen=True)
class Piece:
    """``phone``: what ``database.js`` tells of it. ``office``: the packed folder of the server it sent to."""

    phone: dict[str, Any]
    office: Path

    def rows(self, store: str) -> list[Any]:
        """The rows of a store, without their keys."""
        return [value for one in self.phone["stores"] if one["name"] == store for _, value in one["rows"]]

    def unpack(self, folder: Path) -> None:
        with zipfile.ZipFile(self.office) as packed:
            packed.extractall(folder)
        for name in ("photos/incoming", "uploads"):
            (folder / name).mkdir(parents=True, exist_ok=True)


def piece(release: int) -> Piece:
    folder = HERE / f"release_{release}"
    return Piece(json.loads(gzip.decompress((folder / "phone.json.gz").read_bytes())), folder / "office.zip")


def write(release: int, phone: dict[str, Any], office: Path) -> None:
    """Add a piece. One that stands is never written again: it is what phones out there hold.

    Raises ``FileExistsError``.
    """
    folder = HERE / f"release_{release}"
    folder.mkdir()
    text = json.dumps(phone, sort_keys=True, separators=(",", ":"))
    (folder / "phone.json.gz").write_bytes(gzip.compress(text.encode(), mtime=0))
    with zipfile.ZipFile(folder / "office.zip", "w", zipfile.ZIP_DEFLATED) as packed:
        for place in sorted(office.rglob("*")):
            if place.is_file() and "definitions" not in place.parts and not place.name.endswith(("-shm", "-wal")):
                packed.write(place, place.relative_to(office))
