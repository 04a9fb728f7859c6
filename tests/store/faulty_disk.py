"""A disk that fails, or dies with the whole process, at its k-th operation."""

import errno
import os

from inspect_app.store.vault_disk import Disk

CRASHED = 77


class FaultyDisk(Disk):
    """``fail_at`` counts the operations from 0; ``fault`` is ``full``, ``broken`` (EIO) or ``crash``.

    A write that fails has already put half of its bytes on the disk, as real ones do.
    """

    def __init__(self, fail_at: int, fault: str, only: str | None = None) -> None:
        self.left = fail_at
        self.fault = fault
        self.only = only
        self.done: list[str] = []

    def _step(self, name: str) -> bool:
        self.done.append(name)
        if self.only not in (None, name):
            return False
        self.left -= 1
        return self.left == -1

    def _strike(self) -> None:
        if self.fault == "crash":
            os._exit(CRASHED)
        number = errno.ENOSPC if self.fault == "full" else errno.EIO
        raise OSError(number, os.strerror(number))

    def write(self, file, data):
        if self._step("write"):
            file.write(data[: len(data) // 2])
            self._strike()
        super().write(file, data)


def _striking(name):
    def operation(self, *arguments):
        if self._step(name):
            self._strike()
        return getattr(Disk, name)(self, *arguments)

    return operation


for _name in ("create", "reopen", "sync", "link", "rename", "remove", "sync_folder"):
    setattr(FaultyDisk, _name, _striking(_name))


def in_a_child(work) -> int:
    """Run ``work()`` in a forked process that may die at any moment; returns its exit code, 0 when it came
    to its end."""
    child = os.fork()
    if child == 0:
        try:
            work()
        except BaseException:
            os._exit(1)
        os._exit(0)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
