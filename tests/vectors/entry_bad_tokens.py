"""Tokens whose form is bad: what Python and JavaScript refuse with the same code.

Every generator gives ``name, token, code, field``.
"""

import json
from collections.abc import Iterator

from cryptography.hazmat.primitives.asymmetric.utils import encode_dss_signature
from entry_bodies import payloads
from entry_signed import HEADER, KEY, KID, OTHER, dumped, resigned, token

from inspect_app.entry.base64url import encode
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.signature import ORDER, sign
from inspect_app.entry.thumbprint import thumbprint


def bad_tokens() -> Iterator[tuple[str, str, str, str]]:
    base = dict(payloads())["station"]
    text = dumped(base)
    whole = token(text)
    header, payload, signature = whole.split(".")
    yield "nothing", "", "malformed", "entry"
    yield "two parts", f"{header}.{payload}", "malformed", "entry"
    yield "four parts", f"{whole}.", "malformed", "entry"
    yield "a page of a hotel's network", "<html>Welcome</html>", "malformed", "entry"
    yield "padding", f"{whole}==", "not_canonical", "signature"
    yield "spare bits set", whole[:-1] + chr(ord(whole[-1]) + 1), "not_canonical", "signature"
    yield "the other base64 alphabet", f"{header}.{payload}.+{signature[1:]}", "not_canonical", "signature"
    yield "a line break inside", f"{header}.\n{payload}.{signature}", "not_canonical", "payload"
    yield "a line break at the end", f"{whole}\n", "not_canonical", "signature"
    yield "an impossible length", f"{header}.{payload}.{signature[:-1]}", "not_canonical", "signature"
    too_large = token(dumped(base | {"x": "a" * 48000}))
    yield "over 64 KiB", too_large + "A" * (65537 - len(too_large)), "too_large", "entry"
    yield from bad_headers(text)
    yield from bad_json(text)
    yield from bad_signatures(whole, text)


def bad_headers(text: str) -> Iterator[tuple[str, str, str, str]]:
    def with_header(header: object) -> str:
        return token(text, header if isinstance(header, str) else dumped(header))

    full = json.loads(HEADER)
    unsigned = f"{encode(dumped(full | {'alg': 'none'}).encode())}.{encode(text.encode())}."
    yield "no algorithm and no signature", unsigned, "bad_algorithm", "header.alg"
    for alg in ("none", "HS256", "ES384", "es256", None):
        yield f"algorithm {alg}", with_header(full | {"alg": alg}), "bad_algorithm", "header.alg"
    proof = with_header(full | {"typ": "seamwalk-proof"})
    yield "a proof sent as an entry", proof, "wrong_type", "header.typ"
    yield "no type", with_header({"alg": "ES256", "kid": KID}), "wrong_type", "header.typ"
    yield "no key", with_header({"alg": "ES256", "typ": "seamwalk-entry"}), "bad_header", "header.kid"
    yield "a short key name", with_header(full | {"kid": KID[:-1]}), "bad_header", "header.kid"
    spare = with_header(full | {"kid": KID[:-1] + "V"})
    yield "a key name with spare bits", spare, "bad_header", "header.kid"
    jwk = public_jwk(OTHER)
    yield "a key of its own brought along", with_header(full | {"jwk": jwk}), "bad_header", "header"
    yield "a critical extension", with_header(full | {"crit": ["exp"]}), "bad_header", "header"
    twice = HEADER.replace('"alg"', '"alg":"none","alg"')
    yield "a header member twice", with_header(twice), "duplicate_key", "header.alg"
    yield "a header that is a list", with_header([full]), "malformed", "header"


def bad_json(text: str) -> Iterator[tuple[str, str, str, str]]:
    def with_member(json_text: str, json_key: str = '"x"') -> str:
        return token(f"{text[:-1]},{json_key}:{json_text}}}")

    yield "a member twice", token(text[:-1] + ',"v":1}'), "duplicate_key", "payload.v"
    yield "a member twice, once escaped", token(text[:-1] + ',"\\u0076":1}'), "duplicate_key", "payload.v"
    yield "a member twice, deep inside", with_member('[{"a":1,"b":{},"a":1}]'), "duplicate_key", "payload.a"
    numbers = ("1.0", "0.1", "1e3", "1E400", "-0", "-0.0", "9007199254740992", "-9007199254740992", "9" * 400)
    for number in numbers:
        yield f"the number {number[:20]}", with_member(number), "bad_number", "payload"
    yield "nesting of 33", with_member("[" * 32 + "]" * 32), "too_deep", "payload"
    yield "nesting that exhausts a stack", token('{"x":' + "[" * 40000), "too_deep", "payload"
    yield "a lone high surrogate", with_member('"\\ud83d"'), "bad_text", "payload.x"
    yield "a lone low surrogate", with_member('"a\\udE00b"'), "bad_text", "payload.x"
    yield "surrogates in the wrong order", with_member('"\\ude00\\ud83d"'), "bad_text", "payload.x"
    yield "a lone surrogate in a key", with_member("1", '"\\ud83d"'), "bad_text", "payload"
    yield "an escaped NUL", with_member('["\\u0000"]'), "bad_text", "payload.x[0]"
    yield "a raw NUL", with_member('"\0"'), "malformed", "payload"
    yield "a raw line break in text", with_member('"\n"'), "malformed", "payload"
    for name, raw in (
        ("a stray byte", b"\xff"),
        ("an overlong slash", b"\xc0\xaf"),
        ("a surrogate as bytes", b"\xed\xa0\xbd"),
        ("a character cut short", b"\xe2\x82"),
        ("a code point beyond Unicode", b"\xf4\x90\x80\x80"),
    ):
        yield f"{name} in UTF-8", token(text[:-1].encode() + b',"x":"' + raw + b'"}'), "bad_text", "payload"
    yield "UTF-16", token(text.encode("utf-16-le")), "malformed", "payload"
    yield "a byte order mark", token("\ufeff" + text), "malformed", "payload"
    for name, json_text in (("NaN", "NaN"), ("Infinity", "-Infinity")):
        yield name, with_member(json_text), "malformed", "payload"
    yield "a trailing comma", token(text[:-1] + ",}"), "malformed", "payload"
    yield "single quotes", token("{'v':1}"), "malformed", "payload"
    yield "a leading zero", with_member("01"), "malformed", "payload"
    yield "a comment", token(text + "//"), "malformed", "payload"
    yield "two objects", token(text + "{}"), "malformed", "payload"
    yield "a list", token("[]"), "malformed", "payload"
    yield "text", token('"v"'), "malformed", "payload"
    yield "an empty payload", token(""), "malformed", "payload"


def bad_signatures(whole: str, text: str) -> Iterator[tuple[str, str, str, str]]:
    signing_input = whole.rpartition(".")[0]
    raw = sign(signing_input.encode(), KEY)
    r, s = int.from_bytes(raw[:32], "big"), int.from_bytes(raw[32:], "big")
    high = raw[:32] + (ORDER - s).to_bytes(32, "big")
    yield "the twin signature with high s", resigned(whole, high), "high_s", "signature"
    beyond = raw[:32] + (s + ORDER if s + ORDER < 2**256 else 2**256 - 1).to_bytes(32, "big")
    yield "s beyond the order", resigned(whole, beyond), "bad_signature", "signature"
    yield "s of zero", resigned(whole, raw[:32] + bytes(32)), "bad_signature", "signature"
    yield "r of zero", resigned(whole, bytes(32) + raw[32:]), "bad_signature", "signature"
    yield "all zeros", resigned(whole, bytes(64)), "bad_signature", "signature"
    yield "63 bytes", resigned(whole, raw[:-1]), "malformed", "signature"
    yield "65 bytes", resigned(whole, raw + b"\0"), "malformed", "signature"
    yield "the DER spelling", resigned(whole, encode_dss_signature(r, s)), "malformed", "signature"
    yield "no signature", f"{signing_input}.", "malformed", "signature"
    yield "signed by another key", token(text, key=OTHER), "bad_signature", "signature"
    other_text = text.replace('"panel":7', '"panel":8')
    assert other_text != text
    swapped = f"{token(other_text).rpartition('.')[0]}.{encode(raw)}"
    yield "another entry's signature", swapped, "bad_signature", "signature"
    stranger = token(text, HEADER.replace(KID, thumbprint(public_jwk(OTHER))), OTHER)
    yield "an unknown key", stranger, "unknown_key", "header.kid"
