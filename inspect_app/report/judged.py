"""Look at a file from elsewhere in a process of its own, with an end to its time: some ask for endless work."""

import logging
from multiprocessing import get_context
from multiprocessing.connection import Connection
from pathlib import Path

from inspect_app.report.countersign import CannotCountersign, Looked, look

SECONDS = 60.0


def judge_apart(path: Path, seconds: float = SECONDS) -> Looked:
    """As ``look``; ``not_a_report`` where it does not come to an end. Raises ``CannotCountersign``."""
    context = get_context("spawn")
    ours, theirs = context.Pipe(duplex=False)
    child = context.Process(target=_answer, args=(theirs, path), daemon=True)
    child.start()
    theirs.close()
    try:
        found = ours.recv() if ours.poll(seconds) else None
    except EOFError:  # it ended without an answer
        found = None
    finally:
        child.kill()
        child.join()
    if not isinstance(found, Looked):
        raise CannotCountersign("not_a_report", path.name)
    return found


def _answer(to: Connection, path: Path) -> None:
    logging.getLogger("pyhanko").setLevel(logging.CRITICAL)  # what it would log is in the answer
    try:
        to.send(look(path))
    except CannotCountersign:
        to.send(None)
