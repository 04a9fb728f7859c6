"""Decide what becomes of one token: a pure function of the token and of what is already known.

It does not store, sign a receipt, read a clock or ask who is signed in. Arrival order, a gap in ``seq``, a
fork and a clock that is years off never refuse: they are reported by the fold.
"""

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass

from inspect_app.entry.format import TYPE, Entry, check_entry
from inspect_app.entry.jwk import Jwk
from inspect_app.entry.jws import parse_jws, verify
from inspect_app.entry.refusal import Refused


@dataclass(frozen=True)
class Key:
    """An enrolled device key: its public JWK, the person it is enrolled for, whether it has been revoked, and
    the person's role (only ``administrator`` matters here: it may open a job)."""

    jwk: Jwk
    person: str
    revoked: bool = False
    role: str = ""


@dataclass(frozen=True)
class Accepted:
    """Take it. ``opens_job``: the first entry of a new job, whose author becomes its first member."""

    entry: Entry
    opens_job: bool = False


@dataclass(frozen=True)
class Duplicate:
    """Already held, under this digest: answer with the receipt it was given."""

    digest: str


@dataclass(frozen=True)
class Quarantined:
    """Keep it, visible, out of the record, until a person decides. ``reason``: ``key_revoked``."""

    entry: Entry
    reason: str


Outcome = Accepted | Duplicate | Quarantined | Refused


def accept(
    token: bytes | str,
    keys: Mapping[str, Key],
    members: Mapping[str, Collection[str]],
    held: Callable[[str], bool],
) -> Outcome:
    """What to do with ``token``. ``keys``: kid to Key; ``members``: job id to the person ids that belong to
    it; ``held(digest)``: whether that entry is already stored, accepted or in quarantine.

    Refused codes beyond those of ``parse``: ``unknown_key``, ``bad_signature``, ``high_s``, ``wrong_person``,
    ``not_a_member``. Never raises for bad input.
    """
    try:
        return _decide(token, keys, members, held)
    except Refused as refusal:
        return refusal


def _decide(
    token: bytes | str,
    keys: Mapping[str, Key],
    members: Mapping[str, Collection[str]],
    held: Callable[[str], bool],
) -> Outcome:
    jws = parse_jws(token, TYPE)
    key = keys.get(jws.kid)
    if key is None:
        raise Refused("unknown_key", "header.kid", jws.kid)
    verify(jws, key.jwk)
    # Before every question whose answer can change with time (shape, membership, revocation): what was
    # received once is answered the same for ever.
    if held(jws.digest):
        return Duplicate(jws.digest)
    entry = check_entry(jws)
    if entry.by != key.person:
        raise Refused("wrong_person", "by", entry.by)
    if key.revoked:
        return Quarantined(entry, "key_revoked")
    people = members.get(entry.job, ())
    if entry.by in people:
        return Accepted(entry)
    if not people and entry.kind == "job" and key.role == "administrator":
        return Accepted(entry, opens_job=True)
    raise Refused("not_a_member", "job", entry.job)
