"""A small record as a report encloses it, made from keys of its own: a job, a walk, two answers and a correction."""

import hashlib
from collections.abc import Sequence
from typing import Any, NamedTuple

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.format import format_entry, parse
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.statement import enrolment, entry_receipt, format_statement, parse_statement, photo_receipt
from inspect_app.entry.thumbprint import thumbprint
from inspect_app.evidence.enclosure import Signed, enclosures
from inspect_app.record.chain import chains
from inspect_app.record.fold import fold
from inspect_app.report.contents import contents_bytes
from inspect_app.rules.rulebook import judge
from tests.bodies import body_of
from tests.phone import new_uuid

AT = "2026-11-25T16:40:05.120-05:00"
Key = ec.EllipticCurvePrivateKey


class Author(NamedTuple):
    """A person with a key."""

    person: str
    role: str
    key: Key

    @property
    def kid(self) -> str:
        return thumbprint(public_jwk(self.key))


def author(person: str, role: str) -> Author:
    return Author(person, role, ec.generate_private_key(ec.SECP256R1()))


class Made(NamedTuple):
    """What a report would enclose, and all that an attacker could wish for: every private key."""

    job: str
    server: Key
    authors: tuple[Author, ...]
    signed: Signed
    contents: dict[str, Any]


def sign(by: Author, job: str, kind: str, subject: str, seq: int, prev: str | None, body: dict[str, Any],
         replaces: tuple[str, ...] = ()) -> str:  # fmt: skip
    payload = {
        "v": 1, "id": new_uuid(), "kind": kind, "job": job, "subject": subject, "replaces": list(replaces),
        "at": AT, "clock": {"monotonic": 1, "server": None, "age": None, "zone": ""}, "seq": seq, "prev": prev,
        "by": by.person, "build": "test", "body": body_of(kind) | body,
    }  # fmt: skip
    return format_entry(payload, by.key)


def enrol(server: Key, seq: int, who: Author) -> str:
    person = {"id": who.person, "name": f"{who.person} (invented)", "role": who.role}
    return format_statement(enrolment(seq, AT, public_jwk(who.key), person, "test"), server)


def receipts(server: Key, job: str, entries: list[str], photos: Sequence[bytes] | None = None) -> list[str]:
    """One chain over the entries, and at its end the photos, or one that is nowhere."""
    held = [("a" * 64, 5)] if photos is None else [(hashlib.sha256(one).hexdigest(), len(one)) for one in photos]
    chain: list[str] = []
    for n, name in enumerate([*(parse(one).digest for one in entries), *held]):
        prev = parse_statement(chain[-1]).digest if chain else None
        made = (entry_receipt(10 + n, AT, job, n, prev, name) if isinstance(name, str)
                else photo_receipt(10 + n, AT, job, n, prev, *name))  # fmt: skip
        chain.append(format_statement(made, server))
    return chain


def answer(subject: str, result: str) -> dict[str, Any]:
    walk, _, item = subject.split("/")
    verdict = {"result": result, "rule": None, "rulebook": "", "reason": None, "inputs": {}, "values": {}}
    return {"walk": walk, "station": None, "item": item, "choice": result, "verdict": verdict}


def counted(subject: str, reading: int, result: str) -> dict[str, Any]:
    """An answer by a rule: a count of at most 2, recorded as ``result``."""
    found = judge("limit@1", {"reading": reading, "at_most": 2})
    values = {name: {"value": str(one["value"]), "unit": one["unit"]} for name, one in found["values"].items()}
    told = answer(subject, result)
    told["verdict"] |= {"rule": "limit@1", "inputs": found["inputs"], "values": values, "reason": found["reason"]}
    return told | {"choice": None}


def made() -> Made:
    server, job = ec.generate_private_key(ec.SECP256R1()), new_uuid()
    chief, foreman = author("cleo", "administrator"), author("fay", "foreman")
    walk = new_uuid()
    one, two = (f"{walk}/nail_flange/{item}" for item in ("screw_centred", "slot_clean"))
    entries = [sign(chief, job, "job", job, 0, None, {})]
    prev = None
    for seq, (kind, subject, result) in enumerate(
        [("walk", walk, None), ("answer", one, "fail"), ("answer", two, "pass")]
    ):
        body = counted(subject, 3, result) if subject == one else answer(subject, result) if result else {}
        entries.append(sign(foreman, job, kind, subject, seq, prev, body))
        prev = parse(entries[-1]).digest
    first = parse(entries[3]).digest
    entries.append(sign(foreman, job, "answer", two, 3, prev, answer(two, "not_determinable"), (first,)))
    enrolments = [enrol(server, 1, chief), enrol(server, 2, foreman)]
    signed = Signed(entries, receipts(server, job, entries), enrolments, public_jwk(server))
    return Made(job, server, (chief, foreman), signed, contents(job, server, (chief, foreman), signed))


def contents(job: str, server: Key, authors: tuple[Author, ...], signed: Signed) -> dict[str, Any]:
    """What an honest report would say of them, as far as verification looks."""
    parsed = [parse(one) for one in signed.entries]
    plain = [{"digest": one.digest, "kid": one.kid, "payload": one.payload} for one in parsed]
    people = {one.person: {"name": one.person, "role": one.role, "kids": [one.kid]} for one in authors}
    last = parse_statement(signed.receipts[-1])
    return {
        "job": {"id": job},
        "hashes": {
            "server_kid": thumbprint(public_jwk(server)), "head_receipt": last.digest, "head_seq": last.payload["seq"],
            "keys": [{"kid": kid, "count": chain["count"], "head": chain["head"]}
                     for kid, chain in chains(plain).items()],
        },
        "answers": [{"id": subject, "digest": answer["digest"], "result": answer["result"]}
                    for subject, answer in fold(plain, people)["answers"].items()],
    }  # fmt: skip


def files(record: Made, **changed: Any) -> dict[str, bytes]:
    """The enclosed files; ``changed``: other ``entries``, ``receipts``, ``enrolments`` or ``server_key``."""
    return {one.name: one.data for one in enclosures(contents_of(record), record.signed._replace(**changed))}


def contents_of(record: Made) -> bytes:
    """Its ``contents.json``."""
    return contents_bytes(record.contents)
