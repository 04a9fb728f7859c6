"""Sign any bytes, good or bad, with two published keys that protect nothing."""

import json

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.base64url import encode
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.signature import sign
from inspect_app.entry.thumbprint import thumbprint


def key_of(private: int) -> ec.EllipticCurvePrivateKey:
    return ec.derive_private_key(private, ec.SECP256R1())


# RFC 7515 appendix A.3.1, member d; and RFC 6979 appendix A.2.5.
KEY = key_of(0x8E9B109E719098BF980487DF1F5D77E9CB29606EBED2263B5F57C213DF84F4B2)
OTHER = key_of(0xC9AFA9D845BA75166B5C215767B1D6934E50C3DB36E89B127B8A622B120F6721)
KID = thumbprint(public_jwk(KEY))
HEADER = json.dumps({"alg": "ES256", "kid": KID, "typ": "seamwalk-entry"}, separators=(",", ":"))


def dumped(value: object) -> str:
    return json.dumps(value, separators=(",", ":"), ensure_ascii=False)


def token(payload: str | bytes, header: str | bytes = HEADER, key: ec.EllipticCurvePrivateKey = KEY) -> str:
    """Sign any bytes, good or bad."""
    parts = [part.encode() if isinstance(part, str) else part for part in (header, payload)]
    signing_input = ".".join(encode(part) for part in parts)
    return f"{signing_input}.{encode(sign(signing_input.encode(), key))}"


def resigned(good: str, signature: bytes) -> str:
    return f"{good.rpartition('.')[0]}.{encode(signature)}"
