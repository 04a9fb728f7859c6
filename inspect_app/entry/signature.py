"""ES256 (RFC 7518 section 3.4): ECDSA over P-256 and SHA-256, 64 raw bytes r || s, with s in the lower half.

For every valid (r, s) the pair (r, n - s) is valid too, and anyone can compute it. Only the lower one is
taken, so that nobody but the holder of the key can make a second token of the same content.
"""

from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.asymmetric.utils import decode_dss_signature, encode_dss_signature

from inspect_app.entry.jwk import Jwk, public_key

# The order of P-256: NIST SP 800-186, section 3.2.1.3.
ORDER = 0xFFFFFFFF00000000FFFFFFFFFFFFFFFFBCE6FAADA7179E84F3B9CAC2FC632551


def sign(message: bytes, key: ec.EllipticCurvePrivateKey) -> bytes:
    """Signature of ``message``: 64 bytes, low s. The same message and key give the same bytes (RFC 6979)."""
    der = key.sign(message, ec.ECDSA(hashes.SHA256(), deterministic_signing=True))
    r, s = decode_dss_signature(der)
    return lowered(r.to_bytes(32, "big") + s.to_bytes(32, "big"))


def matches(signature: bytes, message: bytes, jwk: Jwk) -> bool:
    """Whether the 64 bytes are the key's signature of ``message``, with s in either half."""
    if len(signature) != 64:
        return False
    der = encode_dss_signature(int.from_bytes(signature[:32], "big"), int.from_bytes(signature[32:], "big"))
    try:
        public_key(jwk).verify(der, message, ec.ECDSA(hashes.SHA256()))
    except InvalidSignature:
        return False
    return True


def is_low(signature: bytes) -> bool:
    """Whether s is in the lower half, the only one taken."""
    return 2 * int.from_bytes(signature[32:], "big") < ORDER


def lowered(signature: bytes) -> bytes:
    """The same signature with s in the lower half."""
    if is_low(signature):
        return signature
    return signature[:32] + (ORDER - int.from_bytes(signature[32:], "big")).to_bytes(32, "big")
