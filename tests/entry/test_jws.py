"""The compact JWS against its own standard and against random content."""

import json
from typing import Any

import pytest
from cryptography.hazmat.primitives.serialization import Encoding, NoEncryption, PrivateFormat
from hypothesis import given, seed, settings
from joserfc import jws as outside
from joserfc.jwk import ECKey
from jwcrypto import jwk as second
from jwcrypto.jws import JWS as SecondJws
from jwcrypto.jws import InvalidJWSSignature

from inspect_app.entry.base64url import decode, encode
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.jws import LARGEST, format_jws, parse_jws, verify
from inspect_app.entry.refusal import Refused
from inspect_app.entry.signature import is_low, lowered, matches
from inspect_app.entry.thumbprint import thumbprint

from .known import ADA, BEN, ENTRIES, STATEMENTS, facts
from .wild import objects

# RFC 7515 appendix A.3.1, in the RFC's own bytes (its payload has CR LF and spaces).
A3_INPUT = (
    b"eyJhbGciOiJFUzI1NiJ9"
    b".eyJpc3MiOiJqb2UiLA0KICJleHAiOjEzMDA4MTkzODAsDQogImh0dHA6Ly9leGFtcGxlLmNvbS9pc19yb290Ijp0cnVlfQ"
)
A3_SIGNATURE = "DtEhU3ljbEg8L38VWAfUAqOyKAM6-Xx-F4GawxaepmXFCgfTjDxw5djxLa8ISlSApmWQxfKTUJqPP3-Kg6NU1Q"
A3_KEY = {
    "kty": "EC",
    "crv": "P-256",
    "x": "f83OJ3D2xF1Bg8vub9tLe1gHMzV76e8Tus9uPHvRVEU",
    "y": "x_FEzRu9m36HLN_tue659LNpXW6pCyStikYjKIWI5a0",
}


def test_the_signature_of_rfc_7515_appendix_a_3_matches() -> None:
    signature = decode(A3_SIGNATURE, "signature")
    assert matches(signature, A3_INPUT, A3_KEY)
    assert not matches(signature, A3_INPUT + b"A", A3_KEY)
    # The RFC's example happens to have the high s that entries refuse; lowered, it still matches.
    assert not is_low(signature)
    assert is_low(lowered(signature)) and matches(lowered(signature), A3_INPUT, A3_KEY)


def test_the_key_of_rfc_7515_appendix_a_3_is_the_one_the_vectors_use() -> None:
    assert public_jwk(ADA) == A3_KEY


def test_an_independent_reader_of_jws_takes_our_tokens() -> None:
    """joserfc, by the same RFCs, from other hands."""
    payload = {"v": 1, "note": "Ñandú 屋根 🏠"}
    token = format_jws(payload, "seamwalk-entry", ADA)
    seen = outside.deserialize_compact(token, ECKey.import_key(A3_KEY), algorithms=["ES256"])
    assert json.loads(seen.payload) == payload


def test_a_second_independent_library_reads_entries_and_statements_as_they_were_signed() -> None:
    """jwcrypto, which shares no code with joserfc or with us; and it refuses what was changed."""
    entries = [row["token"] for row in ENTRIES["good"]]
    statements = [row["token"] for row in STATEMENTS["statements"]]
    for tokens, jwk in ((entries, ENTRIES["jwk"]), (statements, STATEMENTS["server"])):
        key = second.JWK(**jwk)
        assert key.thumbprint() == thumbprint(jwk), "RFC 7638"
        for token in tokens:
            read = SecondJws()
            read.deserialize(token, key, "ES256")
            assert json.loads(read.payload) == parse_any(token).payload
            head, payload, signature = token.split(".")
            changed = payload[:20] + ("A" if payload[20] != "A" else "B") + payload[21:]
            with pytest.raises(InvalidJWSSignature):
                SecondJws().deserialize(f"{head}.{changed}.{signature}", key, "ES256")


def parse_any(token: str) -> Any:
    typ = json.loads(decode(token.split(".")[0], "header"))["typ"]
    return parse_jws(token, typ)


def test_the_example_of_rfc_7515_appendix_a_3_in_the_second_library() -> None:
    read = SecondJws()
    read.deserialize(f"{A3_INPUT.decode()}.{A3_SIGNATURE}", second.JWK(**A3_KEY), "ES256")
    assert json.loads(read.payload)["iss"] == "joe"


def test_our_reader_takes_the_tokens_of_an_independent_writer() -> None:
    pem = ADA.private_bytes(Encoding.PEM, PrivateFormat.PKCS8, NoEncryption())
    key = ECKey.import_key(pem)
    header = {"alg": "ES256", "kid": key.thumbprint(), "typ": "seamwalk-entry"}
    low = 0
    for number in range(12):
        token = outside.serialize_compact(header, json.dumps({"n": number}), key)
        jws = parse_jws(token, "seamwalk-entry")
        assert jws.payload == {"n": number}
        if is_low(jws.signature):
            verify(jws, A3_KEY)
            low += 1
    assert low > 0, "half of all signatures are low: twelve high ones in a row are a fault"


@seed(20261125)
@settings(max_examples=150, deadline=None, database=None)
@given(objects)
def test_any_object_comes_back_as_it_was_written(payload: dict[str, Any]) -> None:
    try:
        token = format_jws(payload, "seamwalk-entry", ADA)
    except Refused as refusal:
        assert refusal.code == "too_large"
        return
    jws = parse_jws(token, "seamwalk-entry")
    verify(jws, A3_KEY)
    assert jws.payload == payload
    assert format_jws(payload, "seamwalk-entry", ADA) == token, "the same content gives the same bytes"


@pytest.mark.parametrize(
    ("value", "code"),
    [
        (1.0, "bad_number"),
        (2**53, "bad_number"),
        (float("nan"), "malformed"),
        ("\0", "bad_text"),
        ("\ud800", "bad_text"),
        ({"\udfff": 1}, "bad_text"),
        ("a" * LARGEST, "too_large"),
        (b"bytes", "malformed"),
        ({1, 2}, "malformed"),
    ],
)
def test_what_cannot_be_read_is_not_written(value: object, code: str) -> None:
    with pytest.raises(Refused) as caught:
        format_jws({"x": value}, "seamwalk-entry", ADA)
    assert caught.value.code == code


def test_a_list_that_holds_itself_is_refused() -> None:
    loop: list[object] = []
    loop.append(loop)
    with pytest.raises(Refused):
        format_jws({"x": loop}, "seamwalk-entry", ADA)


def test_verification_tells_another_key_from_a_bad_signature() -> None:
    jws = parse_jws(format_jws({"v": 1}, "seamwalk-entry", ADA), "seamwalk-entry")
    with pytest.raises(Refused) as caught:
        verify(jws, public_jwk(BEN))
    assert facts(caught.value) == ("unknown_key", "header.kid")


def test_the_digest_does_not_depend_on_the_signature() -> None:
    token = format_jws({"v": 1}, "seamwalk-entry", ADA)
    head = token.rpartition(".")[0]
    other = f"{head}.{encode(bytes(64))}"
    assert parse_jws(other, "seamwalk-entry").digest == parse_jws(token, "seamwalk-entry").digest
