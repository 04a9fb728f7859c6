"""Whatever happens to phones, people, network and server, in any order: nothing saved is lost, nothing appears."""

import pytest
from hypothesis import Phase

from tests.seed import SEED
from tests.state.machine import COUNTED
from tests.state.run import run


def test_nothing_saved_is_lost_and_nothing_appears():
    run(6, 40, SEED)
    assert COUNTED["server killed"] and COUNTED["answers lost"] and COUNTED["requests"]


@pytest.mark.soak
@pytest.mark.parametrize("start", range(8))
def test_nothing_saved_is_lost_in_thousands_of_steps(start):
    run(120, 60, SEED + start, Phase.shrink)
