"""Whether the end of a package's log was cut off: fact ``log_not_cut``.

A log that lost its last day is whole up to there. Only a later word of the same server shows it: the receipts that a
report encloses, or receipts kept elsewhere. Each such word is held to the log: the same receipt in the same place, and
none beyond the log's end. Where the newest of them ends exactly with the log, nothing was cut as of then; where the log
goes on after it, or there is none, nobody can tell.
"""

from collections.abc import Iterable, Sequence
from typing import Any, NamedTuple

from inspect_app.entry.jwk import Jwk
from inspect_app.entry.jws import verify
from inspect_app.entry.refusal import Refused
from inspect_app.entry.statement import parse_statement
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact

NAME = "log_not_cut"


class Receipt(NamedTuple):
    """One receipt of a job's chain: ``n``, ``digest``, ``at`` (the server's time)."""

    job: str
    n: int
    digest: str
    at: str


class Witness(NamedTuple):
    """Receipts of the server found outside the log; ``source``: a file's name, or what else a reader knows it by."""

    source: str
    receipts: Sequence[Receipt]


def receipts_in(lines: Iterable[bytes], server_key: Jwk) -> list[Receipt]:
    """Those that this server signed; whatever else stands there says nothing, and is passed over."""
    found = []
    for line in lines:
        try:
            statement = parse_statement(line)
            verify(statement, server_key)
        except Refused:
            continue
        told: Any = statement.payload
        if statement.kind == "receipt":
            found.append(Receipt(told["job"], told["n"], statement.digest, told["at"]))
    return found


def log_fact(log: Sequence[Receipt], witnesses: Iterable[Witness]) -> Fact:
    """The fact above. ``log``: the package's own receipts. A witness of another job or server says nothing."""
    job = log[-1].job if log else None
    places = {one.n: one.digest for one in log}
    end = max(places, default=-1)
    newest: tuple[int, str, str] | None = None
    count = 0
    for witness in witnesses:
        own = [one for one in witness.receipts if one.job == job or job is None]
        count += bool(own)
        for one in sorted(own, key=lambda one: one.n):
            about = {"source": witness.source, "n": one.n, "at": one.at, "end": end}
            if one.n > end:
                return Fact(NAME, FAILS, "cut", about)
            if places.get(one.n) != one.digest:
                return Fact(NAME, FAILS, "other_log", about)
            if newest is None or one.n > newest[0]:
                newest = (one.n, witness.source, one.at)
    if newest is None:
        return Fact(NAME, UNKNOWN, "no_later", {"count": 0, "end": end})
    n, source, at = newest
    about = {"count": count, "source": source, "n": n, "at": at, "end": end, "beyond": end - n}
    return Fact(NAME, HOLDS, None, about) if n == end else Fact(NAME, UNKNOWN, "goes_on", about)
