"""Who takes part in a job, as the fold wants it: ``{person id: {"name", "role", "kids": [...]}}``.

Revoked keys are listed too: what they signed before still stands under its author's name, and what comes
later never enters the log.
"""

import hashlib
import json
from typing import Any

from sqlalchemy import select

from inspect_app.store.tables import DeviceRow, MembershipRow, PersonRow
from inspect_app.store.transactions import Transactions

People = dict[str, dict[str, Any]]


def people_of(transactions: Transactions, job: str) -> People:
    """The members of a job, in order of their ids; ``kids`` in order too."""
    asked = (
        select(PersonRow.id, PersonRow.name, PersonRow.role, DeviceRow.kid)
        .join(MembershipRow, MembershipRow.person == PersonRow.id)
        .outerjoin(DeviceRow, DeviceRow.person == PersonRow.id)
        .where(MembershipRow.job == job)
    )
    people: People = {}
    with transactions.reading() as session:
        rows = session.execute(asked).all()
    # Sorted here: a database's own order of text depends on its locale.
    for row in sorted(rows, key=lambda row: (row.id, row.kid or "")):
        person = people.setdefault(row.id, {"name": row.name, "role": row.role, "kids": []})
        if row.kid is not None:
            person["kids"].append(row.kid)
    return people


def people_digest(people: People) -> str:
    """SHA-256 in hexadecimal of what ``people_of`` gave: tells whether a record was folded with them."""
    return hashlib.sha256(json.dumps(people, sort_keys=True, separators=(",", ":")).encode()).hexdigest()
