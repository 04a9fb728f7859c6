"""Accounts: what can be one, who can sign in, and what is never kept."""

import pytest
import sqlalchemy as sa

from inspect_app.errors import BadInput, Conflict
from inspect_app.store.tables import PersonRow
from tests.office import PASSWORD


@pytest.fixture
def accounts(office):
    with office.app.app_context():
        yield office.parts.accounts


def test_a_person_signs_in_with_their_own_password_only(accounts):
    ada = accounts.add("Ada", "Ada Ejemplo (invented)", "foreman", PASSWORD)
    assert accounts.signing_in(" ADA ", PASSWORD) == ada
    assert accounts.signing_in("ada", PASSWORD + "x") is None
    assert accounts.signing_in("ben", PASSWORD) is None
    assert accounts.signing_in("ada", "x" * 100_000) is None


def test_a_password_is_kept_as_an_argon2id_hash_only(office, accounts):
    accounts.add("ada", "Ada", "foreman", PASSWORD)
    with office.parts.transactions.reading() as session:
        kept = session.scalar(sa.select(PersonRow.password))
    assert kept.startswith("$argon2id$") and PASSWORD not in kept


@pytest.mark.parametrize(
    ("login", "name", "role", "password", "field"),
    [
        ("", "Ada", "foreman", PASSWORD, "login"),
        ("a b", "Ada", "foreman", PASSWORD, "login"),
        ("a\0b", "Ada", "foreman", PASSWORD, "login"),
        ("x" * 101, "Ada", "foreman", PASSWORD, "login"),
        ("ada", " ", "foreman", PASSWORD, "name"),
        ("ada", "A\nda", "foreman", PASSWORD, "name"),
        ("ada", "Ada", "king", PASSWORD, "role"),
        ("ada", "Ada", "foreman", "short", "password"),
    ],
)
def test_what_cannot_be_an_account_is_refused_by_field(accounts, login, name, role, password, field):
    with pytest.raises(BadInput) as refused:
        accounts.add(login, name, role, password)
    assert refused.value.field == field
    assert accounts.everybody() == []


def test_a_login_belongs_to_one_person(accounts):
    accounts.add("ada", "Ada", "foreman", PASSWORD)
    with pytest.raises(Conflict) as taken:
        accounts.add("ADA", "Another", "inspector", PASSWORD)
    assert (taken.value.code, taken.value.value) == ("login_taken", "ada")
    assert len(accounts.everybody()) == 1
