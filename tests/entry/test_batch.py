"""A batch is judged as a set: its order and its repetitions do not matter."""

import random
from collections.abc import Sequence

from inspect_app.entry.accept import Accepted, Duplicate, Key, Outcome, Quarantined
from inspect_app.entry.batch import accept_all
from inspect_app.entry.format import format_entry
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.refusal import Refused

from .known import ADA_KID, BEN, BEN_KID, ENTRIES, JOB, KEYS, MEMBERS, good, nothing_held, payload_of

GOOD = [row["token"] for row in ENTRIES["good"] if len(row["token"]) < 5000]
BAD = [row["token"] for row in ENTRIES["bad_tokens"][:20] + ENTRIES["bad_payloads"][:20]]


def kept(outcomes: Sequence[Outcome]) -> set[tuple[str, str]]:
    return {
        (type(outcome).__name__, outcome.entry.digest)
        for outcome in outcomes
        if isinstance(outcome, Accepted | Quarantined)
    }


def test_any_order_and_any_repetition_keeps_the_same_set() -> None:
    shuffler = random.Random(11)
    log = GOOD + BAD
    wanted = kept(accept_all(log, KEYS, MEMBERS, nothing_held))
    assert len(wanted) == len(GOOD)
    for _ in range(12):
        arrival = log + shuffler.choices(log, k=15)
        shuffler.shuffle(arrival)
        outcomes = accept_all(arrival, KEYS, MEMBERS, nothing_held)
        assert kept(outcomes) == wanted
        assert sum(isinstance(outcome, Accepted) for outcome in outcomes) == len(GOOD)


def test_any_split_into_batches_keeps_the_same_set() -> None:
    shuffler = random.Random(12)
    wanted = kept(accept_all(GOOD, KEYS, MEMBERS, nothing_held))
    for _ in range(6):
        arrival = GOOD + shuffler.choices(GOOD, k=8)
        shuffler.shuffle(arrival)
        held: set[str] = set()
        result: set[tuple[str, str]] = set()
        while arrival:
            size = shuffler.randint(1, 5)
            new = kept(accept_all(arrival[:size], KEYS, MEMBERS, held.__contains__))
            assert not {digest for _, digest in new} & held, "nothing is kept twice"
            held |= {digest for _, digest in new}
            result |= new
            arrival = arrival[size:]
        assert result == wanted


def test_one_outcome_for_each_token_in_the_order_sent() -> None:
    tokens = [good("walk"), "junk", good("station"), good("walk")]
    outcomes = accept_all(tokens, KEYS, MEMBERS, nothing_held)
    assert [type(outcome) for outcome in outcomes] == [Accepted, Refused, Accepted, Duplicate]


def test_a_job_may_open_anywhere_in_the_batch() -> None:
    tokens = [
        format_entry(payload_of(kind) | {"by": "ben"}, BEN) for kind in ("area", "assembly", "job", "walk")
    ]
    shuffler = random.Random(13)
    for _ in range(6):
        shuffler.shuffle(tokens)
        outcomes = accept_all(tokens, KEYS, {}, nothing_held)
        assert all(isinstance(outcome, Accepted) for outcome in outcomes)
        assert sum(outcome.opens_job for outcome in outcomes if isinstance(outcome, Accepted)) == 1


def test_opening_a_job_lets_nobody_else_in() -> None:
    tokens = [good("walk"), format_entry(payload_of("job") | {"by": "ben"}, BEN), good("station")]
    outcomes = accept_all(tokens, KEYS, {}, nothing_held)
    assert [type(outcome) for outcome in outcomes] == [Refused, Accepted, Refused]


def test_an_administrator_who_does_not_belong_is_judged_and_the_batch_ends() -> None:
    assert BEN_KID in KEYS
    outcomes = accept_all([good("walk")] * 3, KEYS, {JOB: {"ben"}}, nothing_held)
    assert {type(outcome) for outcome in outcomes} == {Refused}


def test_a_quarantined_entry_is_kept_once() -> None:
    keys = {ADA_KID: Key(KEYS[ADA_KID].jwk, "ada", revoked=True)}
    outcomes = accept_all([good("walk"), good("walk")], keys, MEMBERS, nothing_held)
    assert [type(outcome) for outcome in outcomes] == [Quarantined, Duplicate]


def test_an_empty_batch_has_no_outcomes() -> None:
    assert accept_all([], {BEN_KID: Key(public_jwk(BEN), "ben")}, {}, nothing_held) == []
