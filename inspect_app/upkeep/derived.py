"""Make the derived tables again in memory and hold them against those that are kept."""

import json

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from inspect_app.entry.refusal import Refused
from inspect_app.record.fold import fold
from inspect_app.store.people_map import people_digest, people_of
from inspect_app.store.records import folded
from inspect_app.store.tables import DerivedJob, DeviceRow, EntryRow, TicketRow
from inspect_app.upkeep.fault import Fault
from inspect_app.upkeep.said import Said
from inspect_app.upkeep.snapshot import Snapshot


def check_derived(moment: Snapshot, said: Said) -> list[Fault]:
    """Keys, tickets and folded records. A record that is only out of date is none: the next reader folds it again."""
    session = moment.session
    columns = ("kid", "person", "jwk", "device", "enrolled", "revoked")
    devices = {row.kid: {name: getattr(row, name) for name in columns} for row in session.scalars(select(DeviceRow))}
    faults = [Fault("derived_key", f"key {kid}") for kid in sorted(devices.keys() | said.devices.keys())
              if devices.get(kid) != said.devices.get(kid)]  # fmt: skip
    tickets = {(row.job, row.kid, row.series, row.n): row.seq for row in session.scalars(select(TicketRow))}
    other = sorted(name for name in tickets.keys() | said.tickets.keys() if tickets.get(name) != said.tickets.get(name))
    faults += [Fault("derived_ticket", f"ticket {kid}/{series}/{n}", {"job": job}) for job, kid, series, n in other]
    return faults + _records(moment, session)


def _records(moment: Snapshot, session: Session) -> list[Fault]:
    faults = []
    for row in session.scalars(select(DerivedJob).order_by(DerivedJob.job)).all():
        newest = session.scalar(select(func.max(EntryRow.seq)).where(EntryRow.job == row.job)) or 0
        people = people_of(moment, row.job)
        if row.up_to > newest:
            faults.append(Fault("derived_record", f"job {row.job}"))
        elif (row.up_to, row.people) == (newest, people_digest(people)):
            tokens = session.scalars(select(EntryRow.token).where(EntryRow.job == row.job).order_by(EntryRow.seq))
            try:
                again = fold([folded(token) for token in tokens], people)
            except Refused:
                continue  # an entry that does not read is a fault of its own
            if json.dumps(again, sort_keys=True) != row.record:
                faults.append(Fault("derived_record", f"job {row.job}"))
    return faults
