"""The name of a key: its JWK thumbprint (RFC 7638)."""

import hashlib
import json
from collections.abc import Mapping

from inspect_app.entry.base64url import encode
from inspect_app.entry.refusal import Refused

# RFC 7638 section 3.2: the required members of each key type, and no others.
_MEMBERS = {"EC": ("crv", "kty", "x", "y"), "RSA": ("e", "kty", "n")}


def thumbprint(jwk: Mapping[str, object]) -> str:
    """SHA-256 thumbprint of a public JWK, base64url, 43 characters. Raises Refused ``bad_key``."""
    members = _MEMBERS.get(str(jwk.get("kty")))
    if members is None:
        raise Refused("bad_key", "jwk.kty", jwk.get("kty"))
    for name in members:
        if not isinstance(jwk.get(name), str):
            raise Refused("bad_key", f"jwk.{name}", jwk.get(name))
    canonical = {name: jwk[name] for name in sorted(members)}
    return encode(hashlib.sha256(json.dumps(canonical, separators=(",", ":")).encode()).digest())
