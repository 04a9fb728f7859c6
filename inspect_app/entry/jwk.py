"""P-256 public keys as JWK (RFC 7517, RFC 7518 section 6.2)."""

from collections.abc import Mapping

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.base64url import decode, encode
from inspect_app.entry.refusal import Refused

Jwk = Mapping[str, object]


def public_jwk(key: ec.EllipticCurvePrivateKey | ec.EllipticCurvePublicKey) -> dict[str, str]:
    """The public JWK of a key: exactly ``kty``, ``crv``, ``x``, ``y``."""
    public = key.public_key() if isinstance(key, ec.EllipticCurvePrivateKey) else key
    numbers = public.public_numbers()
    return {
        "kty": "EC",
        "crv": "P-256",
        "x": encode(numbers.x.to_bytes(32, "big")),
        "y": encode(numbers.y.to_bytes(32, "big")),
    }


def bare(jwk: Jwk) -> dict[str, str]:
    """The four public members of a JWK that a browser exported (it adds ``ext`` and ``key_ops``).

    Raises Refused ``bad_key`` when it is not a P-256 public key, or when it carries the private part: whoever
    sends that has given the key away.
    """
    if "d" in jwk:
        raise Refused("bad_key", "jwk.d", "private")
    return public_jwk(public_key(jwk))


def public_key(jwk: Jwk) -> ec.EllipticCurvePublicKey:
    """The key itself. Raises Refused ``bad_key`` for another curve, bad coordinates or a point off the
    curve."""
    for name, wanted in (("kty", "EC"), ("crv", "P-256")):
        if jwk.get(name) != wanted:
            raise Refused("bad_key", f"jwk.{name}", jwk.get(name))
    x, y = _coordinate(jwk, "x"), _coordinate(jwk, "y")
    try:
        return ec.EllipticCurvePublicNumbers(x, y, ec.SECP256R1()).public_key()
    except ValueError:
        raise Refused("bad_key", "jwk.y", jwk["y"]) from None


def _coordinate(jwk: Jwk, name: str) -> int:
    text = jwk.get(name)
    if not isinstance(text, str) or len(text) != 43:
        raise Refused("bad_key", f"jwk.{name}", text)
    return int.from_bytes(decode(text, f"jwk.{name}"), "big")
