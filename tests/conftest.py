"""What tests of several folders start from."""

import uuid
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from inspect_app.settings import settings_from
from inspect_app.store.database import db
from tests.begun import migrate_at
from tests.office import Office
from tests.postgresql import NotHere, new_database, running

POSTGRESQL = pytest.param(
    "postgresql", marks=[pytest.mark.postgresql, pytest.mark.xdist_group("postgresql")]
)


class Tells:
    """A long run tells its figures as each test ends: one that is stopped after hours has told what it found."""

    def __init__(self, config: pytest.Config) -> None:
        self.plugins = config.pluginmanager

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if "soak" not in report.keywords or (report.when != "call" and report.passed):
            return
        found = "".join(text for name, text in report.sections if "stdout" in name).strip()
        why = f"\n{report.longreprtext}" if report.failed else ""
        line = f"\n{report.outcome} {report.nodeid} ({report.duration:.0f} s)\n{found}{why}"
        self.plugins.get_plugin("terminalreporter").write_line(line.rstrip(), flush=True)


def pytest_configure(config: pytest.Config) -> None:
    if not hasattr(config, "workerinput"):  # the workers have no terminal of their own
        config.pluginmanager.register(Tells(config))


@pytest.fixture(scope="session")
def postgresql() -> Iterator[str]:
    """The socket folder of a running server; skips, saying why, where there is none."""
    server = running()
    try:
        socket = server.__enter__()
    except NotHere as why:
        pytest.skip(f"NOT RUN on PostgreSQL, only on SQLite: {why}")
    yield socket
    server.__exit__(None, None, None)


@pytest.fixture(scope="session")
def begun_postgresql(postgresql: str) -> str:
    """The name of a database that is migrated, to be copied; nothing else may be connected to it."""
    url = new_database(postgresql, "begun")
    migrate_at(settings_from({"SEAMWALK_DATABASE_URL": url}).database_url)
    return "begun"


@pytest.fixture
def office(tmp_path: Path) -> Iterator[Office]:
    """A fresh server on the embedded database."""
    office = Office(tmp_path / "data")
    yield office
    _close(office)


@pytest.fixture(params=["sqlite", POSTGRESQL])
def any_office(request: Any, tmp_path: Path) -> Iterator[Office]:
    """A fresh server on each database that Seamwalk runs on."""
    url = ""
    if request.param == "postgresql":
        begun = request.getfixturevalue("begun_postgresql")
        url = new_database(request.getfixturevalue("postgresql"), f"test_{uuid.uuid4().hex}", begun)
    office = Office(tmp_path / "data", url)
    yield office
    _close(office)


def _close(office: Office) -> None:
    with office.app.app_context():
        db.engine.dispose()
