"""Delivery tokens: for the holder of a key, for an hour, and for quarantine only once the key is revoked."""

import pytest

from inspect_app.entry.proof import format_proof
from inspect_app.entry.refusal import Refused
from inspect_app.errors import NotAllowed, NotSignedIn
from inspect_app.people.delivery import scope_of


@pytest.fixture
def ada(office):
    phone = office.phone("ada", "foreman")
    with office.app.app_context():
        yield phone


def token_of(office, phone):
    return office.parts.delivery.token(phone.proof("deliver"))[0]


def test_a_token_gives_back_its_device(office, ada):
    assert office.parts.delivery.device(token_of(office, ada)).kid == ada.kid


def test_a_token_lasts_an_hour(office, ada):
    token = token_of(office, ada)
    office.clock.forward(minutes=60)
    assert office.parts.delivery.device(token).kid == ada.kid
    office.clock.forward(seconds=1)
    with pytest.raises(NotSignedIn) as old:
        office.parts.delivery.device(token)
    assert old.value.code == "token_old"


def test_a_nonce_lasts_five_minutes(office, ada):
    proof = ada.proof("deliver")
    office.clock.forward(seconds=301)
    with pytest.raises(NotSignedIn) as old:
        office.parts.delivery.token(proof)
    assert old.value.code == "nonce_old"


def test_every_changed_character_of_a_token_is_noticed(office, ada):
    token = token_of(office, ada)
    for place in range(len(token) - 1):  # the last character of base64 may carry unused bits
        changed = token[:place] + ("A" if token[place] != "A" else "B") + token[place + 1 :]
        with pytest.raises(NotSignedIn):
            office.parts.delivery.device(changed)


def test_a_nonce_is_no_token_and_a_token_is_no_nonce(office, ada):
    with pytest.raises(NotSignedIn):
        office.parts.delivery.device(ada.nonce())
    with pytest.raises(NotSignedIn):
        office.parts.nonces.check(token_of(office, ada))


@pytest.mark.parametrize("nonce", ["made-up", "ñ", "a.b.c", "." * 200])
def test_a_nonce_that_is_not_ours_is_refused(office, ada, nonce):
    with pytest.raises(NotSignedIn) as refused:
        office.parts.delivery.token(format_proof(nonce, "deliver", ada.key))
    assert refused.value.code == "nonce_unknown"


def test_a_proof_to_enrol_does_not_deliver(office, ada):
    with pytest.raises(Refused) as refused:
        office.parts.delivery.token(ada.proof("enrol"))
    assert refused.value.field == "proof.purpose"


def test_a_revoked_key_gets_a_token_for_quarantine_only(office, ada):
    before = token_of(office, ada)
    office.parts.devices.revoke(ada.kid, "server")
    after, device = office.parts.delivery.token(ada.proof("deliver"))
    assert scope_of(device) == "quarantine"
    for token in (before, after):  # one given before the revocation is worth no more
        assert office.parts.delivery.device(token, scope="quarantine").revoked
        with pytest.raises(NotAllowed) as refused:
            office.parts.delivery.device(token)
        assert refused.value.code == "key_revoked"


def test_tokens_outlive_a_restart_of_the_server(office, ada):
    token = token_of(office, ada)
    again = office.again()
    with again.app.app_context():
        assert again.parts.delivery.device(token).kid == ada.kid
