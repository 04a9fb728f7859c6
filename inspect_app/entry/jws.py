"""The compact JWS (RFC 7515 section 7.1) under entries, statements and proofs: format and parse as one
pair."""

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.base64url import decode, encode, names_sha256
from inspect_app.entry.jwk import Jwk, public_jwk
from inspect_app.entry.refusal import Refused
from inspect_app.entry.signature import is_low, matches, sign
from inspect_app.entry.strict_json import parse as parse_json
from inspect_app.entry.thumbprint import thumbprint

LARGEST = 64 * 1024


@dataclass(frozen=True)
class Jws:
    """One parsed token. ``token`` is what was received, to the byte: that is what is stored and exported.

    ``signing_input`` and ``signature`` are bytes; ``digest`` is base64url(SHA-256(signing_input)), 43
    characters. The signature is not yet verified: that needs the key, see ``verify``.
    """

    token: str
    header: dict[str, object]
    payload: dict[str, object]
    signing_input: bytes
    signature: bytes
    digest: str

    @property
    def kid(self) -> str:
        return str(self.header["kid"])


def format_jws(payload: Mapping[str, object], typ: str, key: ec.EllipticCurvePrivateKey) -> str:
    """Sign ``payload`` into a token whose header is exactly alg, kid and typ.

    Raises Refused when the payload cannot be written so that ``parse_jws`` takes it (floats, NUL, too large).
    """
    header = {"alg": "ES256", "kid": thumbprint(public_jwk(key)), "typ": typ}
    signing_input = f"{_encode_json(header)}.{_encode_json(payload)}"
    token = f"{signing_input}.{encode(sign(signing_input.encode('ascii'), key))}"
    parse_jws(token, typ)
    return token


def parse_jws(token: bytes | str, typ: str) -> Jws:
    """Take a token apart and check its form; the signature is not looked at beyond its spelling.

    Raises Refused: ``too_large``, ``malformed``, ``not_canonical``, ``bad_header``, ``bad_algorithm``,
    ``wrong_type``, and those of ``strict_json.parse``.
    """
    if len(token) > LARGEST:
        raise Refused("too_large", "entry", len(token))
    try:
        raw = token if isinstance(token, bytes) else token.encode("ascii")
        text = raw.decode("ascii")
    except UnicodeError:
        raise Refused("malformed", "entry", token) from None
    parts = text.split(".")
    if len(parts) != 3:
        raise Refused("malformed", "entry", text)
    header = parse_json(decode(parts[0], "header"), "header")
    _check_header(header, typ)
    payload = parse_json(decode(parts[1], "payload"), "payload")
    signature = decode(parts[2], "signature")
    if len(signature) != 64:
        raise Refused("malformed", "signature", parts[2])
    signing_input = raw.rpartition(b".")[0]
    digest = encode(hashlib.sha256(signing_input).digest())
    return Jws(text, header, payload, signing_input, signature, digest)


def verify(jws: Jws, jwk: Jwk) -> None:
    """Raises Refused ``unknown_key`` when the token names another key, ``bad_signature`` or ``high_s``."""
    if thumbprint(jwk) != jws.kid:
        raise Refused("unknown_key", "header.kid", jws.kid)
    if not matches(jws.signature, jws.signing_input, jwk):
        raise Refused("bad_signature", "signature", encode(jws.signature))
    if not is_low(jws.signature):
        raise Refused("high_s", "signature", encode(jws.signature))


def _encode_json(value: Mapping[str, object]) -> str:
    # Whatever Python can hold is written out, and the parser is the one to refuse it: floats, NaN,
    # surrogates.
    try:
        text = json.dumps(value, separators=(",", ":"), ensure_ascii=False)
    except (TypeError, ValueError, RecursionError):
        raise Refused("malformed", "payload", repr(value)[:200]) from None
    return encode(text.encode("utf-8", "surrogatepass"))


def _check_header(header: dict[str, object], typ: str) -> None:
    # The algorithm is ours to choose, never the token's: "none" and HS256 end here, before any key is looked
    # up.
    if header.get("alg") != "ES256":
        raise Refused("bad_algorithm", "header.alg", header.get("alg"))
    if header.get("typ") != typ:
        raise Refused("wrong_type", "header.typ", header.get("typ"))
    if not names_sha256(header.get("kid")):
        raise Refused("bad_header", "header.kid", header.get("kid"))
    for name in header:
        if name not in ("alg", "kid", "typ"):
            raise Refused("bad_header", "header", name)
