"""Small display copies of the photos: a disposable folder, made on first need from the vault.

What makes them is given: ``shrink(path, sizes)`` returns ``{size: JPEG bytes}``, or something with a
``reason`` (a code) when the photo cannot be drawn. Neither the log nor the vault needs this folder: delete it
at will.
"""

import threading
from collections.abc import Callable
from pathlib import Path
from typing import Any
from uuid import uuid4

from inspect_app.store.vault import Vault
from inspect_app.store.vault_disk import Disk

SIZES = (1600, 320)  # longest side in pixels: a report's page, a list
Shrink = Callable[[Path, tuple[int, ...]], Any]


class NoCopy(Exception):
    """That photo cannot be drawn: ``sha256`` and ``reason`` (a code). Its original is held all the same."""

    def __init__(self, sha256: str, reason: str) -> None:
        super().__init__(sha256, reason)
        self.sha256 = sha256
        self.reason = reason


class Copies:
    """The small copies of one vault's photos."""

    def __init__(self, folder: Path, vault: Vault, shrink: Shrink, disk: Disk | None = None) -> None:
        self.folder = folder
        self.vault = vault
        self.shrink = shrink
        self.disk = disk or Disk()
        self._one = threading.Lock()  # one decoding at a time bounds the memory

    def path(self, sha256: str, size: int) -> Path:
        """The JPEG file of that size (one of ``SIZES``), made if it was not there. ``NoCopy`` when it cannot
        be drawn, ``FileNotFoundError`` when the vault does not hold the photo."""
        if size not in SIZES:
            raise RuntimeError(f"no copies of size {size}")
        wanted, refusal = self._file(sha256, f"-{size}.jpg"), self._file(sha256, ".reason")
        if not wanted.is_file() and not refusal.is_file():
            with self._one:
                if not wanted.is_file() and not refusal.is_file():
                    self._make(sha256)
        if refusal.is_file():
            raise NoCopy(sha256, refusal.read_text("ascii"))
        return wanted

    def _make(self, sha256: str) -> None:
        original = self.vault.path(sha256)
        if not original.is_file():
            raise FileNotFoundError(original)
        made = self.shrink(original, SIZES)
        if isinstance(made, dict):
            for size, data in made.items():
                self._write(self._file(sha256, f"-{size}.jpg"), data)
        else:
            self._write(self._file(sha256, ".reason"), made.reason.encode("ascii"))

    def _file(self, sha256: str, ending: str) -> Path:
        return self.folder / sha256[:2] / (self.vault.path(sha256).name + ending)

    def _write(self, target: Path, data: bytes) -> None:
        target.parent.mkdir(parents=True, exist_ok=True)
        temporary = target.with_name(f"{uuid4().hex}.part")
        try:
            with self.disk.create(temporary) as file:
                self.disk.write(file, data)
                self.disk.sync(file)  # or a power cut leaves an empty picture under the right name
            self.disk.rename(temporary, target)
        finally:
            temporary.unlink(missing_ok=True)
