"""Verify a file from anybody in a process of its own, with an end to its time and its memory.

A PDF of a few hundred bytes can ask for a table of a million million rows, or for a tree whose every branch forks
forty times; a reader that follows it never comes back. What takes too much is an answer too: unreadable.
"""

import logging
from collections.abc import Callable, Sequence
from multiprocessing import get_context
from multiprocessing.connection import Connection
from types import TracebackType
from typing import Any, TypeVar

from inspect_app.commands.again import Beside, verify_again
from inspect_app.evidence.fact import FAILS, Fact
from inspect_app.evidence.verify import READS, Verification

SECONDS = 300.0
REDRAWING = 3600.0  # seconds: every page is drawn and every photo decoded
MEMORY = 4 * 1024**3  # bytes of address space, beside ten times the file
Answer = TypeVar("Answer")


class Bounded:
    """A process that does one piece of work after another, each with ``seconds`` and all with ``memory`` bytes; one
    that takes more ends with the process, and the next begins with another. Where the system knows no such limit the
    memory has none."""

    def __init__(self, memory: int = MEMORY, seconds: float = SECONDS) -> None:
        self.memory, self.seconds = memory, seconds
        self._child: Any = None
        self._to: Connection | None = None

    def __enter__(self) -> "Bounded":
        return self

    def __exit__(self, kind: type[BaseException] | None, value: BaseException | None, at: TracebackType | None) -> None:
        self._end()

    def ask(self, work: Callable[..., Answer], *given: object) -> Answer | None:
        """What ``work(*given)`` gives; None where it took too much, or raised."""
        if self._child is None:
            self._begin()
        assert self._to is not None
        try:
            self._to.send((work, given))
            if self._to.poll(self.seconds):
                answer: Answer | None = self._to.recv()
                return answer
        except (EOFError, OSError):  # it ended without an answer
            pass
        self._end()
        return None

    def _begin(self) -> None:
        context = get_context("spawn")
        self._to, theirs = context.Pipe()
        child = context.Process(target=_serve, args=(theirs, self.memory), daemon=True)
        child.start()
        self._child = child
        theirs.close()

    def _end(self) -> None:
        if self._child is not None and self._to is not None:
            self._child.kill()
            self._child.join()
            self._to.close()
        self._child = None


def verify_bounded(
    data: bytes, trust: Sequence[str], contents: bytes | None, redraw: bool = False, seconds: float | None = None,
    memory: int = MEMORY,
) -> Verification:  # fmt: skip
    """As ``verify_again``; after ``seconds`` or with more than ``memory`` bytes, ``is_pdf`` fails as ``unreadable``."""
    with Bounded(memory + 10 * len(data), seconds or patience(redraw)) as bounded:
        found = bounded.ask(verify_again, data, trust, contents, Beside(redraw))
    return found or too_much(trust, redraw)


def patience(redraw: bool) -> float:
    """Seconds for one report."""
    return REDRAWING if redraw else SECONDS


def too_much(trust: Sequence[str], redraw: bool = False) -> Verification:
    """Of a report that asked for more than there is."""
    first = Fact(READS, FAILS, "unreadable", {"error": "TooMuchWork"})
    return Verification([first, *verify_again(b"", trust, None, Beside(redraw)).facts[1:]], [], None)


def _serve(asked: Connection, memory: int) -> None:
    logging.getLogger("pyhanko").setLevel(logging.CRITICAL)  # what it would log is in the facts
    try:
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (memory, memory))
    except (ImportError, OSError, ValueError):  # a system without such a limit
        pass
    while True:
        try:
            work, given = asked.recv()
        except EOFError:
            return
        try:
            found = work(*given)
        except Exception:  # no memory left, or a file that changed under it: no answer, and the next may have one
            found = None
        asked.send(found)
