"""Make every derived table again from the log: keys and tickets from the statements, the entries' index columns
from the tokens, and each job's record. Running it twice, or never, gives the same tables."""

import json
from typing import NamedTuple

from sqlalchemy import delete, insert, select, update

from inspect_app.entry.format import parse
from inspect_app.entry.statement import parse_statement
from inspect_app.store.records import Records
from inspect_app.store.tables import DerivedJob, DeviceRow, EntryRow, StatementRow, TicketRow
from inspect_app.store.transactions import Transactions


class Rebuilt(NamedTuple):
    """How many were made again."""

    entries: int
    devices: int
    jobs: int
    tickets: int


def rebuild(transactions: Transactions, records: Records) -> Rebuilt:
    """Drop and recreate, in one transaction: nobody ever sees it half done."""
    with transactions.writing() as session:
        entries = 0
        for seq, token in session.execute(select(EntryRow.seq, EntryRow.token)).all():
            entry = parse(token)
            columns = {"digest": entry.digest, "job": entry.job, "kind": entry.kind, "kid": entry.kid}
            session.execute(
                update(EntryRow)
                .where(EntryRow.seq == seq)
                .values(**columns, subject=str(entry.payload["subject"]))
            )
            entries += 1
        devices, tickets = rebuild_devices(transactions), rebuild_tickets(transactions)
        session.execute(delete(DerivedJob))
        jobs = sorted(session.scalars(select(EntryRow.job).distinct()))
        for job in jobs:
            records.refresh(job)
    return Rebuilt(entries, devices, len(jobs), tickets)


def rebuild_devices(transactions: Transactions) -> int:
    """The keys, from the enrolment and revocation statements alone; returns how many."""
    devices: dict[str, dict[str, object]] = {}
    with transactions.writing() as session:
        asked = select(StatementRow.jws).where(StatementRow.kind.in_(("enrolment", "revocation")))
        for jws in session.scalars(asked.order_by(StatementRow.seq)).all():
            payload = parse_statement(jws).payload
            keep_device(devices, payload)
        session.execute(delete(DeviceRow))
        if devices:
            session.execute(insert(DeviceRow), list(devices.values()))
    return len(devices)


def rebuild_tickets(transactions: Transactions) -> int:
    """The tickets, from their statements alone; returns how many."""
    with transactions.writing() as session:
        asked = select(StatementRow.jws).where(StatementRow.kind == "ticket").order_by(StatementRow.seq)
        said = [parse_statement(jws).payload for jws in session.scalars(asked).all()]
        session.execute(delete(TicketRow))
        if said:
            columns = ("job", "kid", "series", "n", "seq")
            session.execute(insert(TicketRow), [{name: one[name] for name in columns} for one in said])
    return len(said)


def keep_device(devices: dict[str, dict[str, object]], payload: dict[str, object]) -> None:
    """What one statement says about a key, put into ``devices`` {kid: columns}."""
    kid = str(payload["kid"])
    if payload["kind"] == "revocation":
        if kid in devices and devices[kid]["revoked"] is None:
            devices[kid]["revoked"] = payload["seq"]
        return
    person = payload["person"]
    assert isinstance(person, dict)
    devices[kid] = {
        "kid": kid, "person": person["id"], "jwk": json.dumps(payload["jwk"], sort_keys=True),
        "device": payload["device"], "enrolled": payload["seq"], "revoked": None,
    }  # fmt: skip
