"""A browser with a store on disk, killed by its own process id as a phone's system kills it."""

import contextlib
import os
import signal
import time
from pathlib import Path
from typing import Any


class Profile:
    """``start()`` gives a context; ``kill()`` ends the browser; ``start()`` again finds its store."""

    def __init__(self, playwright: Any, executable: str | None, flags: list[str], folder: Path) -> None:
        self.playwright, self.executable, self.flags, self.folder = playwright, executable, flags, folder
        self.context: Any = None

    def start(self) -> Any:
        self.context = self.playwright.chromium.launch_persistent_context(
            str(self.folder), executable_path=self.executable, headless=True, args=self.flags
        )
        return self.context

    def kill(self) -> None:
        for pid in self._browsers():
            os.kill(pid, signal.SIGKILL)
        while self._browsers():
            time.sleep(0.02)
        self.close()

    def close(self) -> None:
        if self.context:
            with contextlib.suppress(Exception):
                self.context.close()
            self.context = None

    def _browsers(self) -> list[int]:
        """The browser's main process: the one started on our folder that is nobody's child process type."""
        found = []
        for place in Path("/proc").glob("[0-9]*/cmdline"):
            with contextlib.suppress(OSError):
                words = place.read_bytes().split(b"\0")
                ours = f"--user-data-dir={self.folder}".encode() in words
                if ours and not any(word.startswith(b"--type=") for word in words):
                    found.append(int(place.parent.name))
        return found
