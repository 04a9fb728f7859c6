"""Statements by the server's key, in one sequence: enrolments, revocations, receipts, random tickets, restorations, and
the countersignatures of reports."""

from collections.abc import Mapping
from dataclasses import dataclass

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.jws import Jws, format_jws, parse_jws
from inspect_app.entry.moment import moment
from inspect_app.entry.refusal import Refused
from inspect_app.entry.shape import Check, choice, count, digest, name, nullable, positive, record, sha256, text
from inspect_app.entry.thumbprint import thumbprint
from inspect_app.entry.uuid7 import version7

TYPE = "seamwalk-statement"
SERIES = ("work", "audit")

_MEMBERS: dict[str, Check] = {
    "enrolment": record(
        {
            "kid": digest,
            "jwk": record({"kty": name, "crv": name, "x": digest, "y": digest}),
            "person": record({"id": name, "name": text, "role": name}),
            "device": text,
        }
    ),
    "revocation": record({"kid": digest, "by": name}),
    "receipt": record(
        {"job": version7, "n": count, "prev": nullable(digest)},
        {"entry": digest, "photo": sha256, "size": count, "restored": digest},
    ),
    # 32 random bytes are spelled as a SHA-256 is.
    "ticket": record(
        {"job": version7, "kid": digest, "series": choice(*SERIES), "n": count, "random": digest}
    ),
    "restoration": record({"last": count, "head": nullable(digest)}),
    "countersignature": record(
        {"job": version7, "number": positive, "n": positive, "before": sha256, "after": sha256, "certificate": sha256,
         "name": text, "by": name}
    ),
}


@dataclass(frozen=True)
class Statement(Jws):
    """A parsed statement: the members of ``Jws``; its payload has the form of its kind."""

    @property
    def kind(self) -> str:
        return str(self.payload["kind"])


def parse_statement(token: bytes | str) -> Statement:
    """Read a statement; ``jws.verify`` checks its signature. Raises Refused as ``format.parse`` does."""
    jws = parse_jws(token, TYPE)
    payload = jws.payload
    if type(payload.get("v")) is not int or payload["v"] != 1:
        raise Refused("unknown_version", "v", payload.get("v"))
    kind = payload.get("kind")
    if not isinstance(kind, str) or kind not in _MEMBERS:
        raise Refused("unknown_kind", "kind", kind)
    record({"seq": positive, "at": moment})(payload, "statement")
    _MEMBERS[kind](payload, "statement")
    if kind == "enrolment":
        _names_its_key(payload)
    if kind == "receipt":
        _names_one_thing(payload)
    if kind == "restoration":
        _goes_on(payload)
    return Statement(jws.token, jws.header, payload, jws.signing_input, jws.signature, jws.digest)


def format_statement(payload: Mapping[str, object], key: ec.EllipticCurvePrivateKey) -> str:
    """Sign a statement's payload. Raises Refused exactly where ``parse_statement`` would."""
    token = format_jws(payload, TYPE, key)
    parse_statement(token)
    return token


def enrolment(
    seq: int, at: str, jwk: Mapping[str, str], person: Mapping[str, str], device: str
) -> dict[str, object]:
    """Payload that ties a device key to a person ``{"id", "name", "role"}`` from here on."""
    return _payload("enrolment", seq, at) | {
        "kid": thumbprint(jwk),
        "jwk": dict(jwk),
        "person": dict(person),
        "device": device,
    }


def revocation(seq: int, at: str, kid: str, by: str) -> dict[str, object]:
    """Payload that ends a device key: what arrives later goes to quarantine."""
    return _payload("revocation", seq, at) | {"kid": kid, "by": by}


def entry_receipt(seq: int, at: str, job: str, n: int, prev: str | None, entry: str) -> dict[str, object]:
    """Payload: the server holds the entry with this digest. ``n`` and ``prev`` chain one job's receipts. After a
    restoration each has ``restored`` too, its digest."""
    return _payload("receipt", seq, at) | {"job": job, "n": n, "prev": prev, "entry": entry}


def photo_receipt(
    seq: int, at: str, job: str, n: int, prev: str | None, photo: str, size: int
) -> dict[str, object]:
    """Payload: the server holds the whole photo with this SHA-256, ``size`` bytes."""
    return _payload("receipt", seq, at) | {"job": job, "n": n, "prev": prev, "photo": photo, "size": size}


def ticket(seq: int, at: str, job: str, kid: str, series: str, n: int, random: str) -> dict[str, object]:
    """Payload: 32 random bytes (base64url) for one draw by that key in that job. ``series``: of ``SERIES``; ``n``
    counts from 0 without a gap, per job, key and series, so that a ticket not used shows."""
    return _payload("ticket", seq, at) | {"job": job, "kid": kid, "series": series, "n": n, "random": random}


def restoration(seq: int, at: str, last: int, head: str | None) -> dict[str, object]:
    """Payload: the server was set back to a backup that ends with statement ``last`` (0: none), whose digest is
    ``head``. Numbers between the two may have been given, and what they were given for may be missing."""
    return _payload("restoration", seq, at) | {"last": last, "head": head}


def countersignature(
    seq: int, at: str, job: str, number: int, n: int, before: str, after: str, certificate: str, name: str, by: str
) -> dict[str, object]:
    """Payload: report ``number`` of the job has its ``n``-th countersignature (from 1). ``before``, ``after``: SHA-256
    of the file without and with it; ``certificate``: SHA-256 of the countersigner's; ``name``: whom it names; ``by``:
    the person who brought it."""
    return _payload("countersignature", seq, at) | {
        "job": job, "number": number, "n": n, "before": before, "after": after, "certificate": certificate,
        "name": name, "by": by,
    }  # fmt: skip


def _payload(kind: str, seq: int, at: str) -> dict[str, object]:
    return {"v": 1, "kind": kind, "seq": seq, "at": at}


def _names_its_key(payload: dict[str, object]) -> None:
    jwk = payload["jwk"]
    assert isinstance(jwk, dict)
    if thumbprint(jwk) != payload["kid"]:
        raise Refused("bad_field", "statement.kid", payload["kid"])


def _names_one_thing(payload: dict[str, object]) -> None:
    if (payload.get("entry") is None) == (payload.get("photo") is None):
        raise Refused("bad_field", "statement.entry", payload.get("entry"))
    if payload.get("photo") is not None and payload.get("size") is None:
        raise Refused("missing_field", "statement.size")
    if (payload["n"] == 0) != (payload["prev"] is None):
        raise Refused("bad_field", "statement.prev", payload["prev"])


def _goes_on(payload: dict[str, object]) -> None:
    last, seq = payload["last"], payload["seq"]
    assert isinstance(last, int) and isinstance(seq, int)
    if last >= seq:
        raise Refused("bad_field", "statement.last", last)
    if (last == 0) != (payload["head"] is None):
        raise Refused("bad_field", "statement.head", payload["head"])
