"""Attacks on a package as a zip, by somebody who has no key: what one reader sees and another does not."""

import io
import tempfile
import zipfile
from collections.abc import Callable, Mapping
from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from typing import NamedTuple

from inspect_app.package.bag import Bag
from inspect_app.package.member import Member
from inspect_app.package.sheet import Sheet
from inspect_app.package.stored_zip import StoredZip
from tests.evidence.packed import sound

MADE = datetime(2026, 11, 26, 8, tzinfo=UTC)
FOLDER = "seamwalk-package"


class OnTheArchive(NamedTuple):
    """``what`` is done; ``change(zip)``: what is left."""

    what: str
    change: Callable[[bytes], bytes]


def zipped(files: Mapping[str, bytes], folder: str = FOLDER) -> bytes:
    """As a download of a package comes."""
    sheet = Sheet(Path(tempfile.gettempdir()))
    spans = {name: sheet.write(data) for name, data in files.items()}
    members = [Member(name, one.size, one.sha256, one) for name, one in spans.items()]
    return b"".join(StoredZip(Bag(folder, MADE, members)).blocks())


@cache
def archive() -> bytes:
    return zipped(sound())


def packed_anew(data: bytes, change: Callable[[zipfile.ZipFile], None] | None = None, method: int = 0) -> bytes:
    """The same members by a common program, and what it adds."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(out, "w", method) as new:
        for one in old.infolist():
            new.writestr(one.filename, old.read(one))
        if change:
            change(new)
    return out.getvalue()


def second(new: zipfile.ZipFile) -> None:
    """Another ``entries.txt`` behind the first: some readers take one, some the other."""
    import warnings

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        new.writestr(f"{FOLDER}/data/entries.txt", b"")


def hidden(data: bytes) -> bytes:
    """A stranger's bytes before the first member: a reader from the front sees them, one from the end does not."""
    return b"PK\x03\x04" + b"\0" * 26 + data


def header_changed(data: bytes) -> bytes:
    """The name in a member's own header is another than in the directory."""
    at = data.index(b"data/entries.txt")
    return data[:at] + b"data/entry00.txt" + data[at + 16 :]


def bomb(new: zipfile.ZipFile) -> None:
    new.writestr(f"{FOLDER}/data/photos/{'0' * 64}.jpg", b"\0" * 50_000_000, zipfile.ZIP_DEFLATED)


def photo_flipped(data: bytes) -> bytes:
    at = data.index(b" one photo (invented)")
    return data[:at] + b"_" + data[at + 1 :]


ATTACKS = [
    OnTheArchive("a bit of a photo is flipped in the zip", photo_flipped),
    OnTheArchive("a name is written twice in the zip", lambda data: packed_anew(data, second)),
    OnTheArchive("bytes are put before the first member", hidden),
    OnTheArchive("bytes are put behind the end", lambda data: data + b"\0"),
    OnTheArchive("bytes are put between the directory and its end", lambda data: data[:-22] + bytes(9) + data[-22:]),
    OnTheArchive("a member's own header names another file", header_changed),
    OnTheArchive("a member unpacks to many times its size", lambda data: packed_anew(data, bomb)),
    OnTheArchive("a member lies outside the package's folder", lambda data: packed_anew(
        data, lambda new: new.writestr("../note.txt", b"All is well"))),
    OnTheArchive("the package's folder leads out of where it is unpacked", lambda data: zipped(sound(), "..")),
    OnTheArchive("the zip is cut short", lambda data: data[: len(data) // 2]),
]  # fmt: skip
