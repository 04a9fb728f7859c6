"""A browser with a store on disk, killed by its own process id as a phone's system kills it."""

import contextlib
import json
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

    def promise_storage(self, origin: str) -> None:
        """Before its first start: what this browser grants an installed app when it asks for lasting storage."""
        exceptions = {"durable_storage": {f"{origin},*": {"setting": 1}}}
        (self.folder / "Default").mkdir(parents=True)
        said = {"profile": {"content_settings": {"exceptions": exceptions}}}
        (self.folder / "Default" / "Preferences").write_text(json.dumps(said))

    def kill(self) -> None:
        browsers = self._browsers()
        assert browsers, "there was nothing to kill"
        theirs = [*browsers, *_born_of(browsers)]
        for pid in browsers:
            os.kill(pid, signal.SIGKILL)
        # The next browser must not meet the last one's storage process, which ends a moment after its parent.
        while any(_lives(pid) for pid in theirs):
            time.sleep(0.02)
        self.close()

    def kill_page(self, pid: int) -> None:
        """End the process of a page, as a phone short of memory does behind its camera; the browser lives. Those that
        the browser keeps in reserve live too: a page given one that has just died never opens."""
        os.kill(pid, signal.SIGKILL)
        while _lives(pid):
            time.sleep(0.02)

    def pages(self) -> list[int]:
        """The processes that pages and workers run in: their words stand in one piece, with blanks between."""
        found = []
        for pid in _born_of(self._browsers()):
            with contextlib.suppress(OSError):
                if b"--type=renderer" in Path(f"/proc/{pid}/cmdline").read_bytes().replace(b"\0", b" ").split():
                    found.append(pid)
        return found

    def process_of(self, page: Any) -> int:
        """The process that a page runs in: the one that works while the page counts. A new page may have been given a
        process that was there before."""
        before = {pid: _worked(pid) for pid in self.pages()}
        page.evaluate("() => { for (const end = Date.now() + 400; Date.now() < end;); }")
        return max(before, key=lambda pid: _worked(pid) - before[pid])

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


def _stat(pid: int) -> tuple[str, int]:
    """State and parent of a process; ``("", 0)`` for one that is gone."""
    try:
        state, parent = Path(f"/proc/{pid}/stat").read_text().rpartition(") ")[2].split()[:2]
    except OSError:
        return "", 0
    return state, int(parent)


def _lives(pid: int) -> bool:
    return _stat(pid)[0] not in ("", "Z", "X")


def _born_of(parents: list[int]) -> list[int]:
    """All their children and children's children."""
    parent_of = {int(place.name): _stat(int(place.name))[1] for place in Path("/proc").glob("[0-9]*")}
    found, known = [], set(parents)
    while born := [pid for pid, parent in parent_of.items() if parent in known and pid not in known]:
        found += born
        known |= set(born)
    return found


def _worked(pid: int) -> int:
    """Ticks of processor time that a process has had (Linux, proc(5)); 0 where it has ended."""
    with contextlib.suppress(OSError):
        told = Path(f"/proc/{pid}/stat").read_text("ascii", "replace").rpartition(")")[2].split()
        return int(told[11]) + int(told[12])
    return 0
