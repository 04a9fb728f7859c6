"""Saved copies as tests make them: written by the standard library's tar writer, so that ours is not its own judge."""

import hashlib
import io
import json
import tarfile
from collections.abc import Iterable
from typing import Any

from inspect_app.entry.copy_seal import format_seal
from inspect_app.entry.format import parse
from inspect_app.entry.uuid7 import uuid7

AT = "2026-11-25T16:40:05.120-05:00"
Files = list[tuple[str, bytes]]


def item(what: str, name: str, job: str, size: int, **more: Any) -> dict[str, Any]:
    return {"what": what, "name": name, "job": job, "size": size, "person": "", "kind": "", "at": AT, **more}


def manifest(items: Iterable[dict[str, Any]]) -> bytes:
    told = {"v": 1, "kind": "copy", "copy": uuid7(1795642805120, b"invented12"), "at": AT, "items": list(items)}
    return json.dumps(told).encode()


def files_of(tokens: Iterable[str], photos: Iterable[tuple[str, bytes]], *phones: Any, lost: Files = ()) -> Files:
    """The members of a copy. ``photos``: job and bytes; ``phones``: whose keys seal it; ``lost``: photos that the list
    names as damaged on the phone."""
    items, held = [], []
    for token in tokens:
        entry = parse(token)
        items.append(item("entry", entry.digest, entry.job, len(token), person=entry.by, kind=entry.kind))
        held.append((f"entries/{entry.digest}", token.encode()))
    for job, data in photos:
        name = sha(data)
        items.append(item("photo", name, job, len(data)))
        held.append((f"photos/{job}/{name}", data))
    items += [item("photo", sha(data), job, len(data), damage="photo_damaged") for job, data in lost]
    said = manifest(items)
    seals = [(f"seals/{one.kid}", format_seal(said, AT, one.person.id, one.key).encode()) for one in phones]
    return [("manifest.json", said), *seals, *held]


def tar(files: Files, end: bytes = bytes(1024)) -> bytes:
    out = b""
    for name, data in files:
        out += header(name, size=len(data)) + data + bytes(-len(data) % 512)
    return out + end


def header(name: str, **more: Any) -> bytes:
    """One header, as ``tarfile`` writes it in the ustar format; ``more``: members of its ``TarInfo``."""
    about = tarfile.TarInfo(name)
    for member, value in more.items():
        setattr(about, member, value)
    return about.tobuf(tarfile.USTAR_FORMAT)


def sha(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def stream(data: bytes) -> io.BytesIO:
    return io.BytesIO(data)
