"""The files that make up the app on the phone, with their digests. Reads again what has changed on disk."""

import gzip
import hashlib
import json
import mimetypes
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

RULEBOOK = "/rulebook/"
SHARED = ("rules", "record")  # packages of the server that the phone runs too
SUFFIXES = {".js", ".mjs", ".css", ".json", ".wasm", ".svg", ".png", ".webmanifest"}
# In static/ and yet no members: the page and the worker have addresses of their own, some words are only said by the
# server, and what checks a package comes with the package.
OUTSIDE = {
    "index.html", "sw.js", "jsconfig.json", "words/checklist.json", "words/report.json", "words/report_roof.json",
    "look/view.css", "words/server.json", "words/server_people.json", "words/upkeep.json",
    "words/verify.json",
    "words/verify_page.json",
}  # fmt: skip
APART = "verify/"


@dataclass(frozen=True)
class Member:
    """One file of the app: ``content`` its bytes, ``type`` its MIME type, ``sha256`` in hexadecimal."""

    url: str
    content: bytes
    type: str

    @cached_property
    def sha256(self) -> str:
        return hashlib.sha256(self.content).hexdigest()

    @cached_property
    def gzipped(self) -> bytes:
        return gzip.compress(self.content, 9, mtime=0)


class ShellFiles:
    """The members of the app, from ``static`` and from the shared packages under ``package``."""

    def __init__(self, static: Path, package: Path) -> None:
        self._static = static
        self._package = package
        self._seen: dict[str, tuple[tuple[int, int], Member]] = {}
        self._known: dict[str, Path] = {}
        self._addresses: dict[str, str] = {}

    def places(self) -> Iterator[tuple[str, Path]]:
        """Address and place of every member, in order of address."""
        found = {"/": self._static / "index.html"}
        for place in self._static.rglob("*"):
            name = place.relative_to(self._static).as_posix()
            if place.suffix in SUFFIXES and name not in OUTSIDE and not name.startswith(APART):
                found[f"/static/{name}"] = place
        for package in SHARED:
            for place in (self._package / package).rglob("*.py"):
                found[f"{RULEBOOK}{place.relative_to(self._package).as_posix()}"] = place
        for url in sorted(found):
            if found[url].is_file():
                yield url, found[url]

    def members(self) -> list[Member]:
        """Every member, in order of address."""
        return [self._read(url, place) for url, place in self.places()]

    def member(self, url: str) -> Member | None:
        """The member at this address, or None. The folders are gone through only for an address not met before: a phone
        asks for every file, one by one."""
        if url not in self._known:
            self._known = dict(self.places())
        place = self._known.get(url)
        return self._read(url, place) if place and place.is_file() else None

    def pack(self, digests: list[str]) -> bytes | None:
        """The members of these digests, end to end; None where one of them is no file of the app as it is now. The
        folders are gone through only for a digest not met before: an install asks for some thirty packs."""
        found = [self._named(digest) for digest in digests]
        if None in found:
            self._addresses = {one.sha256: one.url for one in self.members()}
            found = [self._named(digest) for digest in digests]
        here = [one.content for one in found if one]
        return b"".join(here) if len(here) == len(digests) else None

    def _named(self, digest: str) -> Member | None:
        url = self._addresses.get(digest)
        member = self.member(url) if url else None
        return member if member and member.sha256 == digest else None

    def rulebook(self) -> dict[str, str]:
        """The Python files that the phone runs, as text, by their place below the package."""
        own = [one for one in self.members() if one.url.startswith(RULEBOOK)]
        return {one.url.removeprefix(RULEBOOK): one.content.decode() for one in own}

    def listing(self) -> dict[str, object]:
        """``{"build", "files": [{"url", "sha256", "size", "type"}]}``; ``build`` is the digest of ``files``."""
        files = [
            {"url": one.url, "sha256": one.sha256, "size": len(one.content), "type": one.type}
            for one in self.members()
        ]
        return {"build": _digest(files), "files": files}

    def build(self) -> str:
        """The digest that names the app as it is now."""
        return str(self.listing()["build"])

    def _read(self, url: str, place: Path) -> Member:
        stat = place.stat()
        state = (stat.st_mtime_ns, stat.st_size)
        known = self._seen.get(url)
        if known and known[0] == state:
            return known[1]
        kind = mimetypes.guess_type(place.name)[0] or "application/octet-stream"
        member = Member(url, place.read_bytes(), "text/html" if url == "/" else kind)
        self._seen[url] = (state, member)
        return member


def _digest(files: list[dict[str, object]]) -> str:
    return hashlib.sha256(json.dumps(files, separators=(",", ":")).encode()).hexdigest()
