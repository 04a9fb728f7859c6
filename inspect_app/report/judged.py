"""Look at what comes from elsewhere in a process of its own, with an end to its time: some ask for endless work, and
while one is opened nothing else in its process goes on."""

import logging
from collections.abc import Callable
from multiprocessing import get_context
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any

from inspect_app.report.countersign import CannotCountersign, Looked, look
from inspect_app.report.seal_key import SealKey, UnreadableKey, key_in

SECONDS = 20.0  # a report of 500 photos takes a second or two
OPENS = 20.0  # seconds for a PKCS#12 file, which says itself how often its passphrase is to be hashed


def judge_apart(path: Path, seconds: float = SECONDS) -> Looked:
    """As ``look``; ``takes_long`` where it does not come to an end, ``not_a_report`` where it ends without an answer.
    Raises ``CannotCountersign``."""
    try:
        found = _asked(seconds, look, path)
    except TimeoutError:
        raise CannotCountersign("takes_long", path.name) from None
    if not isinstance(found, Looked):
        raise CannotCountersign("not_a_report", path.name)
    return found


def key_apart(data: bytes, passphrase: str, seconds: float = OPENS) -> SealKey:
    """As ``key_in``; ``not_pkcs12`` where it does not come to an end. Raises ``UnreadableKey``."""
    try:
        found = _asked(seconds, key_in, data, passphrase)
    except TimeoutError:
        found = None
    if not isinstance(found, SealKey):
        raise UnreadableKey(None, found.reason if isinstance(found, UnreadableKey) else "not_pkcs12")
    return found


def _asked(seconds: float, work: Callable[..., Any], *given: object) -> Any:
    """What ``work(*given)`` gives, or raises of our own; None where it ends without an answer. Raises
    ``TimeoutError``."""
    context = get_context("spawn")
    ours, theirs = context.Pipe(duplex=False)
    child = context.Process(target=_answer, args=(theirs, work, given), daemon=True)
    child.start()
    theirs.close()
    try:
        if not ours.poll(seconds):
            raise TimeoutError
        return ours.recv()
    except EOFError:  # it ended without an answer
        return None
    finally:
        child.kill()
        child.join()
        ours.close()


def _answer(to: Connection, work: Callable[..., Any], given: tuple[object, ...]) -> None:
    logging.getLogger("pyhanko").setLevel(logging.CRITICAL)  # what it would log is in the answer
    try:
        to.send(work(*given))
    except (CannotCountersign, UnreadableKey) as reason:
        to.send(reason)
