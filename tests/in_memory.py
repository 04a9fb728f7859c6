"""The tests' folders in memory: ``pytest -p tests.in_memory``, as ``make test`` runs them.

Every commit of a store waits for the disk, thousands of times in a run, and what the disk does then no test here can
see: those about power cuts and full disks bring a disk of their own. Where there is no such room (a container gives
64 MB), or where TMPDIR says where to be, nothing changes. To look at what a test left: ``TMPDIR=/tmp make test``.
"""

import os
import shutil
import tempfile
from pathlib import Path

import pytest

MEMORY, ROOM = Path("/dev/shm"), 8 << 30  # bytes: one or two for a run, four that Chromium wants


def pytest_configure(config: pytest.Config) -> None:
    worker = hasattr(config, "workerinput")  # it has the controller's environment
    if worker or "TMPDIR" in os.environ or not MEMORY.is_dir() or shutil.disk_usage(MEMORY).free < ROOM:
        return
    folder = tempfile.mkdtemp(prefix="seamwalk-tests-", dir=MEMORY)
    os.chmod(folder, 0o755)  # PostgreSQL runs as another user, in a folder of its own in here
    os.environ["TMPDIR"], tempfile.tempdir = folder, None
    config.add_cleanup(lambda: shutil.rmtree(folder, ignore_errors=True))
