"""Entries: format and parse as one pair. What ``parse`` refuses, ``format_entry`` cannot write."""

from collections.abc import Mapping
from dataclasses import dataclass

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.jws import Jws, format_jws, parse_jws
from inspect_app.entry.kinds import BODIES, check_body
from inspect_app.entry.moment import moment
from inspect_app.entry.refusal import Refused
from inspect_app.entry.shape import count, digest, integer, list_of, mapping, name, nullable, record, text
from inspect_app.entry.subject import check_subject
from inspect_app.entry.uuid7 import version7

TYPE = "seamwalk-entry"
VERSIONS = (1,)


@dataclass(frozen=True)
class Entry(Jws):
    """A parsed entry: the members of ``Jws``, its payload known to have the form of its version and kind."""

    @property
    def kind(self) -> str:
        return str(self.payload["kind"])

    @property
    def job(self) -> str:
        return str(self.payload["job"])

    @property
    def by(self) -> str:
        return str(self.payload["by"])


_ENVELOPE = {
    "id": version7,
    "job": version7,
    "subject": name,
    "replaces": list_of(digest),
    "at": moment,
    "clock": record({"monotonic": integer, "server": nullable(text), "age": nullable(integer), "zone": text}),
    "seq": count,
    "prev": nullable(digest),
    "by": name,
    "build": text,
    "body": mapping,
}


def parse(token: bytes | str) -> Entry:
    """Read an entry; the signature is not verified, see ``jws.verify``.

    Raises Refused: those of ``parse_jws``; ``unknown_version``, ``unknown_kind``; ``missing_field``,
    ``bad_field`` and ``unknown_unit`` with the path at fault.
    """
    return check_entry(parse_jws(token, TYPE))


def format_entry(payload: Mapping[str, object], key: ec.EllipticCurvePrivateKey) -> str:
    """Sign a payload into an entry's token. Raises Refused exactly where ``parse`` would."""
    token = format_jws(payload, TYPE, key)
    parse(token)
    return token


def check_entry(jws: Jws) -> Entry:
    """The second half of ``parse``: from a token of the right form to an entry of the right form."""
    payload = jws.payload
    version = payload.get("v")
    if type(version) is not int or version not in VERSIONS:
        raise Refused("unknown_version", "v", version)
    kind = payload.get("kind")
    if not isinstance(kind, str) or kind not in BODIES:
        raise Refused("unknown_kind", "kind", kind)
    for member, check in _ENVELOPE.items():
        if member not in payload:
            raise Refused("missing_field", member)
        check(payload[member], member)
    if (payload["seq"] == 0) != (payload["prev"] is None):
        raise Refused("bad_field", "prev", payload["prev"])
    body = payload["body"]
    assert isinstance(body, dict)
    check_body(kind, body)
    check_subject(kind, payload["subject"], payload["job"], body)
    return Entry(jws.token, jws.header, payload, jws.signing_input, jws.signature, jws.digest)
