"""The countersignatures of a job's reports: put on, stated by the server, told.

The file is first replaced by itself with one signature more, in one step, and then stated. Whatever comes between the
two, the file is whole, and what it holds and nobody stated is stated the next time (``settle``): a countersignature is
never lost for a power cut, nor stated without being there.
"""

import hashlib
import shutil
import threading
from collections import defaultdict
from collections.abc import Callable
from pathlib import Path
from typing import Any, NamedTuple
from uuid import uuid4

from inspect_app.clock import Clock
from inspect_app.entry.statement import countersignature, parse_statement
from inspect_app.report.countersign import (
    LONGEST,
    CannotCountersign,
    Hand,
    Looked,
    Means,
    countersign_file,
    look,
    sound,
)
from inspect_app.report.seal_key import SealKey, key_in
from inspect_app.report.shelf import Shelf, Shelved, synced
from inspect_app.store.log_reading import LogReading
from inspect_app.store.statements import Statements

BLOCK = 1024 * 1024
LONGEST_NAME = 200  # characters
NOBODY = "server"  # who brought a countersignature that was found without its statement


class Signing(NamedTuple):
    """Of one report: ``number``, the plain form of its ``signatures`` (the seal first, each with ``by`` and ``at`` of
    its statement), how many boxes are ``free``, and its ``size`` in bytes."""

    number: int
    signatures: list[dict[str, Any]]
    free: int
    size: int


class Countersigned:
    """``judge(path)`` looks at a file from elsewhere as ``look`` does, ``opens(bytes, passphrase)`` takes the key out
    of one as ``key_in`` does, each with an end to its time. All calls need an app context."""

    def __init__(self, shelf: Shelf, statements: Statements, reading: LogReading, means: Means, clock: Clock,
                 judge: Callable[[Path], Looked] = look,
                 opens: Callable[[bytes, str], SealKey] = key_in) -> None:  # fmt: skip
        self.shelf, self.statements, self.reading = shelf, statements, reading
        self.means, self.clock, self.judge, self.opens = means, clock, judge, opens
        self._locks: dict[tuple[str, int], threading.Lock] = defaultdict(threading.Lock)

    def told(self, job: str, number: int) -> Signing | None:
        """None where there is no such report. Raises ``CannotCountersign`` for a damaged one."""
        shelved = self._shelved(job, number)
        return None if shelved is None else self._signing(job, shelved)

    def sign(self, job: str, number: int, key: SealKey, by: str, words: str | None = None) -> Signing | None:
        """Put one on by a key that was handed over for this alone; ``by``: the person who brought it. None where there
        is no such report. Raises ``CannotCountersign`` and ``OSError``; then the report is as it was."""
        hand = Hand(key, self.clock(), (words or "").strip()[:LONGEST] or None)
        return self._another(job, number, by, lambda pdf, new: countersign_file(pdf, new, hand, self.means))

    def take(self, job: str, number: int, signed: Path, by: str) -> Signing | None:
        """Take a copy of the report that was countersigned elsewhere, by whatever program: it begins with every byte
        of the report as it stands here, and verifies. As ``sign``; ``other_file`` where it is not that report. It is
        looked at before its turn comes: whoever signs the same report waits for no strange file."""
        shelved = self._shelved(job, number)
        if shelved is None or shelved.pdf is None:
            return None
        if not _goes_on(shelved.pdf, signed):
            raise CannotCountersign("other_file", str(number))
        after = self.judge(signed)
        sound(after, str(number))

        def taken(pdf: Path, new: Path) -> None:
            if not _goes_on(pdf, signed):
                raise CannotCountersign("other_file", str(number))
            before = look(pdf).signatures
            known = [one.fingerprint for one in before]
            if [one.fingerprint for one in after.signatures[: len(known)]] != known:
                raise CannotCountersign("other_file", str(number))
            for one in after.signatures[len(known) :]:
                if one.fingerprint in known:
                    raise CannotCountersign("same_key", one.name or "")
                known.append(one.fingerprint)
            shutil.copyfile(signed, new)

        return self._another(job, number, by, taken)

    def settle(self, job: str, shelved: Shelved, by: str = NOBODY) -> None:
        """State each countersignature that the report holds and nobody stated."""
        assert shelved.pdf is not None
        looked = look(shelved.pdf)
        stated = {payload["n"] for payload in self._stated(job, shelved.number)}
        new = [n for n in range(1, len(looked.signatures)) if n not in stated]
        if not new:
            return
        prints = _prints(shelved.pdf, looked.ends)
        with self.statements.transactions.writing():
            for n in new:
                one = looked.signatures[n]

                def make(seq: int, at: str, n: int = n, print_: str = str(one.fingerprint),
                         name: str = _kept(one.name or "")) -> dict[str, object]:  # fmt: skip
                    return countersignature(
                        seq, at, job, shelved.number, n, prints[n - 1], prints[n], print_, name, by
                    )

                self.statements.issue(make)
            self.shelf.note_print(job, shelved.number, prints[-1])

    def _another(self, job: str, number: int, by: str, make: Callable[[Path, Path], object]) -> Signing | None:
        with self._locks[job, number]:
            shelved = self._shelved(job, number)
            if shelved is None:
                return None
            self.settle(job, shelved)
            while not self._replaced(shelved, make):  # another server of this store was quicker: sign what it left
                pass
            self.settle(job, shelved, by)
            return self._signing(job, shelved)

    def _replaced(self, shelved: Shelved, make: Callable[[Path, Path], object]) -> bool:
        """Whether the report became what ``make(report, new file)`` wrote; not where it had changed meanwhile."""
        assert shelved.pdf is not None
        new, before = shelved.pdf.with_name(f"{uuid4().hex}.part"), shelved.pdf.stat().st_size
        try:
            make(shelved.pdf, new)
            synced(new)
            with self.statements.transactions.writing():  # the lock of all servers of this store
                if shelved.pdf.stat().st_size != before:
                    return False
                self.shelf.signed_again(shelved, new)
                return True
        finally:
            new.unlink(missing_ok=True)

    def _shelved(self, job: str, number: int) -> Shelved | None:
        shelved = self.shelf.numbered(job, number)
        return shelved if shelved and shelved.pdf and shelved.pdf.is_file() else None

    def _signing(self, job: str, shelved: Shelved) -> Signing:
        assert shelved.pdf is not None
        looked = look(shelved.pdf)
        stated = {payload["n"]: payload for payload in self._stated(job, shelved.number)}
        told = [one.plain() | {"by": stated.get(n, {}).get("by"), "at": stated.get(n, {}).get("at")}
                for n, one in enumerate(looked.signatures)]  # fmt: skip
        return Signing(shelved.number, told, len(looked.boxes), shelved.pdf.stat().st_size)

    def _stated(self, job: str, number: int) -> list[dict[str, Any]]:
        said = [parse_statement(one).payload for one in self.reading.statements(("countersignature",))]
        return [dict(one) for one in said if one["job"] == job and one["number"] == number]


def _kept(name: str) -> str:
    """A certificate's name as a statement keeps it: what it cannot hold is a visible replacement, since a signature
    that cannot be stated would hold up every one after it."""
    plain = name.replace("\0", "\ufffd").encode("utf-16", "surrogatepass").decode("utf-16", "replace")
    return plain[:LONGEST_NAME]


def _goes_on(pdf: Path, signed: Path) -> bool:
    """Whether ``signed`` is ``pdf`` with something after it, to the byte."""
    if signed.stat().st_size <= pdf.stat().st_size:
        return False
    with open(pdf, "rb") as here, open(signed, "rb") as there:
        while block := here.read(BLOCK):
            if there.read(len(block)) != block:
                return False
    return True


def _prints(path: Path, ends: list[int]) -> list[str]:
    """SHA-256 of the file up to each of these ends, which ascend."""
    digest, found, at = hashlib.sha256(), [], 0
    with open(path, "rb") as file:
        for end in ends:
            while at < end:
                block = file.read(min(BLOCK, end - at))
                if not block:
                    break
                digest.update(block)
                at += len(block)
            found.append(digest.copy().hexdigest())
    return found
