"""Take a batch of entries: an answer for each, good ones kept with their receipts, none hidden by another."""

import hashlib
from collections.abc import Sequence
from typing import Any, NamedTuple, cast

from inspect_app.entry.accept import Accepted, Duplicate, Outcome, Quarantined
from inspect_app.entry.base64url import encode
from inspect_app.entry.batch import accept_all
from inspect_app.entry.format import TYPE, Entry
from inspect_app.entry.jws import parse_jws
from inspect_app.entry.refusal import Refused
from inspect_app.intake.admissions import Admissions
from inspect_app.people.devices import Devices
from inspect_app.people.membership import Membership
from inspect_app.store.log import Log
from inspect_app.store.quarantine import Quarantine

MOST = 100


class Answer(NamedTuple):
    """``status``: ``accepted``, ``duplicate``, ``quarantined`` or ``refused``; the first two with the
    receipt, the others with why. ``job``, ``kind`` and ``walk`` (the one it speaks of, if any) are known for
    what was accepted now."""

    digest: str
    status: str
    receipt: str | None = None
    why: Refused | None = None
    job: str | None = None
    kind: str | None = None
    walk: str | None = None


class Batches:
    """The intake of entries."""

    def __init__(
        self, log: Log, quarantine: Quarantine, devices: Devices, membership: Membership, admissions: Admissions
    ) -> None:  # fmt: skip
        self.log, self.quarantine, self.devices, self.membership = log, quarantine, devices, membership
        self.admissions = admissions

    def receive(self, items: Sequence[object]) -> list[Answer]:
        """One answer for each item, in order; items that are not even text are refused like any other. All
        that is accepted becomes durable together, or, when this raises, nothing does."""
        tokens = [item if isinstance(item, str) else "" for item in items]
        kids, jobs = _named(tokens)
        with self.log.transactions.writing():
            keys, members = self.devices.keys(kids), self.membership.members(jobs)
            outcomes = accept_all(tokens, keys, members, self._held)
            return [self._answer(token, outcome) for token, outcome in zip(tokens, outcomes, strict=True)]

    def _held(self, digest: str) -> bool:
        return self.log.entry_receipt(digest) is not None or self.quarantine.reason(digest) is not None

    def _answer(self, token: str, outcome: Outcome) -> Answer:
        match outcome:
            case Accepted(entry, opens_job):
                receipt = self.log.append(entry)
                if opens_job:
                    self.membership.join(entry.by, entry.job)
                self.admissions.accepted(entry)
                return Answer(entry.digest, "accepted", receipt, job=entry.job, kind=entry.kind, walk=_walk(entry))
            case Quarantined(entry, reason) if admission := self.admissions.waiting(entry):
                receipt = self.admissions.take(entry, admission)
                return Answer(entry.digest, "accepted", receipt, job=entry.job, kind=entry.kind, walk=_walk(entry))
            case Quarantined(entry, reason):
                if not self.quarantine.keep(entry, reason):
                    return Answer(entry.digest, "refused", why=Refused("quarantine_full", "key", entry.kid))
                return Answer(entry.digest, "quarantined", why=Refused(reason, "key", entry.kid))
            case Duplicate(digest):
                held = self.log.entry_receipt(digest)
                if held:
                    return Answer(digest, "duplicate", held)
                reason = self.quarantine.reason(digest) or ""
                return Answer(digest, "quarantined", why=Refused(reason, "entry", digest))
            case Refused():
                return Answer(digest_of(token), "refused", why=outcome)


def _walk(entry: Entry) -> str | None:
    body = cast(dict[str, Any], entry.payload["body"])
    return str(entry.payload["subject"]) if entry.kind == "walk" else body.get("walk")


def digest_of(token: str) -> str:
    """What the digest of this token would be: its sender asks by it even when the token is not one."""
    return encode(hashlib.sha256(token.rpartition(".")[0].encode("utf-8", "surrogatepass")).digest())


def _named(tokens: Sequence[str]) -> tuple[set[str], set[str]]:
    """The keys and jobs that readable tokens name."""
    kids, jobs = set(), set()
    for token in tokens:
        try:
            jws = parse_jws(token, TYPE)
        except Refused:
            continue
        kids.add(jws.kid)
        if isinstance(job := jws.payload.get("job"), str):
            jobs.add(job)
    return kids, jobs
