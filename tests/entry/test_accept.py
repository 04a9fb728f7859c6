"""Who may send what, decided for each entry on its own."""

from dataclasses import replace
from typing import Any

from inspect_app.entry.accept import Accepted, Key, accept
from inspect_app.entry.format import format_entry
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.uuid7 import uuid7

from .known import ADA, ADA_KID, BEN, BEN_KID, JOB, KEYS, MEMBERS, facts, judged, nothing_held, payload_of

DIGEST = "AAECAwQFBgcICQoLDA0ODxAREhMUFRYXGBkaGxwdHh8"


def signed(name: str = "station", key: Any = ADA, **changes: object) -> str:
    return format_entry(payload_of(name) | changes, key)


def test_a_person_cannot_speak_for_another() -> None:
    assert facts(judged(signed(by="ben"))) == ("wrong_person", "by")
    assert isinstance(judged(signed(by="ben", key=BEN)), Accepted)


def test_a_person_outside_the_job_is_refused_and_the_job_is_named() -> None:
    outcome = accept(signed(), KEYS, {JOB: {"ben"}}, nothing_held)
    assert facts(outcome) == ("not_a_member", "job")
    assert outcome.value == JOB  # type: ignore[union-attr]


def test_an_unknown_key_is_not_a_bad_signature() -> None:
    assert facts(accept(signed(), {}, MEMBERS, nothing_held)) == ("unknown_key", "header.kid")


def test_an_administrator_opens_a_job_that_nobody_belongs_to() -> None:
    token = signed("job", BEN, by="ben")
    for members in ({}, {JOB: set[str]()}):
        outcome = accept(token, KEYS, members, nothing_held)
        assert isinstance(outcome, Accepted)
        assert outcome.opens_job


def test_an_administrator_cannot_walk_into_the_job_of_others() -> None:
    outcome = accept(signed("job", BEN, by="ben"), KEYS, {JOB: {"ada"}}, nothing_held)
    assert facts(outcome) == ("not_a_member", "job")


def test_a_foreman_cannot_open_a_job() -> None:
    assert facts(accept(signed("job"), KEYS, {}, nothing_held)) == ("not_a_member", "job")


def test_only_the_job_entry_itself_opens_a_job() -> None:
    outcome = accept(signed("area", BEN, by="ben"), KEYS, {}, nothing_held)
    assert facts(outcome) == ("not_a_member", "job")


def test_a_job_entry_of_an_open_job_opens_nothing() -> None:
    outcome = judged(signed("job", BEN, by="ben"))
    assert isinstance(outcome, Accepted)
    assert not outcome.opens_job


def test_gaps_forks_and_swaps_are_never_refused() -> None:
    for seq, prev in ((9, DIGEST), (9, "A" * 43), (2**53 - 1, DIGEST), (1, DIGEST), (0, None)):
        assert isinstance(judged(signed(seq=seq, prev=prev)), Accepted), seq


def test_clocks_are_never_refused() -> None:
    clocks: list[dict[str, object]] = [
        {"monotonic": 0, "server": None, "age": None, "zone": ""},
        {"monotonic": -5, "server": "not a time", "age": -1, "zone": "Mars/Olympus_Mons"},
    ]
    for at in ("0001-01-01T00:00:00.000+00:00", "9999-12-31T23:59:59.999-12:00"):
        for clock in clocks:
            assert isinstance(judged(signed(at=at, clock=clock)), Accepted)


def test_a_new_phone_of_the_same_person_needs_only_its_enrolment() -> None:
    second = replace(KEYS[BEN_KID], person="ada")
    outcome = accept(signed(key=BEN), {BEN_KID: second}, MEMBERS, nothing_held)
    assert isinstance(outcome, Accepted)
    assert outcome.entry.kid == BEN_KID


def test_an_enrolled_key_may_carry_what_browsers_add_to_it() -> None:
    jwk = public_jwk(ADA) | {"ext": "true", "key_ops": "verify"}
    assert isinstance(accept(signed(), {ADA_KID: Key(jwk, "ada")}, MEMBERS, nothing_held), Accepted)


def test_the_same_content_with_another_id_is_another_entry() -> None:
    first, second = judged(signed()), judged(signed(id=uuid7(1, bytes(10))))
    assert isinstance(first, Accepted) and isinstance(second, Accepted)
    assert first.entry.digest != second.entry.digest
