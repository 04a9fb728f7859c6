"""A disk that is struck: the process dies at one of its operations, or there is no more room from one of them on."""

import errno
from typing import Any

from inspect_app.store.vault_disk import Disk

OPERATIONS = ("create", "reopen", "sync", "cut", "link", "rename", "remove", "sync_folder")


class Struck(BaseException):
    """The process ends here. Not an Exception: nothing may answer it."""


class StruckDisk(Disk):
    """The disk and the database's commits, one of which may be the last thing this process does, or fail.
    ``strike``: None, or ``[how, operations left]``, how being ``kill`` or ``full``."""

    def __init__(self) -> None:
        self.strike: list[Any] | None = None
        self.dead = False

    def step(self, *_: object) -> None:
        if self.dead:
            raise Struck
        if self.strike is None:
            return
        how, left = self.strike
        self.strike = [how, left - 1]
        if how == "kill" and left <= 0:
            self.dead = True
            raise Struck
        if how == "full" and left <= 0:
            raise OSError(errno.ENOSPC, "no room")

    def write(self, file: Any, data: bytes) -> None:
        try:
            self.step()
        except BaseException:
            file.write(data[: len(data) // 2])  # as real ones do: a part is there
            raise
        super().write(file, data)


def _stepping(name: str) -> Any:
    def operation(self: StruckDisk, *arguments: Any) -> Any:
        # What is given back needs no room: a full disk still lets go.
        if name not in ("cut", "remove") or self.dead or (self.strike and self.strike[0] == "kill"):
            self.step()
        return getattr(Disk, name)(self, *arguments)

    return operation


for _name in OPERATIONS:
    setattr(StruckDisk, _name, _stepping(_name))
