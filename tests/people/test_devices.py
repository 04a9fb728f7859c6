"""Enrolment and revocation: the server's signed word on whose a key is, given once."""

import pytest

from inspect_app.entry.jws import verify
from inspect_app.entry.refusal import Refused
from inspect_app.entry.statement import parse_statement
from inspect_app.errors import Conflict, NotFound
from inspect_app.people.enrolment import enrol
from tests.phone import Phone


@pytest.fixture
def phone(office):
    phone = Phone(office.client(), office.add("ada", "foreman"))
    with office.app.app_context():
        yield phone


def enrolled(office, phone, person=None, jwk=None, proof=None):
    parts = office.parts
    return enrol(
        parts.devices,
        parts.nonces,
        person or phone.person,
        jwk or phone.jwk,
        "test",
        proof or phone.proof("enrol"),
    )


def test_the_statement_names_person_and_key_and_is_signed_by_the_server(office, phone):
    statement = parse_statement(enrolled(office, phone))
    verify(statement, office.parts.server_key.jwk)
    payload = statement.payload
    assert (payload["kind"], payload["kid"], payload["jwk"]) == ("enrolment", phone.kid, phone.jwk)
    assert payload["person"] == {"id": phone.person.id, "name": "ada (invented)", "role": "foreman"}


def test_enrolling_again_gives_the_same_statement(office, phone):
    """The answer to the first try may have been lost on its way."""
    assert enrolled(office, phone) == enrolled(office, phone)
    assert office.parts.statements.last() == 1


def test_nobody_can_enrol_somebody_elses_key(office, phone):
    enrolled(office, phone)
    thief = office.add("ben", "foreman")
    with pytest.raises(Conflict) as refused:
        enrolled(office, phone, person=thief)
    assert refused.value.code == "key_taken"


def test_a_key_needs_the_proof_of_its_own_holder(office, phone):
    other = Phone(office.client(), phone.person)
    with pytest.raises(Refused) as refused:
        enrolled(office, phone, proof=other.proof("enrol"))
    assert refused.value.code == "unknown_key"
    assert office.parts.devices.find(phone.kid) is None


def test_a_key_that_comes_with_its_private_part_is_refused(office, phone):
    with pytest.raises(Refused) as refused:
        enrolled(office, phone, jwk=phone.jwk | {"d": "A" * 43})
    assert (refused.value.code, refused.value.field) == ("bad_key", "jwk.d")


def test_a_revocation_is_said_once_and_kept(office, phone):
    enrolled(office, phone)
    first = office.parts.devices.revoke(phone.kid, phone.person.id)
    assert office.parts.devices.revoke(phone.kid, phone.person.id) == first
    statement = parse_statement(first)
    verify(statement, office.parts.server_key.jwk)
    assert (statement.payload["kind"], statement.payload["kid"]) == ("revocation", phone.kid)
    assert office.parts.devices.find(phone.kid).revoked


def test_revoking_an_unknown_key_says_so(office, phone):
    with pytest.raises(NotFound) as refused:
        office.parts.devices.revoke(phone.kid, "server")
    assert (refused.value.field, refused.value.value) == ("kid", phone.kid)
