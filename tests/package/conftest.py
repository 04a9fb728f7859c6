"""A job that no test changes, made once for a file of tests."""

from collections.abc import Iterator

import pytest

from tests.office import Office
from tests.upkeep.filled import Filled


@pytest.fixture(scope="module")
def still(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Filled]:
    filled = Filled(Office(tmp_path_factory.mktemp("still") / "data"))
    yield filled
    filled.close()
