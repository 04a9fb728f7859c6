"""A small record with lots, as a report encloses it: two of a foreman's by real tickets, the second leaving one out."""

import copy
from collections.abc import Callable, Sequence
from typing import Any

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.base64url import encode
from inspect_app.entry.format import parse
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.statement import format_statement, ticket
from inspect_app.evidence.enclosure import Signed
from inspect_app.evidence.lots_told import OF_THE_JOB
from inspect_app.record.fold import fold
from inspect_app.record.lot_draw import draw_lot
from inspect_app.report.lot import lots
from tests.evidence.record import AT, Author, Key, Made, author, contents, enrol, receipts, sign
from tests.phone import new_uuid

PANELS = 48  # of the invented area: 64 ft of 16 in

Change = Callable[["Site", dict[str, Any]], None]


class Site:
    """A job with one area, and every private key: what an attacker could wish for."""

    def __init__(self, job: dict[str, Any] | None = None) -> None:
        """``job``: what its entry says beside what it must."""
        self.server: Key = ec.generate_private_key(ec.SECP256R1())
        self.job, self.area, self.assembly = new_uuid(), new_uuid(), new_uuid()
        self.chief, self.foreman = author("cleo", "administrator"), author("fay", "foreman")
        self.entries: list[str] = []
        self.chains: dict[str, tuple[int, str | None]] = {}
        self.say(self.chief, "job", self.job, job or {})
        self.say(self.chief, "assembly", self.assembly, {})
        self.say(self.chief, "area", self.area, {"assembly": self.assembly})

    def say(self, by: Author, kind: str, subject: str, body: dict[str, Any]) -> str:
        seq, prev = self.chains.get(by.kid, (0, None))
        self.entries.append(sign(by, self.job, kind, subject, seq, prev, body))
        digest = parse(self.entries[-1]).digest
        self.chains[by.kid] = (seq + 1, digest)
        return digest

    def ticket(self, n: int, **other: Any) -> dict[str, Any]:
        """The foreman's own, unless ``other`` (``job``, ``kid``, ``series``, ``server``, ``statement_n``)."""
        random, series = encode(bytes([n]) * 32), other.get("series", "work")
        said = ticket(100 + n, AT, other.get("job", self.job), other.get("kid", self.foreman.kid), series,
                      other.get("statement_n", n), random)  # fmt: skip
        return {"series": series, "n": n, "random": random,
                "statement": format_statement(said, other.get("server", self.server))}  # fmt: skip

    def record(self) -> dict[str, Any]:
        plain = [{"digest": one.digest, "kid": one.kid, "payload": one.payload} for one in map(parse, self.entries)]
        people = {one.person: {"name": one.person, "role": one.role, "kids": [one.kid]} for one in self.authors}
        return fold(plain, people)

    def up_to(self, entries: int | None) -> "Site":
        """The same job as it stood after so many entries."""
        early = copy.copy(self)
        early.entries, early.chains = self.entries[:entries], dict(self.chains)
        return early

    @property
    def first(self) -> str:
        """The lot by the foreman's first ticket."""
        return "/".join((self.foreman.kid, "work", "0"))

    @property
    def authors(self) -> tuple[Author, ...]:
        return self.chief, self.foreman

    def plan(self, low: int, high: int, n: int, change: Change | None = None, by: Author | None = None) -> str:
        """A lot drawn as the phone draws it, then ``change``d before it is signed; its id."""
        asked = {"purpose": "work", "crew": "2", "day": "2026-11-25", "ticket": self.ticket(n), "definitions": [],
                 "population": [{"area": self.area, "from": low, "to": high}]}  # fmt: skip
        drawn = draw_lot(self.record(), asked)
        if change:
            change(self, drawn["body"])
        self.say(by or self.foreman, "lot", drawn["subject"], drawn["body"])
        return str(drawn["subject"])

    def made(self, photos: Sequence[bytes] | None = None) -> Made:
        """As a report encloses it; the receipts of ``photos`` stand behind the others."""
        enrolments = [enrol(self.server, at, one) for at, one in enumerate(self.authors, 1)]
        chain = receipts(self.server, self.job, self.entries, photos)
        signed = Signed(list(self.entries), chain, enrolments, public_jwk(self.server))
        told = contents(self.job, self.server, self.authors, signed)
        record = self.record()
        told |= {"lots": lots(record)} | {name: record[name] for name in OF_THE_JOB}
        return Made(self.job, self.server, self.authors, signed, told)


def begun(change: Change | None = None, by_chief: bool = False) -> Site:
    """Panels 1 to 20 by the first ticket, ``change``d before they were signed, by a key that is not the ticket's if so
    said."""
    made = Site()
    made.plan(1, 20, 0, change, made.chief if by_chief else None)
    return made


def site(change: Change | None = None) -> Site:
    """As begun; 12 panels of it set, and 21 to 40 by the third ticket."""
    made = begun(change)
    set_to = {"lot": made.first, "area": made.area, "to": 12, "against": []}
    made.say(made.foreman, "mark", new_uuid(), set_to)
    made.plan(21, 40, 2)
    return made
