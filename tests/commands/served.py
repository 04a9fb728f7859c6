"""``seamwalk serve`` as a process of its own, that can be killed."""

import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


@contextmanager
def served(data: Path, database_url: str = "") -> Iterator[tuple[str, subprocess.Popen]]:
    """``(address, process)`` of a server on any free port; ended with the block if it still runs."""
    environment = {**os.environ, "SEAMWALK_DATA": str(data), "SEAMWALK_DATABASE_URL": database_url}
    words = [sys.executable, "-m", "inspect_app.command_line", "serve", "--port", "0"]
    with open(data.parent / "serve.log", "ab") as log:
        process = subprocess.Popen(words, env=environment, stdout=subprocess.PIPE, stderr=log, text=True)
    try:
        line = process.stdout.readline()
        assert line.startswith("Seamwalk: http://"), (data.parent / "serve.log").read_text()[-2000:]
        yield line.split()[1], process
    finally:
        process.kill()
        process.wait(10)
        process.stdout.close()
