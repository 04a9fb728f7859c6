"""Keys, their names and their signatures."""

import pytest

from inspect_app.entry.jwk import bare, public_jwk, public_key
from inspect_app.entry.refusal import Refused
from inspect_app.entry.signature import ORDER, is_low, lowered, matches, sign
from inspect_app.entry.thumbprint import thumbprint

from .known import ADA, BEN, facts

# RFC 7638 section 3.1.
RFC_7638_KEY = {
    "kty": "RSA",
    "n": (
        "0vx7agoebGcQSuuPiLJXZptN9nndrQmbXEps2aiAFbWhM78LhWx4cbbfAAtVT86zwu1RK7aPFFxuhDR1L6tSoc"
        "_BJECPebWKRXjBZCiFV4n3oknjhMstn64tZ_2W-5JsGY4Hc5n9yBXArwl93lqt7_RN5w6Cf0h4QyQ5v-65YGjQ"
        "R0_FDW2QvzqY368QQMicAtaSqzs8KJZgnYb9c7d0zgdAZHzu6qMQvRL5hajrn1n91CbOpbISD08qNLyrdkt-bF"
        "TWhAI4vMQFh6WeZu0fM4lFd2NcRwr3XPksINHaQ-G_xBniIqbw0Ls1jF44-csFCur-kEgU8awapJzKnqDKgw"
    ),
    "e": "AQAB",
    "alg": "RS256",
    "kid": "2011-04-29",
}


def test_the_thumbprint_of_the_example_in_rfc_7638() -> None:
    assert thumbprint(RFC_7638_KEY) == "NzbLsXh8uDCcd-6MNwXF4W_7noWXFZAfHkxZsRGC9Xs"


def test_members_beyond_the_required_ones_do_not_change_a_thumbprint() -> None:
    jwk = public_jwk(ADA)
    assert thumbprint(jwk | {"ext": "true", "use": "sig"}) == thumbprint(dict(reversed(jwk.items())))


def test_the_deterministic_signature_of_rfc_6979_appendix_a_2_5() -> None:
    """P-256, SHA-256, message "sample"; the RFC's s is the high one, ours its twin."""
    r = 0xEFD48B2AACB6A8FD1140DD9CD45E81D69D2C877B56AAF991C34D0EA84EAF3716
    s = 0xF7CB1C942D657C41D436C7A1B6E29F65F3E900DBB9AFF4064DC4AB2F843ACDA8
    assert sign(b"sample", BEN) == r.to_bytes(32, "big") + (ORDER - s).to_bytes(32, "big")


def test_every_signature_is_low_and_matches_and_so_does_its_high_twin() -> None:
    for number in range(40):
        message = str(number).encode()
        signature = sign(message, ADA)
        twin = signature[:32] + (ORDER - int.from_bytes(signature[32:], "big")).to_bytes(32, "big")
        assert is_low(signature) and not is_low(twin)
        assert matches(signature, message, public_jwk(ADA)) and matches(twin, message, public_jwk(ADA))
        assert lowered(twin) == signature == lowered(signature)


def test_the_border_of_low_s_is_half_the_order() -> None:
    half = ORDER // 2
    assert is_low(bytes(32) + half.to_bytes(32, "big"))
    assert not is_low(bytes(32) + (half + 1).to_bytes(32, "big"))


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"kty": "RSA"}, "jwk.kty"),
        ({"crv": "P-384"}, "jwk.crv"),
        ({"x": "AA"}, "jwk.x"),
        ({"x": None}, "jwk.x"),
        ({"y": public_jwk(BEN)["y"]}, "jwk.y"),
        ({"x": "A" * 43, "y": "A" * 43}, "jwk.y"),
        ({"d": "AAAA"}, "jwk.d"),
    ],
)
def test_what_is_no_public_key_is_refused_by_field(change: dict[str, object], field: str) -> None:
    with pytest.raises(Refused) as caught:
        bare(public_jwk(ADA) | change)
    assert facts(caught.value) == ("bad_key", field)


def test_a_private_key_never_shows_up_in_its_refusal() -> None:
    with pytest.raises(Refused) as caught:
        bare(public_jwk(ADA) | {"d": "secret-secret"})
    assert "secret" not in repr(caught.value)


def test_a_bare_key_is_four_members() -> None:
    assert bare(public_jwk(ADA) | {"ext": True, "key_ops": ["verify"]}) == public_jwk(ADA)
    assert public_jwk(public_key(public_jwk(ADA))) == public_jwk(ADA)


def test_a_key_of_no_known_type_has_no_name() -> None:
    for jwk in ({}, {"kty": "oct", "k": "AAAA"}, {"kty": "EC", "crv": "P-256", "x": 1, "y": "A"}):
        with pytest.raises(Refused) as caught:
            thumbprint(jwk)
        assert caught.value.code == "bad_key"
