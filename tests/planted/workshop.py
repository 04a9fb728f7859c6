"""A copy of the app in which one file at a time is spoiled and one test is run by a process of its own."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

from tests.planted.bug import ROOT, Bug

PARTS = ("inspect_app", "static", "tests", "checklists", "pyproject.toml", "package.json", "package-lock.json")
LEFT_OUT = shutil.ignore_patterns("__pycache__", "*.pyc")
PASSED, FAILED = 0, 1
LONGEST = 300  # seconds; a test that hangs by the bug has caught it too


class Workshop:
    """``folder`` holds the copy; ``sound``: the tests found to pass there without any bug."""

    def __init__(self, folder: Path) -> None:
        self.folder, self.sound = folder, set[str]()
        folder.mkdir()
        for part in PARTS:
            source, target = ROOT / part, folder / part
            shutil.copytree(source, target, ignore=LEFT_OUT) if source.is_dir() else shutil.copy2(source, target)
        (folder / "node_modules").symlink_to(ROOT / "node_modules", target_is_directory=True)
        (folder / ".venv").symlink_to(ROOT / ".venv", target_is_directory=True)

    def ends(self, test: str) -> tuple[int, str]:
        """The exit code of pytest for this test alone, and what it printed last."""
        words = [sys.executable, "-m", "pytest", "-q", "-x", "-m", "", "-p", "no:cacheprovider", test]
        surroundings = {name: value for name, value in os.environ.items() if not name.startswith("PYTEST_")}
        try:
            done = subprocess.run(
                words, cwd=self.folder, env=surroundings, capture_output=True, text=True, timeout=LONGEST
            )
        except subprocess.TimeoutExpired:
            return FAILED, f"no end within {LONGEST} s"
        return done.returncode, done.stdout[-3000:] + done.stderr[-1000:]

    def catches(self, bug: Bug) -> tuple[bool, str]:
        """Whether the bug's test fails with it; it must have passed without it, else its failure says nothing."""
        if bug.caught_by not in self.sound:
            code, told = self.ends(bug.caught_by)
            if code != PASSED:
                return False, f"{bug.caught_by} does not pass without a bug:\n{told}"
            self.sound.add(bug.caught_by)
        file = self.folder / bug.file
        sound = file.read_text("utf-8")
        file.write_text(bug.planted(sound), "utf-8")
        try:
            code, told = self.ends(bug.caught_by)
        finally:
            file.write_text(sound, "utf-8")
        return code == FAILED, told
