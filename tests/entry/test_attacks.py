"""Attacks on a signed entry: every changed byte, every cut, replays and forgeries."""

import base64

import pytest
from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.asymmetric.utils import decode_dss_signature

from inspect_app.entry.accept import Accepted, Duplicate, Quarantined, accept
from inspect_app.entry.base64url import encode
from inspect_app.entry.format import parse
from inspect_app.entry.jws import parse_jws
from inspect_app.entry.refusal import Refused
from inspect_app.entry.signature import ORDER, lowered

from .known import ADA, ADA_KID, BEN_KID, KEYS, MEMBERS, facts, good, judged, nothing_held

TOKEN = good("station")


def test_no_changed_byte_anywhere_is_accepted() -> None:
    """Three changes of each place: the next letter of the alphabet, a flipped high bit, a dot."""
    raw = TOKEN.encode()
    letters = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
    for place, byte in enumerate(raw):
        following = letters[(letters.find(byte) + 1) % 64]
        for other in (following, byte ^ 0x80, ord("x") if byte == ord(".") else ord(".")):
            changed = raw[:place] + bytes([other]) + raw[place + 1 :]
            assert isinstance(judged(changed), Refused), place


def test_no_changed_bit_of_the_signature_is_accepted() -> None:
    entry = parse(TOKEN)
    head = TOKEN.rpartition(".")[0]
    for bit in range(512):
        changed = bytearray(entry.signature)
        changed[bit // 8] ^= 1 << bit % 8
        assert isinstance(judged(f"{head}.{encode(bytes(changed))}"), Refused), bit


def test_no_cut_is_accepted() -> None:
    for length in range(len(TOKEN)):
        assert isinstance(judged(TOKEN[:length]), Refused), length
        assert isinstance(judged(TOKEN[length + 1 :]), Refused), length


def test_no_inserted_byte_is_accepted() -> None:
    for place in range(len(TOKEN) + 1):
        for character in "A.=\n":
            assert isinstance(judged(TOKEN[:place] + character + TOKEN[place:]), Refused), (place, character)


def test_the_high_s_twin_is_refused_although_its_mathematics_is_right() -> None:
    entry = parse(TOKEN)
    s = int.from_bytes(entry.signature[32:], "big")
    twin = entry.signature[:32] + (ORDER - s).to_bytes(32, "big")
    assert facts(judged(f"{TOKEN.rpartition('.')[0]}.{encode(twin)}")) == ("high_s", "signature")
    assert lowered(twin) == entry.signature


def test_a_replay_is_a_duplicate() -> None:
    entry = parse(TOKEN)
    assert accept(TOKEN, KEYS, MEMBERS, {entry.digest}.__contains__) == Duplicate(entry.digest)


def test_a_replay_under_another_valid_signature_is_the_same_duplicate() -> None:
    """A phone that signs again makes other bytes; the content is what counts."""
    entry = parse(TOKEN)
    der = ADA.sign(entry.signing_input, ec.ECDSA(hashes.SHA256()))
    r, s = decode_dss_signature(der)
    again = lowered(r.to_bytes(32, "big") + s.to_bytes(32, "big"))
    assert again != entry.signature
    token = f"{TOKEN.rpartition('.')[0]}.{encode(again)}"
    assert isinstance(judged(token), Accepted)
    assert accept(token, KEYS, MEMBERS, {entry.digest}.__contains__) == Duplicate(entry.digest)


def test_a_forged_signature_learns_nothing_about_what_is_held() -> None:
    entry = parse(TOKEN)
    forged = f"{TOKEN.rpartition('.')[0]}.{encode(bytes(63) + bytes([1]))}"
    outcome = accept(forged, KEYS, MEMBERS, {entry.digest}.__contains__)
    assert facts(outcome) == ("bad_signature", "signature")


def test_the_key_table_decides_the_key_even_if_it_is_wrong() -> None:
    """A row filed under the wrong name must not lend its key to another."""
    crossed = {ADA_KID: KEYS[BEN_KID]}
    assert facts(accept(TOKEN, crossed, MEMBERS, nothing_held)) == ("unknown_key", "header.kid")


def test_a_revoked_key_is_quarantined_and_a_forgery_in_its_name_is_not() -> None:
    revoked = {ADA_KID: KEYS[ADA_KID].__class__(KEYS[ADA_KID].jwk, "ada", revoked=True)}
    outcome = accept(TOKEN, revoked, {}, nothing_held)
    assert isinstance(outcome, Quarantined)
    assert (outcome.entry.token, outcome.reason) == (TOKEN, "key_revoked")
    changed = TOKEN[:-3] + ("A" if TOKEN[-3] != "A" else "B") + TOKEN[-2:]
    assert isinstance(accept(changed, revoked, {}, nothing_held), Refused)


def test_what_was_held_before_a_revocation_stays_a_duplicate() -> None:
    entry = parse(TOKEN)
    revoked = {ADA_KID: KEYS[ADA_KID].__class__(KEYS[ADA_KID].jwk, "ada", revoked=True)}
    assert accept(TOKEN, revoked, {}, {entry.digest}.__contains__) == Duplicate(entry.digest)


@pytest.mark.parametrize("junk", [b"\xff\xfe", b"\0" * 10, b"..", "é.è.ê", "\ud800.a.b", b"a" * 10**6])
def test_junk_is_refused_as_a_value(junk: bytes | str) -> None:
    outcome = judged(junk)
    assert isinstance(outcome, Refused)
    outcome.value.encode("utf-8")
    assert len(outcome.value) <= 120


def test_a_token_signed_with_its_own_public_key_as_a_secret_is_refused() -> None:
    """The old confusion: HS256 with the public key's bytes as the shared secret."""
    import hmac

    head = encode(b'{"alg":"HS256","kid":"' + ADA_KID.encode() + b'","typ":"seamwalk-entry"}')
    body = TOKEN.split(".")[1]
    secret = base64.urlsafe_b64decode(str(KEYS[ADA_KID].jwk["x"]) + "=")
    tag = hmac.digest(secret, f"{head}.{body}".encode(), "sha256")
    assert facts(judged(f"{head}.{body}.{encode(tag)}")) == ("bad_algorithm", "header.alg")


def test_the_purpose_of_a_token_is_part_of_what_is_signed() -> None:
    with pytest.raises(Refused) as caught:
        parse_jws(TOKEN, "seamwalk-proof")
    assert facts(caught.value) == ("wrong_type", "header.typ")
