"""The bag around the payload: the tag files of BagIt 1.0 (RFC 8493, sections 2.1 and 2.2)."""

from collections.abc import Iterable
from datetime import UTC, datetime
from typing import NamedTuple

from inspect_app.evidence.package.says import on_a_line
from inspect_app.package.member import Member
from inspect_app.package.sheet import Sheet

DECLARATION = b"BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"
PAGE = "verify.html"


class Bag(NamedTuple):
    """``name`` of its base directory; ``members`` in the order in which they are written; ``made``: when."""

    name: str
    made: datetime
    members: list[Member]

    @property
    def digest(self) -> str:
        """SHA-256 of its tag manifest: two packages with the same are the same byte for byte."""
        return next(one.sha256 for one in self.members if one.name == "tagmanifest-sha256.txt")


def bagged(
    name: str, made: datetime, payload: list[Member], told: dict[str, str], page: bytes, sheet: Sheet
) -> Bag:
    """A bag of these members, all below ``data/``. ``told``: further lines of ``bag-info.txt``; ``page``: the bytes of
    ``verify.html``, which stands outside of the payload: it is no evidence."""
    payload = sorted(payload, key=lambda one: one.name)
    info = {"Bagging-Date": f"{made.astimezone(UTC):%Y-%m-%d}",
            "Payload-Oxum": f"{sum(one.size for one in payload)}.{len(payload)}", **told}  # fmt: skip
    texts = {
        "bagit.txt": DECLARATION,
        "bag-info.txt": "".join(f"{label}: {on_a_line(value)}\n" for label, value in info.items()).encode(),
        "manifest-sha256.txt": manifest(payload),
        PAGE: page,
    }
    tags = [member(sheet, name, text) for name, text in texts.items()]
    listed = manifest(sorted(tags, key=lambda one: one.name))
    return Bag(name, made, [*tags, member(sheet, "tagmanifest-sha256.txt", listed), *payload])


def member(sheet: Sheet, name: str, text: bytes) -> Member:
    """A member whose bytes are this text."""
    span = sheet.write(text)
    return Member(name, span.size, span.sha256, span)


def manifest(members: Iterable[Member]) -> bytes:
    """A line for each, ``DIGEST  NAME``. Our names hold nothing that section 2.1.3 would have percent-encoded."""
    return "".join(f"{one.sha256}  {one.name}\n" for one in members).encode("ascii")
