"""What is being made, held by who makes it: by one thread of one process of all that serve a store.

The system gives a lock on a file back when its process ends, however it ends, so that nothing has to be guessed from
times: what is held is being made, and what is not held while a row says so was left.
"""

import hashlib
import os
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from threading import Lock
from typing import IO
from uuid import uuid4

try:
    import fcntl
except ImportError:  # Windows: one process serves there, and knows what it holds
    fcntl = None  # type: ignore[assignment]

STRIPES = 64


class Holds:
    """One of 64 holds of a kind for each name. The files are never removed, so that no two processes can hold two files
    of one name."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._own: IO[bytes] | None = None
        self._mine: Counter[str] = Counter()  # what this process holds: where there are no locks it alone can tell
        self._guard = Lock()

    @contextmanager
    def hold(self, kind: str, name: str) -> Iterator[None]:
        """Wait until nobody holds it, and hold it."""
        with self._file(kind, name) as file:
            if fcntl is not None:
                fcntl.flock(file, fcntl.LOCK_EX)
            self._count(file.name, 1)
            try:
                yield  # closing the file gives it back
            finally:
                self._count(file.name, -1)

    def free(self, kind: str, name: str) -> bool:
        """Whether nobody holds it. It may be held again at once."""
        with self._file(kind, name) as file, self._guard:
            return not self._mine[file.name] and _taken(file)

    def serve(self) -> None:
        """Say, for as long as this process lives, that it serves this store."""
        self.folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        new = self.folder / f"{uuid4().hex}.new"
        self._own = open(new, "ab")  # noqa: SIM115
        _taken(self._own)
        self._own.flush()
        new.rename(new.with_name(f"server-{uuid4().hex}.lock"))

    def others_ended(self) -> bool:
        """Whether a server of this store has ended since somebody asked this."""
        ended = False
        for one in self.folder.glob("server-*.lock") if fcntl is not None else ():
            with suppress(FileNotFoundError), open(one, "rb+") as file:
                if self._own is not None and os.path.samestat(os.fstat(file.fileno()), os.fstat(self._own.fileno())):
                    continue
                if _taken(file):
                    one.unlink()
                    ended = True
        return ended

    def _count(self, name: str, more: int) -> None:
        with self._guard:
            self._mine[name] += more

    def _file(self, kind: str, name: str) -> IO[bytes]:
        self.folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        stripe = hashlib.sha256(name.encode("utf-8", "surrogatepass")).digest()[0] % STRIPES
        return open(self.folder / f"{kind}-{stripe:02x}.lock", "ab")


def _taken(file: IO[bytes]) -> bool:
    if fcntl is None:
        return True
    try:
        fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    return True
