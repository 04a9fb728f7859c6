"""The record is a fold: how the entries arrived leaves no mark on it."""

import random
from typing import Any

from inspect_app.entry.format import parse
from inspect_app.record.fold import fold
from tests.entry.known import ADA_KID, BEN_KID, ENTRIES

PEOPLE = {
    "ada": {"name": "Ada (invented)", "role": "foreman", "kids": [ADA_KID]},
    "ben": {"name": "Ben (invented)", "role": "administrator", "kids": [BEN_KID]},
}


def held() -> list[dict[str, Any]]:
    """Every good entry of the vectors, and a second version of each beside it that replaces nothing."""
    log = []
    for row in ENTRIES["good"]:
        entry = parse(row["token"])
        payload = {**entry.payload, "at": "2026-11-25T18:00:00.000-05:00"}
        log += [
            {"digest": entry.digest, "kid": entry.kid, "payload": entry.payload},
            {"digest": entry.digest[::-1], "kid": entry.kid, "payload": payload},
        ]
    return log


def test_any_order_and_repetition_of_entries_gives_the_same_record() -> None:
    log = held()
    wanted = fold(log, PEOPLE)
    assert wanted["answers"] and any(len(walk["heads"]) > 1 for walk in wanted["walks"].values())
    shuffler = random.Random(11)
    for _ in range(60):
        arrival = log + shuffler.choices(log, k=5)
        shuffler.shuffle(arrival)
        assert fold(arrival, PEOPLE) == wanted


def test_no_version_of_an_answer_is_dropped() -> None:
    record = fold(held(), PEOPLE)
    named = {one["digest"] for answer in record["answers"].values() for one in answer["versions"]}
    assert named == {one["digest"] for one in held() if one["payload"]["kind"] == "answer"}
