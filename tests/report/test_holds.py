"""What is being made is held, also on a system that knows no locks on files."""

import pytest

from inspect_app.report import holds
from inspect_app.report.holds import Holds


@pytest.fixture(params=["locks", "no locks"])
def held(request, tmp_path, monkeypatch):
    if request.param == "no locks":
        monkeypatch.setattr(holds, "fcntl", None)  # as on Windows
    return Holds(tmp_path)


def test_what_this_process_is_making_is_not_free_until_it_ends_however_it_ends(held):
    assert held.free("report", "one")
    with held.hold("report", "one"):
        assert not held.free("report", "one") and held.free("ask", "one")
    assert held.free("report", "one")
    with pytest.raises(ValueError), held.hold("report", "one"):
        raise ValueError
    assert held.free("report", "one")
