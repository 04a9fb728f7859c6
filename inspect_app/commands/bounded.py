"""Verify a file from anybody in a process of its own, with an end to its time and its memory.

A PDF of a few hundred bytes can ask for a table of a million million rows, or for a tree whose every branch forks
forty times; a reader that follows it never comes back. What takes too much is an answer too: unreadable.
"""

import logging
from multiprocessing import get_context
from multiprocessing.connection import Connection

from inspect_app.evidence.fact import FAILS, Fact
from inspect_app.evidence.verify import Verification, verify

SECONDS = 300.0
MEMORY = 4 * 1024**3  # bytes of address space, beside ten times the file


def verify_bounded(
    data: bytes, trust: str | None, contents: bytes | None, seconds: float = SECONDS, memory: int = MEMORY
) -> Verification:
    """As ``verify``; after ``seconds``, or with more than ``memory`` bytes, ``is_pdf`` fails as ``unreadable``. Where
    the system knows no such limit the memory has none."""
    context = get_context("spawn")
    ours, theirs = context.Pipe(duplex=False)
    child = context.Process(target=_answer, args=(theirs, memory + 10 * len(data), data, trust, contents), daemon=True)
    child.start()
    theirs.close()
    try:
        found = ours.recv() if ours.poll(seconds) else None
    except EOFError:  # it ended without an answer
        found = None
    finally:
        child.kill()
        child.join()
    return found or Verification(
        [Fact("is_pdf", FAILS, "unreadable", {"error": "TooMuchWork"}), *verify(b"", trust).facts[1:]], [], None
    )


def _answer(to: Connection, memory: int, data: bytes, trust: str | None, contents: bytes | None) -> None:
    logging.getLogger("pyhanko").setLevel(logging.CRITICAL)  # what it would log is in the facts
    try:
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (memory, memory))
    except (ImportError, OSError, ValueError):  # a system without such a limit
        pass
    try:
        found = verify(data, trust, contents)
    except MemoryError:
        found = None
    to.send(found)
