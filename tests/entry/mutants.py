"""Tokens gone wrong: changed in transit, put together from others, or signed in earnest by a hostile phone."""

import json
from random import Random

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.base64url import decode, encode
from inspect_app.entry.signature import ORDER, sign

HEADERS = [
    {"alg": "none"}, {"alg": "HS256"}, {"alg": "ES512"}, {"typ": "JWT"}, {"crit": ["exp"]}, {"kid": "A" * 43},
    {"kid": ""}, {"b64": False}, {"jwk": {"kty": "EC"}}, {"alg": None}, {"kid": 7},
]  # fmt: skip
JSON_BITS = [
    b'{"a":1,"a":2}', b"[" * 40 + b"]" * 40, b'"\\u0000"', b'"\\ud800"', b"1.5", b"-0", b"9007199254740993", b"1e9",
    b"NaN", b"null", b'"' + b'\\"' * 60, b'"' + b"x" * 300, b"\xff", b"{}", b"[]", b"true",
    b'"\xe2\x80\xae"', b"9" * 40,
]  # fmt: skip


def in_transit(token: str, other: str, chance: Random) -> str:
    """One change such as a broken line, or somebody on it who has no key, would make; ``other``: another token."""
    at = chance.randrange(len(token))
    parts, others = token.split("."), other.split(".")
    return chance.choice([
        lambda: flipped(token, at, chance.randrange(8)),
        lambda: token[:at] + chr(chance.randrange(1, 0x2FFF)) + token[at + 1 :],
        lambda: token[:at],
        lambda: token[at:],
        lambda: token[:at] + chance.choice(["A", ".", "=", "\n", " ", "é", "\0", token]) + token[at:],
        lambda: token[:at] + token[at + 1 + chance.randrange(4) :],
        lambda: ".".join(chance.sample(parts, 3)),
        lambda: ".".join([*parts[:2], others[2]]),
        lambda: ".".join([others[0], *parts[1:]]),
        lambda: ".".join([parts[0], others[1], parts[2]]),
        lambda: ".".join([*parts[:2], _twin(parts[2])]),
    ])()  # fmt: skip


def flipped(token: str, at: int, bit: int) -> str:
    return token[:at] + chr(ord(token[at]) ^ 1 << bit) + token[at + 1 :]


def _twin(signature: str) -> str:
    """The other signature that anybody can make of a right one: (r, n - s)."""
    raw = decode(signature, "signature")
    return encode(raw[:32] + (ORDER - int.from_bytes(raw[32:], "big")).to_bytes(32, "big"))


def in_earnest(token: str, key: ec.EllipticCurvePrivateKey, chance: Random) -> str:
    """A wild header or payload, under a signature that is right."""
    header, payload, _ = token.split(".")
    head, body = decode(header, "header"), decode(payload, "payload")
    if chance.random() < 0.2:
        head = json.dumps(json.loads(head) | chance.choice(HEADERS)).encode()
    else:
        body = _wild(body, chance)
    signing_input = f"{encode(head)}.{encode(body)}"
    return f"{signing_input}.{encode(sign(signing_input.encode(), key))}"


def _wild(body: bytes, chance: Random) -> bytes:
    at = chance.randrange(len(body))
    value = json.loads(body)
    name = chance.choice(sorted(value))
    written = json.dumps(value[name]).encode()
    return chance.choice([
        lambda: body[:at] + bytes([body[at] ^ 1 << chance.randrange(8)]) + body[at + 1 :],
        lambda: body[:at] + chance.choice(JSON_BITS) + body[at:],
        lambda: body[:at],
        lambda: json.dumps({one: value[one] for one in value if one != name}).encode(),
        lambda: json.dumps(value).encode().replace(written, chance.choice(JSON_BITS), 1),
        lambda: json.dumps({one: value[one] for one in chance.sample(sorted(value), len(value))}).encode(),
    ])()  # fmt: skip
