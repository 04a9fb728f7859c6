"""A small evidence package of keys made here: two lots by real tickets, a walk with a place, an answer, its photos."""

import hashlib
import io
import json
import zipfile
from typing import Any

from PIL import Image

from inspect_app.entry.base64url import decode, encode
from inspect_app.entry.format import parse
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.statement import entry_receipt, format_statement, parse_statement, photo_receipt
from inspect_app.entry.thumbprint import thumbprint
from inspect_app.package.bag import DECLARATION, PAGE
from inspect_app.package.keys import keys
from tests.evidence.drawn import Site
from tests.evidence.record import AT, Author, Key, answer, enrol
from tests.phone import new_uuid

FOLDER = "seamwalk-package-small"
Files = dict[str, bytes]
DEFINITION = b'{"id":"invented","items":[],"version":1}'
NAMED = encode(hashlib.sha256(DEFINITION).digest())
TAGS = "tagmanifest-sha256.txt"


def picture(shade: int) -> bytes:
    """A small photo of one colour."""
    made = io.BytesIO()
    Image.new("RGB", (64, 48), (shade, 120, 160)).save(made, "JPEG")
    return made.getvalue()


PHOTOS = [picture(20), picture(220)]


class Roof(Site):
    """A site whose job names the checklist of this package."""

    def say(self, by: Author, kind: str, subject: str, body: dict[str, Any]) -> str:
        named = {"definitions": {"invented": NAMED}} if kind == "job" else {}
        return super().say(by, kind, subject, body | named)


def drawn(by_chief: bool = False) -> Roof:
    """Panels 1 to 20 by the first ticket, 12 of them set, and 21 to 40 by the third: the second was left out. With
    ``by_chief`` somebody else's key signs the last."""
    made = Roof()
    made.plan(1, 20, 0)
    made.say(made.foreman, "mark", new_uuid(), {"lot": made.first, "area": made.area, "to": 12, "against": []})
    made.plan(21, 40, 2, by=made.chief if by_chief else None)
    return made


class Small:
    """The record and every private key. ``entries`` and ``chain`` are lists of tokens, changed at will before
    ``files``."""

    def __init__(self, made: Site | None = None) -> None:
        self.site = made or drawn()
        self.names = [hashlib.sha256(one).hexdigest() for one in PHOTOS]
        self.walk, self.station = new_uuid(), new_uuid()
        foreman = self.site.foreman
        self.site.say(foreman, "walk", self.walk, {"definition": NAMED, "areas": [self.site.area]})
        self.site.say(foreman, "station", self.station, {"walk": self.walk, "area": self.site.area, "panel": 3})
        # As the record has it: the subject's first part is the place.
        said = answer(f"{self.walk}/invented/screw_centred", "fail")
        said |= {"station": self.station, "area": self.site.area, "definition": NAMED, "photos": self.names}
        self.site.say(foreman, "answer", f"{self.station}/invented/screw_centred", said | {"reading": None})
        for sha256 in self.names:
            self.site.say(foreman, "photo", sha256, {"walk": self.walk, "station": self.station, "sha256": sha256})
        self.server: Key = self.site.server
        self.enrolments = [enrol(self.server, at, one) for at, one in enumerate(self.site.authors, 1)]
        self.entries = list(self.site.entries)
        self.photos = list(zip(self.names, PHOTOS, strict=True))
        self.chain = chain(self.server, self.site.job, self.entries, self.photos)

    def files(self) -> Files:
        key = public_jwk(self.server)
        tokens = {"enrolments.txt": self.enrolments, "entries.txt": self.entries, "receipts.txt": self.chain}
        made: Files = {f"data/{name}": "".join(f"{one}\n" for one in lines).encode() for name, lines in tokens.items()}
        made["data/server-key.json"] = (json.dumps(key, sort_keys=True, indent=1) + "\n").encode()
        made["data/keys.json"] = spelled(keys(self.enrolments))
        made["data/package.json"] = spelled({"v": 1, "kind": "package", "made": "2026-11-27T09:30:15.000+00:00",
                                             "job": self.site.job, "server_kid": thumbprint(key)})  # fmt: skip
        made[f"data/definitions/{NAMED}.json"] = DEFINITION
        made |= {f"data/photos/{sha256}.jpg": data for sha256, data in self.photos}
        return listed(made)

    @property
    def fingerprint(self) -> str:
        return decode(thumbprint(public_jwk(self.server)), "kid").hex()

    @property
    def foreman(self) -> Author:
        return self.site.foreman


def chain(server: Key, job: str, entries: list[str], photos: list[tuple[str, bytes]]) -> list[str]:
    """Receipts of the entries, then of the photos."""
    made: list[str] = []

    def next_one(give: Any, *thing: Any) -> None:
        prev = parse_statement(made[-1]).digest if made else None
        made.append(format_statement(give(1000 + len(made), AT, job, len(made), prev, *thing), server))

    for one in entries:
        next_one(entry_receipt, parse(one).digest)
    for sha256, data in photos:
        next_one(photo_receipt, sha256, len(data))
    return made


def listed(files: Files, page: bytes = b"<!doctype html>") -> Files:
    """The files with the bag's own around them, as whoever changed them would write its lists anew."""
    payload = {name: data for name, data in files.items() if name.startswith("data/")}
    oxum = f"Payload-Oxum: {sum(map(len, payload.values()))}.{len(payload)}\n"
    tags = {"bagit.txt": DECLARATION, "bag-info.txt": f"Bagging-Date: 2026-11-27\n{oxum}".encode(),
            PAGE: files.get(PAGE, page), "manifest-sha256.txt": manifest(payload)}  # fmt: skip
    return {**tags, TAGS: manifest(tags), **dict(sorted(payload.items()))}


def manifest(files: Files) -> bytes:
    return "".join(f"{hashlib.sha256(data).hexdigest()}  {name}\n" for name, data in sorted(files.items())).encode()


def spelled(told: object) -> bytes:
    return (json.dumps(told, ensure_ascii=False, sort_keys=True, indent=1) + "\n").encode()


def zipped(files: Files) -> bytes:
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_STORED) as archive:
        for name, data in files.items():
            archive.writestr(f"{FOLDER}/{name}", data)
    return made.getvalue()
