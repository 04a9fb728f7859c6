"""Proof that a device holds its key: it signs a nonce of the server's, for one purpose."""

from typing import Literal

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.jwk import Jwk
from inspect_app.entry.jws import Jws, format_jws, parse_jws, verify
from inspect_app.entry.refusal import Refused

TYPE = "seamwalk-proof"
Purpose = Literal["enrol", "deliver"]
_PURPOSES = ("enrol", "deliver")


def parse_proof(token: bytes | str) -> Jws:
    """Read a proof: payload ``{"nonce", "purpose"}`` and nothing else; ``kid`` says whose it claims to be.

    Raises Refused: those of ``parse_jws``, ``missing_field``, ``bad_field``.
    """
    jws = parse_jws(token, TYPE)
    for member in ("nonce", "purpose"):
        if member not in jws.payload:
            raise Refused("missing_field", f"proof.{member}")
    nonce, purpose = jws.payload["nonce"], jws.payload["purpose"]
    if not isinstance(nonce, str) or not 0 < len(nonce) <= 200:
        raise Refused("bad_field", "proof.nonce", nonce)
    if purpose not in _PURPOSES:
        raise Refused("bad_field", "proof.purpose", purpose)
    for member in jws.payload:
        if member not in ("nonce", "purpose"):
            raise Refused("bad_field", "proof", member)
    return jws


def format_proof(nonce: str, purpose: Purpose, key: ec.EllipticCurvePrivateKey) -> str:
    """Sign a nonce for one purpose. Raises Refused where ``parse_proof`` would."""
    token = format_jws({"nonce": nonce, "purpose": purpose}, TYPE, key)
    parse_proof(token)
    return token


def verify_proof(token: bytes | str, jwk: Jwk, nonce: str, purpose: Purpose) -> Jws:
    """The parsed proof when this key signed this nonce for this purpose.

    Raises Refused: those of ``parse_proof`` and ``jws.verify``; ``bad_field`` for another purpose (a proof
    made to enrol must not deliver) or another nonce (a replay).
    """
    proof = parse_proof(token)
    verify(proof, jwk)
    for member, wanted in (("purpose", purpose), ("nonce", nonce)):
        if proof.payload[member] != wanted:
            raise Refused("bad_field", f"proof.{member}", proof.payload[member])
    return proof
