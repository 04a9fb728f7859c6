"""Who may say what: a reviewer surveys a claim, and neither registers a roof nor checks its fit."""

import json

import pytest

from inspect_app.record.ask import ask
from inspect_app.record.authority import MAY, objection

ROLES = ("administrator", "engineer", "foreman", "inspector", "owner", "reviewer")
EXPECTED = {
    "job": {"administrator"},
    "assembly": {"administrator"},
    "area": {"administrator", "inspector", "foreman"},
    "fit": {"administrator", "inspector", "foreman"},
    "walk": {"foreman", "inspector", "reviewer"},
    "station": {"foreman", "inspector", "reviewer"},
    "answer": {"foreman", "inspector", "reviewer"},
    "photo": {"foreman", "inspector", "reviewer"},
    "signoff": {"foreman", "inspector", "reviewer"},
    "lot": {"foreman", "inspector", "reviewer"},
    "mark": {"foreman", "inspector"},
    "stop": {"foreman", "inspector"},
    "release": {"administrator", "foreman", "inspector"},
    "disposition": {"administrator", "engineer"},
    "finding": {"administrator", "engineer", "foreman", "inspector", "reviewer"},
    "assignment": {"administrator", "foreman", "inspector"},
    "correction": {"administrator", "foreman", "inspector"},
    "recheck": {"administrator", "foreman", "inspector"},
    "reopening": {"administrator", "engineer", "foreman", "inspector", "owner", "reviewer"},
    "concession": {"administrator", "engineer"},
    "day": {"administrator", "foreman", "inspector"},
    "admission": {"administrator"},
    "survey": {"administrator", "engineer", "inspector", "reviewer"},
}


@pytest.mark.parametrize("role", ROLES)
@pytest.mark.parametrize("kind", sorted({*MAY, *EXPECTED}))
def test_what_a_role_may_say_is_taken_and_all_else_is_flagged(kind, role):
    people = {"p": {"name": "P", "role": role, "kids": ["K"]}}
    told = objection({"kid": "K", "payload": {"by": "p", "kind": kind}}, people)
    assert told == ("" if role in EXPECTED[kind] else "no_authority")


def test_a_kind_of_a_later_release_is_nobody_s_to_say_yet():
    people = {"p": {"name": "P", "role": "administrator", "kids": ["K"]}}
    assert objection({"kid": "K", "payload": {"by": "p", "kind": "oracle"}}, people) == "no_authority"


def test_the_phone_offers_by_the_same_table_that_flags():
    told = json.loads(ask(json.dumps({"call": "authority"})))["ok"]
    assert {kind: set(roles) for kind, roles in told.items()} == EXPECTED
