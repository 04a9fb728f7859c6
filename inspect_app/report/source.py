"""Gather what a report is made from: one snapshot of a job's log, its people, its photos, its definitions."""

import hashlib
import json
from collections.abc import Callable, Container
from pathlib import Path
from typing import Any, NamedTuple

from inspect_app.entry.statement import parse_statement
from inspect_app.evidence.enclosure import Signed
from inspect_app.record.fold import fold
from inspect_app.record.scope import WHOLE, narrowed
from inspect_app.report.basis import definitions_named, log_told, photos_named, seen
from inspect_app.store.definitions import DefinitionArchive
from inspect_app.store.log_reading import LogReading
from inspect_app.store.people_map import people_of
from inspect_app.store.records import folded
from inspect_app.store.server_key import ServerKey
from inspect_app.store.transactions import Transactions
from inspect_app.store.vault import Vault
from inspect_app.store.vault_copies import Copies, NoCopy

SIZE = 1600  # pixels of the printed copy's longer side
Facts = Callable[[Path], dict[str, Any]]


class Gathered(NamedTuple):
    """What ``report_contents`` takes, ``up_to`` (the last server sequence in it), where the copies lie, and
    the signed tokens it all was read from; ``compiled``: the bytes of the definitions."""

    record: dict[str, Any]
    people: dict[str, Any]
    definitions: dict[str, Any]
    log: dict[str, Any]
    photos: dict[str, Any]
    copies: dict[str, Path]
    up_to: int
    signed: Signed
    compiled: dict[str, bytes] = {}


class Source(NamedTuple):
    """Where the parts of a report come from. ``facts(path)`` reads what a picture says of itself,
    ``apart(job)`` counts the entries kept apart."""

    transactions: Transactions
    reading: LogReading
    archive: DefinitionArchive
    vault: Vault
    copies: Copies
    server_key: ServerKey
    facts: Facts
    apart: Callable[[str], int] = lambda job: 0

    def gather(self, job: str, fingerprint: str, scope: dict[str, Any] = WHOLE,
               share: Callable[[float], None] = lambda share: None) -> Gathered:  # fmt: skip
        """A consistent snapshot; ``fingerprint`` is that of the certificate that will seal. Needs an app
        context. The record is the whole job's, the photos are those within ``scope``; those whose bytes are gone or
        cannot be drawn are values in it, never errors. ``share`` is told how much is gathered, 0 to 1. Raises
        ``Refused`` (``scope_unknown``) for a scope that is not in the record."""
        with self.transactions.reading():
            received = self.reading.job_entries(job)
            holdings = self.reading.photos(job)
            receipts = self.reading.receipts(job)
            people = people_of(self.transactions, job)
            apart = self.apart(job)
            statements = self.reading.statements(("enrolment", "revocation", "restoration", "countersignature"))
        record = fold([folded(one.token) for one in received], people)
        photos: dict[str, Any] = {}
        copies: dict[str, Path] = {}
        named = photos_named(narrowed(record, scope))
        for at, sha256 in enumerate(named, 1):
            photos[sha256] = self._photo(sha256, sha256 in holdings, copies)
            share(at / len(named))
        last = parse_statement(receipts[-1]) if receipts else None
        head = (last.payload["seq"], last.digest) if last else (None, None)
        log = log_told(record, people, head, self.server_key.kid, fingerprint, apart)
        up_to = int(str(last.payload["seq"])) if last else 0
        signed = Signed(
            [one.token for one in received],
            receipts,
            [one for one in statements if concerns(one, job, record["chains"])],
            self.server_key.jwk,
        )
        compiled = self._compiled(record)
        definitions = {digest: json.loads(data) for digest, data in compiled.items()}
        return Gathered(record, people, definitions, log, photos, copies, up_to, signed, compiled)

    def _photo(self, sha256: str, receipted: bool, copies: dict[str, Path]) -> dict[str, Any]:
        if not receipted:
            return {"held": False}
        try:
            # A receipt was given for these bytes: what is no longer them is never printed as the evidence.
            if self.vault.found(sha256) != sha256:
                return {"held": False, "lost": "damaged"}
        except OSError:  # the file is gone, or the disk gives nothing back: the receipt stands, the bytes do not
            return {"held": False, "lost": "lost"}
        told: dict[str, Any] = {"held": True, "copy": None, "undecodable": None}
        try:
            copies[sha256] = self.copies.path(sha256, SIZE)
            told["copy"] = hashlib.sha256(copies[sha256].read_bytes()).hexdigest()
        except NoCopy as none:
            told["undecodable"] = none.reason
        except OSError:  # no room for the copy: the original is held all the same
            told["undecodable"] = "no_copy"
        facts = self.facts(self.vault.path(sha256))
        return told | seen(facts)

    def _compiled(self, record: dict[str, Any]) -> dict[str, bytes]:
        found = {digest: self.archive.read(digest) for digest in definitions_named(record)}
        return {digest: data for digest, data in found.items() if data is not None}


def concerns(statement: str, job: str, kids: Container[str]) -> bool:
    """Whether it speaks of a key that signed here, of a report of this job, or, as a restoration, of every job."""
    told = parse_statement(statement).payload
    return told.get("kid") in kids if "kid" in told else told.get("job") in (None, job)
