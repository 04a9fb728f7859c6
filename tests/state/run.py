"""All rules together, and how a run of them is made, counted and printed."""

from typing import Any

from hypothesis import HealthCheck, Phase, seed, settings
from hypothesis.stateful import run_state_machine_as_test

from tests.state.ending import Ending
from tests.state.machine import COUNTED
from tests.state.people import People
from tests.state.sending import Sending


class Phones(Sending, People, Ending):
    """What can happen to phones, people, network and server."""


def run(examples: int, steps: int, start: int, *more: Any) -> None:
    """So many runs of so many steps from a seed; ``more``: phases of Hypothesis beyond generating. Prints what was
    tried; a failing run prints its steps, and ``SEED`` repeats it."""
    COUNTED.clear()
    chosen = settings(max_examples=examples, stateful_step_count=steps, deadline=None, database=None, print_blob=True,
                      phases=(Phase.generate, *more), suppress_health_check=list(HealthCheck))  # fmt: skip
    run_state_machine_as_test(seed(start)(Phones), settings=chosen)
    said(f"seed {start}")


def said(what: str) -> None:
    print(f"{what}:", ", ".join(f"{name} {COUNTED[name]}" for name in sorted(COUNTED)))
    assert COUNTED["lost"] == COUNTED["unexpected"] == 0
