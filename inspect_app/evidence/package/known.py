"""What a package's token files make known: the facts of the record in them, and what the rest is held to."""

from collections.abc import Mapping
from typing import Any, NamedTuple

from inspect_app.entry.pictures import pictures
from inspect_app.evidence.draws import NAME as DRAWS
from inspect_app.evidence.draws import drawn_again
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.package.definitions import used
from inspect_app.evidence.package.log import Receipt, receipts_in
from inspect_app.evidence.package.names import TOKENS
from inspect_app.evidence.signed_record import OWN, photos_received, read_record, record_facts

ENCLOSED = "record_enclosed"


class Known(NamedTuple):
    """``facts`` by name; ``server_key`` and its ``kid``; the ``job`` that all entries are of, its ``name`` as last said
    and whether it is ``invented``; how many ``entries``; its ``receipts`` and the ``head`` of their chain (``seq``,
    digest); ``photos``: ``{SHA-256: size}`` of those with a receipt; what entries ``named``: photos, and
    ``definitions``; ``statements``: payloads of enrolments and what stands with them."""

    facts: dict[str, Fact]
    server_key: dict[str, str] | None = None
    kid: str | None = None
    job: str | None = None
    name: str | None = None
    invented: bool = False
    entries: int = 0
    receipts: list[Receipt] = []
    photos: dict[str, int] = {}
    named: frozenset[str] = frozenset()
    definitions: frozenset[str] = frozenset()
    statements: list[dict[str, Any]] = []
    head: tuple[Any, Any] = (None, None)


def known_from(texts: Mapping[str, bytes]) -> Known:
    """``texts``: the token files of a package by their names in it. Never raises for anything in them."""
    files = {name.removeprefix("data/"): texts[name] for name in TOKENS if name in texts}
    try:
        record = read_record(files)
    except Exception as reason:  # a missing file, no key: whatever it is, there is no record to read
        return Known({ENCLOSED: Fact(ENCLOSED, FAILS, "unreadable_record", {"error": type(reason).__name__}),
                      **{name: Fact(name, UNKNOWN, "unreadable_record") for name in (*OWN, DRAWS)}})  # fmt: skip
    tokens = record.tokens
    facts = {ENCLOSED: Fact(ENCLOSED, HOLDS, None, {"count": len(tokens.entries)})} | record_facts(record)
    facts[DRAWS] = drawn_again(tokens.entries, tokens.server_key)
    told = record.folded.get("job") or {}
    jobs = {entry.job for entry in tokens.entries}
    return Known(
        facts=facts,
        server_key={str(name): str(value) for name, value in tokens.server_key.items()},
        kid=record.kid,
        job=jobs.pop() if len(jobs) == 1 else None,
        name=told.get("name"),
        invented=bool(told.get("invented")),
        entries=len(tokens.entries),
        receipts=receipts_in(tokens.receipts, tokens.server_key),
        photos=photos_received(tokens),
        named=frozenset(one for entry in tokens.entries for one in pictures(entry.payload)),
        definitions=frozenset(used(tokens.entries)),
        statements=[dict(one.payload) for one in tokens.enrolments],
        head=(record.receipts["seq"], record.receipts["head"]),
    )
