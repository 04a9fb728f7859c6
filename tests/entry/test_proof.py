"""A device's proof that it holds its key."""

import pytest

from inspect_app.entry.format import format_entry
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.jws import format_jws
from inspect_app.entry.proof import TYPE, format_proof, parse_proof, verify_proof
from inspect_app.entry.refusal import Refused

from .known import ADA, ADA_KID, BEN, STATEMENTS, facts, payload_of


def test_a_proof_is_good_for_its_nonce_its_purpose_and_its_key() -> None:
    proof = verify_proof(format_proof("n1", "enrol", ADA), public_jwk(ADA), "n1", "enrol")
    assert proof.kid == ADA_KID
    shared = STATEMENTS["proof"]
    verify_proof(shared["token"], shared["jwk"], shared["nonce"], "deliver")


def test_a_proof_is_good_for_nothing_else() -> None:
    token = format_proof("n1", "enrol", ADA)
    for jwk, nonce, purpose, wanted in (
        (public_jwk(BEN), "n1", "enrol", ("unknown_key", "header.kid")),
        (public_jwk(ADA), "n2", "enrol", ("bad_field", "proof.nonce")),
        (public_jwk(ADA), "n1", "deliver", ("bad_field", "proof.purpose")),
    ):
        with pytest.raises(Refused) as caught:
            verify_proof(token, jwk, nonce, purpose)  # type: ignore[arg-type]
        assert facts(caught.value) == wanted


@pytest.mark.parametrize(
    ("payload", "wanted"),
    [
        ({"nonce": "n"}, ("missing_field", "proof.purpose")),
        ({"purpose": "enrol"}, ("missing_field", "proof.nonce")),
        ({"nonce": "", "purpose": "enrol"}, ("bad_field", "proof.nonce")),
        ({"nonce": 1, "purpose": "enrol"}, ("bad_field", "proof.nonce")),
        ({"nonce": "n", "purpose": "sign"}, ("bad_field", "proof.purpose")),
        ({"nonce": "n", "purpose": "enrol", "also": 1}, ("bad_field", "proof")),
    ],
)
def test_what_is_no_proof_is_refused_by_field(payload: dict[str, object], wanted: tuple[str, str]) -> None:
    with pytest.raises(Refused) as caught:
        parse_proof(format_jws(payload, TYPE, ADA))
    assert facts(caught.value) == wanted


def test_an_entry_is_no_proof() -> None:
    with pytest.raises(Refused) as caught:
        parse_proof(format_entry(payload_of("station"), ADA))
    assert facts(caught.value) == ("wrong_type", "header.typ")


def test_no_changed_letter_of_a_proof_is_taken() -> None:
    token = format_proof("n1", "deliver", ADA)
    for place, letter in enumerate(token):
        changed = token[:place] + ("B" if letter == "A" else "A") + token[place + 1 :]
        with pytest.raises(Refused):
            verify_proof(changed, public_jwk(ADA), "n1", "deliver")
