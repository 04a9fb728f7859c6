"""What the store holds of a job at one moment, as far as a package needs it."""

from typing import Any, NamedTuple

from inspect_app.entry.statement import Statement, parse_statement
from inspect_app.evidence.enclosure import Signed
from inspect_app.package.named import Named, named
from inspect_app.record.fold import fold
from inspect_app.report.source import concerns
from inspect_app.store.log_reading import Holding, LogReading
from inspect_app.store.people_map import people_of
from inspect_app.store.records import folded
from inspect_app.store.server_key import ServerKey
from inspect_app.store.transactions import Transactions

KINDS = ("enrolment", "revocation", "restoration", "countersignature")


class Snapshot(NamedTuple):
    """``job``: its newest body, {} before the first; ``signed``: the tokens as a report encloses them; ``head``: the
    newest receipt, or None; ``holdings``: the photos that have one."""

    job: dict[str, Any]
    signed: Signed
    head: Statement | None
    named: Named
    holdings: dict[str, Holding]


def snapshot(transactions: Transactions, reading: LogReading, key: ServerKey, job: str) -> Snapshot:
    """Needs an app context."""
    with transactions.reading():
        received = reading.job_entries(job)
        of_job = reading.job_entries(job, "job")
        receipts = reading.receipts(job)
        statements = reading.statements(KINDS)
        people = people_of(transactions, job)
        holdings = reading.photos(job)
    what = named(one.token for one in received)
    said = [one for one in statements if concerns(one, job, what.kids)]
    signed = Signed([one.token for one in received], receipts, said, key.jwk)
    head = parse_statement(receipts[-1]) if receipts else None
    return Snapshot(_job([one.token for one in of_job], people), signed, head, what, holdings)


def _job(tokens: list[str], people: dict[str, Any]) -> dict[str, Any]:
    job: dict[str, Any] | None = fold([folded(one) for one in tokens], people)["job"]
    return job or {}
