"""Statements by the server: what they say, and what their chain shows."""

import random
from typing import Any

import pytest

from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.jws import verify
from inspect_app.entry.receipts import verify_receipts
from inspect_app.entry.refusal import Refused
from inspect_app.entry.statement import (
    countersignature,
    enrolment,
    entry_receipt,
    format_statement,
    parse_statement,
    photo_receipt,
    revocation,
    ticket,
)

from .known import ADA, ADA_KID, BEN, JOB, STATEMENTS, facts

AT = "2026-11-25T21:40:06.000+00:00"
DIGEST = "AAECAwQFBgcICQoLDA0ODxAREhMUFRYXGBkaGxwdHh8"
PERSON = {"id": "ada", "name": "Ada (invented)", "role": "foreman"}
SERVER = public_jwk(BEN)
SIGNED = ("0" * 64, "1" * 64, "2" * 64, "Ines (invented)", "ines")
OTHER_JOB = JOB[:-1] + ("0" if JOB[-1] != "0" else "1")


def chain(length: int) -> list[str]:
    """A whole chain of one job's receipts; other statements take every other place in ``seq``."""
    tokens: list[str] = []
    prev = None
    for n in range(length):
        make: dict[str, Any] = (
            entry_receipt(2 * n + 1, AT, JOB, n, prev, DIGEST)
            if n % 2
            else photo_receipt(2 * n + 1, AT, JOB, n, prev, f"{n:064x}", n)
        )
        tokens.append(format_statement(make, BEN))
        prev = parse_statement(tokens[-1]).digest
    return tokens


def test_the_shared_statements_parse_and_verify() -> None:
    kinds = []
    for row in STATEMENTS["statements"]:
        statement = parse_statement(row["token"])
        verify(statement, STATEMENTS["server"])
        assert statement.digest == row["digest"]
        kinds.append(statement.kind)
    assert kinds == ["enrolment", "receipt", "receipt", "revocation", "ticket", "restoration", "countersignature"]


@pytest.mark.parametrize(
    ("payload", "code", "field"),
    [
        (revocation(1, AT, ADA_KID, "ben") | {"v": 2}, "unknown_version", "v"),
        (revocation(1, AT, ADA_KID, "ben") | {"kind": "pardon"}, "unknown_kind", "kind"),
        (revocation(1, AT, "x", "ben"), "bad_field", "statement.kid"),
        (revocation(1, "today", ADA_KID, "ben"), "bad_field", "statement.at"),
        (revocation(0, AT, ADA_KID, "ben"), "bad_field", "statement.seq"),
        (enrolment(1, AT, public_jwk(ADA), PERSON, "p") | {"kid": DIGEST}, "bad_field", "statement.kid"),
        (enrolment(1, AT, public_jwk(ADA), {"id": "ada"}, "p"), "missing_field", "statement.person.name"),
        (entry_receipt(1, AT, JOB, 0, DIGEST, DIGEST), "bad_field", "statement.prev"),
        (entry_receipt(1, AT, JOB, 1, None, DIGEST), "bad_field", "statement.prev"),
        (entry_receipt(1, AT, "job", 0, None, DIGEST), "bad_field", "statement.job"),
        (entry_receipt(1, AT, JOB, 0, None, DIGEST) | {"photo": "0" * 64}, "bad_field", "statement.entry"),
        (photo_receipt(1, AT, JOB, 0, None, "0" * 64, 9) | {"size": None}, "missing_field", "statement.size"),
        (photo_receipt(1, AT, JOB, 0, None, "0" * 63, 9), "bad_field", "statement.photo"),
        ({"v": 1, "kind": "receipt", "seq": 1, "at": AT}, "missing_field", "statement.job"),
        (ticket(1, AT, JOB, ADA_KID, "play", 0, DIGEST), "bad_field", "statement.series"),
        (ticket(1, AT, JOB, ADA_KID, "work", -1, DIGEST), "bad_field", "statement.n"),
        (ticket(1, AT, JOB, ADA_KID, "work", True, DIGEST), "bad_field", "statement.n"),
        (ticket(1, AT, JOB, ADA_KID, "work", 0, DIGEST[:-1]), "bad_field", "statement.random"),
        (ticket(1, AT, "job", ADA_KID, "work", 0, DIGEST), "bad_field", "statement.job"),
        (countersignature(1, AT, JOB, 0, 1, *SIGNED), "bad_field", "statement.number"),
        (countersignature(1, AT, JOB, 1, 0, *SIGNED), "bad_field", "statement.n"),
        (countersignature(1, AT, "job", 1, 1, *SIGNED), "bad_field", "statement.job"),
        (countersignature(1, AT, JOB, 1, 1, "0" * 63, *SIGNED[1:]), "bad_field", "statement.before"),
        (countersignature(1, AT, JOB, 1, 1, SIGNED[0], "A" * 64, *SIGNED[2:]), "bad_field", "statement.after"),
        (countersignature(1, AT, JOB, 1, 1, *SIGNED[:2], "", *SIGNED[3:]), "bad_field", "statement.certificate"),
        (ticket(1, AT, JOB, "ada", "work", 0, DIGEST), "bad_field", "statement.kid"),
    ],
)
def test_what_is_no_statement_is_neither_written_nor_read(
    payload: dict[str, object], code: str, field: str
) -> None:
    with pytest.raises(Refused) as caught:
        format_statement(payload, BEN)
    assert facts(caught.value) == (code, field)


def test_a_whole_chain_has_nothing_to_report() -> None:
    tokens = chain(6)
    assert verify_receipts(tokens, SERVER) == {
        "count": 6,
        "head": parse_statement(tokens[-1]).digest,
        "seq": 11,
        "refused": [],
        "gaps": [],
        "forks": [],
        "breaks": [],
    }


def test_no_receipts_have_no_head() -> None:
    shown = verify_receipts([], SERVER)
    assert (shown["count"], shown["head"], shown["seq"]) == (0, None, None)


def test_order_and_repetition_change_nothing_but_where_a_refusal_stands() -> None:
    tokens = chain(6)
    wanted = verify_receipts(tokens, SERVER)
    shuffler = random.Random(3)
    for _ in range(5):
        arrival = tokens + shuffler.choices(tokens, k=3)
        shuffler.shuffle(arrival)
        assert verify_receipts(arrival, SERVER) == wanted


def test_each_missing_receipt_but_the_last_is_a_gap() -> None:
    tokens = chain(5)
    for n in range(4):
        assert verify_receipts(tokens[:n] + tokens[n + 1 :], SERVER)["gaps"] == [[n, n]]
    cut = verify_receipts(tokens[:4], SERVER)
    assert cut["gaps"] == [] and cut["head"] == parse_statement(tokens[3]).digest


def test_a_place_given_twice_is_a_fork() -> None:
    tokens = chain(3)
    prev = parse_statement(tokens[1]).digest
    twin = format_statement(entry_receipt(8, AT, JOB, 2, prev, DIGEST), BEN)
    digests = sorted(parse_statement(token).digest for token in (tokens[2], twin))
    shown = verify_receipts([*tokens, twin], SERVER)
    assert shown["forks"] == [{"n": 2, "digests": digests}]
    assert (shown["count"], shown["breaks"]) == (4, [])


def test_a_swapped_link_an_older_seq_and_another_job_are_breaks() -> None:
    tokens = chain(3)
    first, second = (parse_statement(token).digest for token in tokens[:2])
    for spoilt in (
        entry_receipt(9, AT, JOB, 2, first, DIGEST),
        entry_receipt(3, AT, JOB, 2, second, DIGEST),
        entry_receipt(9, AT, OTHER_JOB, 2, second, DIGEST),
    ):
        assert verify_receipts([*tokens[:2], format_statement(spoilt, BEN)], SERVER)["breaks"] == [2]


def test_a_stranger_s_receipt_and_other_statements_are_named_not_counted() -> None:
    tokens = chain(2)
    stranger = format_statement(entry_receipt(5, AT, JOB, 2, DIGEST, DIGEST), ADA)
    other = format_statement(revocation(6, AT, ADA_KID, "ben"), BEN)
    shown = verify_receipts([stranger, *tokens, other, "<html>"], SERVER)
    assert shown["count"] == 2
    refused = shown["refused"]
    assert isinstance(refused, list)
    assert [(row["index"], row["code"]) for row in refused] == [
        (0, "unknown_key"),
        (3, "unknown_kind"),
        (4, "malformed"),
    ]


def test_no_changed_letter_of_a_receipt_is_counted() -> None:
    token = chain(1)[0]
    for place, letter in enumerate(token):
        changed = token[:place] + ("B" if letter == "A" else "A") + token[place + 1 :]
        assert verify_receipts([changed], SERVER)["count"] == 0, place
