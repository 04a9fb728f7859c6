"""Locks for uploads, held only while the disk is written or read, never while a network is waited for."""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

try:
    import fcntl
except ImportError:  # Windows: one process serves there, a thread lock is enough
    fcntl = None  # type: ignore[assignment]

STRIPES = 16


class Locks:
    """One of 16 locks for each upload id, between threads and between processes.

    The lock files are never removed, so that two processes can never hold two files of the same name.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._threads = [threading.Lock() for _ in range(STRIPES)]

    @contextmanager
    def of(self, upload: str) -> Iterator[None]:
        """Hold the lock of the upload with that id (hexadecimal)."""
        stripe = int(upload[0], 16)
        with self._threads[stripe]:
            if fcntl is None:
                yield
                return
            with open(self.folder / f"lock-{stripe:x}", "ab") as file:
                fcntl.flock(file, fcntl.LOCK_EX)
                yield  # closing the file gives the lock back
