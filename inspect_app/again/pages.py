"""Draw a report's pages again from its contents.

Fact ``pages_follow``: the pages drawn by this release from the enclosed contents, and the printed copies of photos that
these name by their digests, are the report's, byte for byte, up to its seal; and sealing changed nothing that is seen
(``sealing``). Where another release made the report and the bytes differ, it is not determinable why.
"""

import hashlib
import io
import tempfile
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, BinaryIO

from pyhanko.pdf_utils.reader import PdfFileReader

from inspect_app.again.contents import version_of
from inspect_app.again.copies import copies_in
from inspect_app.again.sealing import painted_in_sealing
from inspect_app.again.stated import pictures_stated
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.verify import Looked

NAME = "pages_follow"
Draw = Callable[[dict[str, Any], Callable[[str], Path | None], BinaryIO], dict[str, Any]]


def pages_fact(data: bytes, looked: Looked, ours: Mapping[str, str], draw: Draw) -> Fact:
    """The fact above. ``draw(contents, find, out)`` as ``write_pages``. Never raises for anything in the report."""
    told = looked.told
    if told is None:
        return Fact(NAME, UNKNOWN, "no_record")
    about = {"version": version_of(told)}
    try:
        with tempfile.TemporaryDirectory() as folder:
            kept = _kept(copies_in(PdfFileReader(io.BytesIO(data))), Path(folder))
            named = {sha256: facts["copy"] for sha256, facts in pictures_stated(told).items()}
            out = io.BytesIO()
            laid = draw(told, lambda sha256: kept.get(str(named.get(sha256))), out)
        drawn = out.getvalue()
        if not data.startswith(drawn):
            return Fact(NAME, *_unlike(told, ours), about | {"page": _page(data, drawn)})
        painted = painted_in_sealing(drawn, _up_to_seal(data), laid["seal"])
    except Exception as reason:  # contents that no page can be made of, a file that no reader takes, no room
        return Fact(NAME, UNKNOWN, "cannot_be_drawn", about | {"error": type(reason).__name__})
    if painted is not None:
        return Fact(NAME, FAILS, "painted_in_sealing", about | {"what": painted})
    return Fact(NAME, HOLDS, None, about | {"pages": laid["pages"]})


def _unlike(told: Mapping[str, Any], ours: Mapping[str, str]) -> tuple[str, str]:
    made = told.get("made_with")
    same = isinstance(made, dict) and made.get("pages") == ours["pages"]
    return (FAILS, "drawn_otherwise") if same else (UNKNOWN, "drawn_by_another_release")


def _kept(copies: Mapping[str, bytes], folder: Path) -> dict[str, Path]:
    found = {}
    for digest, data in copies.items():
        found[digest] = folder / hashlib.sha256(digest.encode()).hexdigest()
        found[digest].write_bytes(data)
    return found


def _up_to_seal(data: bytes) -> bytes:
    seal = next(iter(PdfFileReader(io.BytesIO(data)).embedded_signatures))
    return data[: int(seal.byte_range[2]) + int(seal.byte_range[3])]


def _page(data: bytes, drawn: bytes) -> str:
    """The first page whose own marks differ, as people count; ``""`` where it is none of them."""
    try:
        ours, theirs = (_marks(PdfFileReader(io.BytesIO(one))) for one in (drawn, data))
    except Exception:  # pages in another form than we write them
        return ""
    if len(ours) != len(theirs):
        return f"{len(theirs)}/{len(ours)}"
    return next((str(at) for at, (one, other) in enumerate(zip(ours, theirs, strict=True), 1) if one != other), "")


def _marks(reader: PdfFileReader) -> list[bytes]:
    count = int(reader.root["/Pages"]["/Count"])
    pages = (reader.find_page_for_modification(at)[0].get_object() for at in range(count))
    return [page["/Contents"].data for page in pages]
