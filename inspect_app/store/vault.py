"""The photo vault: original bytes under their own SHA-256, never changed and never overwritten.

A photo of hash ``abcdef…`` (64 lower-case hexadecimal digits, what ``sha256sum`` prints) lies at
``ab/abcdef…``, read-only. It gets there by: whole bytes in ``incoming/`` → fsync → rename → fsync of the
folders; when ``put`` or ``adopt`` returns, a power cut cannot take it away, and only then may a receipt be
given. What a crash left in ``incoming/`` is swept at the start of a server.
A held file that no longer has its hash moves to ``damaged/`` when good bytes arrive: nothing is deleted.
"""

import hashlib
import re
import time
from collections.abc import Iterable, Iterator
from pathlib import Path
from uuid import uuid4

from inspect_app.store.vault_disk import Disk

NAME = re.compile(r"[0-9a-f]{64}")
BLOCK = 1 << 20


class WrongHash(Exception):
    """The bytes are not what their name says: ``declared`` and ``found``, hexadecimal SHA-256."""

    def __init__(self, declared: str, found: str) -> None:
        super().__init__(declared, found)
        self.declared = declared
        self.found = found


class Vault:
    """One folder of photos; safe for several threads and processes at once."""

    def __init__(self, folder: Path, disk: Disk | None = None) -> None:
        self.folder = folder
        self.disk = disk or Disk()
        self.incoming = folder / "incoming"
        self.incoming.mkdir(parents=True, exist_ok=True)

    def path(self, sha256: str) -> Path:
        """Where that photo lies, held or not. ``RuntimeError`` for anything but a hash: no name a caller
        was given by a stranger can lead out of the vault."""
        if not NAME.fullmatch(sha256):
            raise RuntimeError(f"not the name of a photo: {sha256!r}")
        return self.folder / sha256[:2] / sha256

    def holds(self, sha256: str) -> bool:
        """Whether there is a file of that name; its content is checked by ``read`` and ``found``."""
        return self.path(sha256).is_file()

    def read(self, sha256: str, verify: bool = False) -> bytes:
        """The original bytes. ``FileNotFoundError`` when not held; ``WrongHash`` when ``verify`` finds that
        the disk no longer gives what was stored."""
        data = self.path(sha256).read_bytes()
        if verify and (found := hashlib.sha256(data).hexdigest()) != sha256:
            raise WrongHash(sha256, found)
        return data

    def found(self, sha256: str) -> str:
        """The hash that the held file has now, block by block."""
        return hash_of(blocks(self.path(sha256)))

    def names(self) -> Iterator[str]:
        """Every photo held, in order of its hash."""
        for folder in sorted(self.folder.glob("[0-9a-f][0-9a-f]")):
            yield from sorted(file.name for file in folder.iterdir() if NAME.fullmatch(file.name))

    def put(self, chunks: Iterable[bytes], sha256: str) -> None:
        """Store bytes under their hash; again and again is the same as once. ``WrongHash`` when they have
        another one (nothing is kept then), ``OSError`` when the disk is full or failing."""
        self.path(sha256)
        temporary = self.incoming / uuid4().hex
        hasher = hashlib.sha256()
        try:
            with self.disk.create(temporary) as file:
                for chunk in chunks:
                    hasher.update(chunk)
                    self.disk.write(file, chunk)
                if hasher.hexdigest() != sha256:
                    raise WrongHash(sha256, hasher.hexdigest())
                self.disk.sync(file)
            self._place(temporary, sha256)
        finally:
            temporary.unlink(missing_ok=True)

    def adopt(self, source: Path, sha256: str) -> None:
        """Store a whole file that lies on the disk already, without copying where the file system can link.
        ``source`` keeps its name: the caller removes it once the receipt is safe, and writes to it no more.
        Raises as ``put``."""
        self.path(sha256)
        if (found := hash_of(blocks(source))) != sha256:
            raise WrongHash(sha256, found)
        temporary = self.incoming / uuid4().hex
        try:
            self.disk.link(source, temporary)
        except OSError:  # another disk, or one that cannot link: a copy does it
            return self.put(blocks(source), sha256)
        try:
            with open(temporary, "rb") as file:
                self.disk.sync(file)
            self._place(temporary, sha256)
        finally:
            temporary.unlink(missing_ok=True)

    def sweep(self, untouched: float = 3600.0) -> int:
        """Remove what a crash left half written and nobody touched for so many seconds, because a command may
        start while a server is at work on the same folder; returns how many."""
        before = time.time() - untouched
        # The time of the last change of any kind: a link keeps the old time of the bytes it names.
        left = [file for file in self.incoming.iterdir() if file.is_file() and file.stat().st_ctime <= before]
        for file in left:
            file.unlink(missing_ok=True)
        return len(left)

    def _place(self, temporary: Path, sha256: str) -> None:
        target = self.path(sha256)
        target.parent.mkdir(exist_ok=True)
        if target.is_file() and self.found(sha256) != sha256:
            aside = self.folder / "damaged"
            aside.mkdir(exist_ok=True)
            self.disk.rename(target, aside / f"{sha256}-{uuid4().hex}")
            self.disk.sync_folder(aside)
        if not target.is_file():
            temporary.chmod(0o444)
            self.disk.rename(temporary, target)
        # Also when it was there: whoever put it may have died before this.
        self.disk.sync_folder(target.parent)
        self.disk.sync_folder(self.folder)


def blocks(path: Path) -> Iterator[bytes]:
    """A file's bytes, a mebibyte at a time."""
    with open(path, "rb") as file:
        while block := file.read(BLOCK):
            yield block


def hash_of(chunks: Iterable[bytes]) -> str:
    """SHA-256 in lower-case hexadecimal."""
    hasher = hashlib.sha256()
    for chunk in chunks:
        hasher.update(chunk)
    return hasher.hexdigest()
