"""A disk that loses power: what was not synced vanishes, new and changed names without a sync of their folder too.

POSIX promises no more than this. Between the two extremes anything may happen: with ``chance`` each unsynced change
survives or not by itself, and unsynced bytes may be torn.
"""

import os
from pathlib import Path
from random import Random
from typing import Any

from inspect_app.store.vault_disk import Disk


class PowerCut(BaseException):
    """Nothing is done any more, not even what an ``except`` would do."""


class PowerDisk(Disk):
    """Everything below ``root`` is on the disk at the start; the power goes before the ``at``-th call."""

    def __init__(self, root: Path, at: int = -1) -> None:
        self.root, self.at, self.calls = root, at, 0
        self.bytes: dict[int, bytes] = {}
        self.names: dict[Path, dict[str, int]] = {}
        for folder, folders, files in os.walk(root):
            self._note(Path(folder))
            for name in files:
                self.bytes[(Path(folder) / name).stat().st_ino] = (Path(folder) / name).read_bytes()
            assert folders is not None

    def _note(self, folder: Path) -> None:
        self.names[folder] = {entry.name: entry.inode() for entry in os.scandir(folder)}

    def _step(self) -> None:
        if self.calls == self.at or self.at == -2:
            self.at = -2  # and nothing after it
            raise PowerCut
        self.calls += 1

    def sync(self, file: Any) -> None:
        self._step()
        self.bytes[os.fstat(file.fileno()).st_ino] = Path(file.name).read_bytes()

    def sync_folder(self, folder: Path) -> None:
        self._step()
        self._note(folder)

    def create(self, path: Path) -> Any:
        self._step()
        file = super().create(path)
        self.bytes.pop(os.fstat(file.fileno()).st_ino, None)  # a number that another file had
        return file

    def after(self, target: Path, chance: Random | None = None) -> None:
        """What is found when the power is back, laid out in ``target``."""
        self._lay(self.root, target, chance)

    def _lay(self, folder: Path, target: Path, chance: Random | None) -> None:
        target.mkdir(parents=True, exist_ok=True)
        held = dict(self.names.get(folder, {}))
        now = {entry.name: entry.inode() for entry in os.scandir(folder)} if folder.is_dir() else {}
        for name in sorted(held.keys() | now.keys()) if chance else []:
            if chance and chance.random() < 0.5:
                held.pop(name, None)
                held |= {name: now[name]} if name in now else {}
        for name, inode in held.items():
            place = folder / name
            if place.is_dir():
                self._lay(place, target / name, chance)
            else:
                (target / name).write_bytes(self._found(place, inode, chance))

    def _found(self, place: Path, inode: int, chance: Random | None) -> bytes:
        synced = self.bytes.get(inode, b"")
        current = place.read_bytes() if place.is_file() and place.stat().st_ino == inode else synced
        if chance is None or current == synced:
            return synced
        kind = chance.randrange(3)
        torn = current[: chance.randrange(len(current) + 1)]
        return (synced, current, torn if len(torn) > len(synced) else synced)[kind]


def _stepping(name: str) -> Any:
    def operation(self: PowerDisk, *arguments: Any) -> Any:
        self._step()
        return getattr(Disk, name)(self, *arguments)

    return operation


for _name in ("reopen", "write", "cut", "link", "rename", "remove"):
    setattr(PowerDisk, _name, _stepping(_name))
