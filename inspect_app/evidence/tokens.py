"""Read the enclosed tokens: what each is, and which of them are signed by whom they must be."""

import json
from collections.abc import Callable, Mapping
from typing import NamedTuple, TypeVar

from inspect_app.entry.format import Entry
from inspect_app.entry.jwk import Jwk
from inspect_app.entry.jws import Jws
from inspect_app.entry.refusal import Refused
from inspect_app.entry.statement import Statement
from inspect_app.evidence import once
from inspect_app.evidence.enclosure import ENROLMENTS, ENTRIES, RECEIPTS, SERVER_KEY

LARGEST_KEY = 4096  # bytes; a P-256 JWK takes 200
MANY = 10_000  # lines of one file, from where on they must be long enough for tokens
SHORTEST = 200  # bytes of a token: its header and its signature alone take more
One = TypeVar("One", bound=Jws)


class Fault(NamedTuple):
    """A token that does not hold: its line, from 1, and why (``static/words/entry.json``)."""

    line: int
    code: str


class Tokens(NamedTuple):
    """``server_key``; ``enrolments`` and ``entries`` that hold, in their order, and the ``faults`` of those
    that do not; ``receipts`` as they stand: ``entry.receipts`` looks at them as one chain."""

    server_key: Jwk
    enrolments: list[Statement]
    enrolment_faults: list[Fault]
    entries: list[Entry]
    entry_faults: list[Fault]
    receipts: list[bytes]


def read_tokens(files: Mapping[str, bytes]) -> Tokens:
    """Take the enclosed files apart. ``ValueError`` or ``KeyError`` when a file is missing or the server's key
    is none; one bad token never hides another."""
    if len(files[SERVER_KEY]) > LARGEST_KEY:
        raise ValueError("server_key")
    server_key = json.loads(files[SERVER_KEY])
    if not isinstance(server_key, dict):
        raise ValueError("server_key")
    # A kilobyte can unpack to a million empty lines, each of them a fault to keep.
    for name in (ENROLMENTS, ENTRIES, RECEIPTS):
        if files[name].count(b"\n") > MANY and files[name].count(b"\n") * SHORTEST > len(files[name]):
            raise ValueError("lines")

    def by_the_server(line: bytes) -> Statement:
        statement = once.statement(line)
        once.signed(statement, server_key)
        if statement.kind == "receipt":
            raise Refused("unknown_kind", "kind", statement.kind)
        return statement

    enrolments, enrolment_faults = _each(files[ENROLMENTS], by_the_server)
    owners = {one.payload["kid"]: one.payload for one in enrolments if one.kind == "enrolment"}

    def by_its_author(line: bytes) -> Entry:
        entry = once.entry(line)
        owner = owners.get(entry.kid)
        if owner is None:
            raise Refused("unknown_key", "header.kid", entry.kid)
        once.signed(entry, _mapping(owner["jwk"]))
        if _mapping(owner["person"])["id"] != entry.by:
            raise Refused("wrong_person", "by", entry.by)
        return entry

    entries, entry_faults = _each(files[ENTRIES], by_its_author)
    return Tokens(server_key, enrolments, enrolment_faults, entries, entry_faults, _lines(files[RECEIPTS]))


def _each(data: bytes, read: Callable[[bytes], One]) -> tuple[list[One], list[Fault]]:
    good: list[One] = []
    faults = []
    for number, line in enumerate(_lines(data), 1):
        try:
            good.append(read(line))
        except Refused as refused:
            faults.append(Fault(number, refused.code))
    return good, faults


def _lines(data: bytes) -> list[bytes]:
    """Each ended by one line feed: what follows the last is a line too, and no token."""
    lines = data.split(b"\n")
    return lines if lines[-1] else lines[:-1]


def _mapping(value: object) -> Mapping[str, object]:
    assert isinstance(value, dict)  # the statement's form was checked
    return value
