"""The switching of inspection against another telling of the same clauses, over every short history and many long."""

import itertools
import random

import pytest

from inspect_app.rules.refused import Refused
from inspect_app.rules.switch import switched


def told_otherwise(history, state, allowed):
    """MIL-STD-105E 4.7 and 4.8 looked up backwards in the text of the lots since the last switch."""
    since = ""
    for lot in history:
        since += "A" if lot == "M" and state != "reduced" else lot
        counted = since.replace("N", "")
        now = state
        if state == "normal":
            if lot == "R" and counted[-5:].count("R") >= 2:
                now = "tightened"
            elif allowed and since.endswith("A" * 10):
                now = "reduced"
        elif state == "tightened":
            if since.endswith("AAAAA"):
                now = "normal"
            if since.count("R") == 5:
                now = "stopped"
        elif state == "reduced" and lot in "RM":
            now = "normal"
        if now != state:
            state, since = now, ""
    return state


@pytest.mark.parametrize("begun", ["normal", "tightened", "reduced", "stopped"])
def test_every_history_of_up_to_six_lots_ends_where_the_clauses_say(begun):
    for length in range(7):
        for history in itertools.product("ARMN", repeat=length):
            assert switched(list(history), begun, True)["inspection"] == told_otherwise(history, begun, True), history


def test_long_histories_walk_through_all_their_switches():
    chance, ends = random.Random(47), set()
    for _ in range(2000):
        weights = chance.choice([(30, 1, 1, 1), (6, 3, 1, 1), (4, 1, 1, 0)])
        history = chance.choices("ARMN", weights, k=chance.randint(7, 60))
        begun, allowed = chance.choice(["normal", "tightened", "reduced"]), chance.random() < 0.5
        found = switched(history, begun, allowed)
        assert found["inspection"] == told_otherwise(history, begun, allowed), (history, begun, allowed)
        ends.add(found["inspection"])
        # What stands before the last switch no longer counts.
        rest = switched(history[found["since"] :], found["inspection"], allowed)
        assert (rest["inspection"], rest["since"]) == (found["inspection"], 0)
    assert ends == {"normal", "tightened", "reduced", "stopped"}


def test_the_reason_names_how_many_lots_it_looked_back_over():
    for between in range(4):
        found = switched(["R", *"A" * between, "R"], "normal", False)
        assert found["because"] == {"code": "switch_two_not_accepted", "facts": {"lots": between + 2}}


def test_reduced_inspection_is_never_begun_unless_it_was_allowed():
    assert switched(["A"] * 40, "normal", False)["inspection"] == "normal"
    assert switched(["A"] * 9, "normal", True)["inspection"] == "normal"
    assert switched(["A"] * 10, "normal", True) == {
        "inspection": "reduced", "because": {"code": "switch_ten_accepted", "facts": {}}, "since": 10,
    }  # fmt: skip


def test_only_corrective_action_begins_again_after_a_stop():
    stopped = switched(["R"] * 7, "normal", False)
    assert (stopped["inspection"], stopped["since"]) == ("stopped", 7)
    assert switched(["R"] * 7 + ["A"] * 30, "normal", True)["inspection"] == "stopped"
    assert switched(["A"] * 5, "tightened", False)["inspection"] == "normal"  # begun again by a person


def test_a_lot_that_says_nothing_is_refused_at_its_place():
    with pytest.raises(Refused) as refused:
        switched(["A", "a"], "normal", False)
    assert (refused.value.code, refused.value.field, refused.value.value) == ("not_a_lot", "history[1]", "a")
