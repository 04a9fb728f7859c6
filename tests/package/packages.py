"""Packages of a small job, and bags of made-up members for what a job is too small for."""

import hashlib
import io
import zipfile
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from inspect_app.package.bag import Bag, bagged, member
from inspect_app.package.folder import write_folder
from inspect_app.package.make import Packed
from inspect_app.package.member import Member
from inspect_app.package.sheet import Sheet
from inspect_app.package.stored_zip import StoredZip

MADE = datetime(2026, 11, 27, 9, 30, 15, tzinfo=UTC)


def packed(office: Any, job: str, made: datetime = MADE) -> Packed:
    with office.app.app_context():
        return office.app.extensions["packages"].pack(job, made)


def folder_of(office: Any, job: str, target: Path) -> Path:
    return write_folder(packed(office, job).bag, target, office.settings.data)


def zipped(bag: Bag) -> bytes:
    return b"".join(StoredZip(bag).blocks())


def opened(data: bytes) -> zipfile.ZipFile:
    return zipfile.ZipFile(io.BytesIO(data))


def files_below(folder: Path) -> dict[str, bytes]:
    return {one.relative_to(folder).as_posix(): one.read_bytes() for one in sorted(folder.rglob("*")) if one.is_file()}


def made_up(folder: Path, files: dict[str, bytes]) -> Bag:
    """A bag of files on the disk, beside texts of the sheet."""
    sheet, members = Sheet(folder), []
    for name, data in files.items():
        path = folder / hashlib.sha256(name.encode()).hexdigest()
        path.write_bytes(data)
        members.append(Member(f"data/{name}", len(data), hashlib.sha256(data).hexdigest(), path))
    text = member(sheet, "data/package.json", b"{}\n")
    return bagged("made-up", MADE, [text, *members], {}, b"<!doctype html>", sheet)
