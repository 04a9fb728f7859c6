"""Read the server's own statements, one after the other, and hold each against its place and its signature."""

from dataclasses import dataclass, field
from typing import Any

from sqlalchemy import select
from sqlalchemy.orm import Session

from inspect_app.entry.jwk import Jwk
from inspect_app.entry.jws import verify
from inspect_app.entry.refusal import Refused
from inspect_app.entry.statement import Statement, parse_statement
from inspect_app.store.rebuild import keep_device
from inspect_app.store.tables import StatementRow
from inspect_app.upkeep.fault import Fault


@dataclass
class Said:
    """What the statements say together. ``receipts`` {seq: payload}; ``devices`` as ``store.rebuild`` makes them;
    ``tickets`` {(job, kid, series, n): seq}; ``last`` and ``head`` of the sequence."""

    receipts: dict[int, dict[str, Any]] = field(default_factory=dict)
    devices: dict[str, dict[str, Any]] = field(default_factory=dict)
    tickets: dict[tuple[Any, ...], int] = field(default_factory=dict)
    last: int = 0
    head: str | None = None
    count: int = 0
    restored: str | None = None
    chains: dict[str, tuple[int, str]] = field(default_factory=dict)


def read_statements(session: Session, jwk: Jwk) -> tuple[Said, list[Fault]]:
    """All of them, and what is wrong with which."""
    said, faults = Said(), list[Fault]()
    for row in session.execute(select(StatementRow).order_by(StatementRow.seq)).yield_per(500).scalars():
        where = f"statement {row.seq}"
        said.count += 1
        try:
            one = parse_statement(row.jws)
            verify(one, jwk)
        except Refused as refused:
            faults.append(Fault("statement_forged", where, {"why": refused.code, "field": refused.field}))
            said.last, said.head = row.seq, row.digest
            continue
        told: dict[str, Any] = one.payload
        place = (told["seq"], told["kind"], told.get("job") if told["kind"] == "receipt" else None, told.get("n")
                 if told["kind"] == "receipt" else None, one.digest)  # fmt: skip
        if place != (row.seq, row.kind, row.job, row.n, row.digest):
            faults.append(Fault("statement_misplaced", where))
        faults += _in_sequence(said, one, row.seq)
        faults += _taken(said, one, row.seq)
        said.last, said.head = row.seq, one.digest
    return said, faults


def _in_sequence(said: Said, one: Statement, seq: int) -> list[Fault]:
    if one.kind == "restoration":
        before = (one.payload["last"], one.payload["head"])
        said.restored = one.digest
        if before != (said.last, said.head):
            return [Fault("restoration_elsewhere", f"statement {seq}", {"last": before[0], "found": said.last})]
    elif seq != said.last + 1:
        return [Fault("statements_missing", f"statement {seq}", {"from": said.last + 1, "to": seq - 1})]
    return []


def _taken(said: Said, one: Statement, seq: int) -> list[Fault]:
    told: dict[str, Any] = one.payload
    if one.kind in ("enrolment", "revocation"):
        keep_device(said.devices, told)
    elif one.kind == "ticket":
        said.tickets[(told["job"], told["kid"], told["series"], told["n"])] = seq
    elif one.kind == "receipt":
        said.receipts[seq] = told
        n, prev = said.chains.get(told["job"], (-1, None))
        said.chains[told["job"]] = (told["n"], one.digest)
        if (told["n"], told["prev"]) != (n + 1, prev):
            return [Fault("receipts_broken", f"statement {seq}", {"job": told["job"], "n": told["n"]})]
        if told.get("restored") != said.restored:
            return [Fault("receipt_hides_restoration", f"statement {seq}", {"job": told["job"], "n": told["n"]})]
    return []
