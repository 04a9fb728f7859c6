"""The seal of a saved copy: a key's word for its list, and so for everything in it, since the list names it by hash."""

import hashlib

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.base64url import encode, names_sha256
from inspect_app.entry.jws import Jws, format_jws, parse_jws
from inspect_app.entry.moment import moment
from inspect_app.entry.refusal import Refused
from inspect_app.entry.shape import name

TYPE = "seamwalk-copy"


def list_digest(manifest: bytes) -> str:
    """What a seal names the list by: base64url SHA-256 of its bytes."""
    return encode(hashlib.sha256(manifest).digest())


def format_seal(manifest: bytes, at: str, by: str, key: ec.EllipticCurvePrivateKey) -> str:
    """Seal a list. ``at``: the phone's time; ``by``: the person whose key it is. Raises Refused where ``parse_seal``
    would."""
    token = format_jws({"v": 1, "manifest": list_digest(manifest), "at": at, "by": by}, TYPE, key)
    parse_seal(token)
    return token


def parse_seal(token: bytes | str) -> Jws:
    """Read a seal; its signature is not looked at. Raises Refused: those of ``parse_jws``, ``unknown_version``,
    ``bad_field``."""
    seal = parse_jws(token, TYPE)
    said = seal.payload
    if said.get("v") != 1:
        raise Refused("unknown_version", "v", said.get("v"))
    if not names_sha256(said.get("manifest")):
        raise Refused("bad_field", "manifest", said.get("manifest"))
    moment(said.get("at"), "at")
    name(said.get("by"), "by")
    return seal
