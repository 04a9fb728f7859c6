"""Guessing gets slower; a person who mistypes hardly notices."""

import pytest

from inspect_app.errors import TooOften
from inspect_app.people.tries import FREE, LONGEST, Tries
from tests.steady_clock import SteadyClock


def test_the_first_wrong_tries_cost_nothing():
    tries = Tries(SteadyClock())
    for _ in range(FREE):
        tries.wrong("ada")
        tries.check("ada")


def test_each_further_one_costs_more_but_never_a_shift():
    clock = SteadyClock()
    tries, waits = Tries(clock), []
    for _ in range(FREE + 12):
        tries.wrong("ada")
        try:
            tries.check("ada")
        except TooOften as wait:
            waits.append(wait.value)
            clock.forward(seconds=wait.value)
    assert waits == sorted(waits) and waits[0] < waits[-1] <= LONGEST + 1
    tries.check("ada")


def test_others_are_not_slowed_down():
    tries = Tries(SteadyClock())
    for _ in range(20):
        tries.wrong("ada")
    tries.check("ben")
    with pytest.raises(TooOften):
        tries.check("ada")


def test_the_right_password_clears_the_count():
    tries = Tries(SteadyClock())
    for _ in range(FREE):
        tries.wrong("ada")
    tries.right("ada")
    tries.wrong("ada")
    tries.check("ada")
