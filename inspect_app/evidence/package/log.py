"""Whether the end of a package's log was cut off: fact ``log_not_cut``.

A log that lost its last day is whole up to there. Only a word of the same server from later shows it: the receipts that
a report encloses, or receipts kept elsewhere. Each such word is held to the log: the same receipt in the same place,
and none beyond the log's end. So is what else a report inside encloses of the server, whose key was ended when, or a
restoration: those hang on no chain, and could be left out unseen. What lies inside the package can show that something
was cut and never that nothing was: whoever cuts a log takes out the reports that tell of it. So the fact holds only by
a word that the reader has from elsewhere, which ends where the log ends, and as of then; without one it is not
determinable.
"""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, NamedTuple

from inspect_app.entry.jwk import Jwk
from inspect_app.entry.refusal import Refused
from inspect_app.evidence import once
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact

NAME = "log_not_cut"


class Receipt(NamedTuple):
    """One receipt of a job's chain: ``n``, ``digest``, ``at`` (the server's time)."""

    job: str
    n: int
    digest: str
    at: str


class Witness(NamedTuple):
    """Receipts of the server found outside the log; ``source``: a file's name, or what else a reader knows it by;
    ``inside``: whether it came with the package, and then the other ``statements`` of the server in it, as payloads."""

    source: str
    receipts: Sequence[Receipt]
    inside: bool = False
    statements: Sequence[Mapping[str, Any]] = ()


def receipts_in(lines: Iterable[bytes], server_key: Jwk) -> list[Receipt]:
    """Those that this server signed; whatever else stands there says nothing, and is passed over."""
    found = []
    for line in lines:
        try:
            statement = once.receipt(line, server_key)
        except Refused:
            continue
        told: Any = statement.payload
        found.append(Receipt(told["job"], told["n"], statement.digest, told["at"]))
    return found


def log_fact(
    log: Sequence[Receipt], witnesses: Iterable[Witness], statements: Iterable[Mapping[str, Any]] = ()
) -> Fact:
    """The fact above. ``log``: the package's own receipts, ``statements``: what else it has of the server. A witness of
    another job or server says nothing."""
    said = {one["seq"]: one for one in statements}
    job = log[-1].job if log else None
    places = {one.n: one.digest for one in log}
    end = max(places, default=-1)
    newest: dict[bool, tuple[int, str, str]] = {}
    for witness in witnesses:
        for one in sorted((one for one in witness.receipts if job in (None, one.job)), key=lambda one: one.n):
            if one.n > end or places.get(one.n) != one.digest:
                about = {"source": witness.source, "n": one.n, "at": one.at, "end": end}
                return Fact(NAME, FAILS, "cut" if one.n > end else "other_log", about)
            if one.n > newest.get(witness.inside, (-1,))[0]:
                newest[witness.inside] = (one.n, witness.source, one.at)
        hidden = next((one for one in witness.statements if said.get(one["seq"]) != one), None)
        if hidden is not None:
            about = {"source": witness.source, "kind": hidden["kind"], "at": hidden["at"], "end": end}
            return Fact(NAME, FAILS, "statement_hidden", about)
    told: tuple[int, str, str] | None = newest.get(False) or newest.get(True)
    if told is None:
        return Fact(NAME, UNKNOWN, "no_later", {"end": end})
    n, source, at = told
    about = {"source": source, "n": n, "at": at, "end": end, "beyond": end - n}
    if False not in newest:
        return Fact(NAME, UNKNOWN, "none_from_elsewhere", about)
    return Fact(NAME, HOLDS, None, about) if n == end else Fact(NAME, UNKNOWN, "goes_on", about)
