"""What is derived can be damaged or dropped: the log alone gives it back, to the byte."""

import sqlalchemy as sa

from inspect_app.store.database import Table
from inspect_app.store.rebuild import rebuild
from inspect_app.store.tables import DerivedJob, DeviceRow, EntryRow, PersonRow, TicketRow

ALL = sorted(Table.metadata.tables)


def dump(office):
    with office.app.app_context(), office.parts.transactions.reading() as session:
        return {
            name: sorted(map(repr, session.execute(sa.select(Table.metadata.tables[name])))) for name in ALL
        }


def filled(office):
    job, _chief = office.job()
    foreman = office.phone("fay", "foreman", job)
    gone = office.phone("gil", "foreman", job)
    assert foreman.send(*office.walk(foreman, job)).status_code == 200
    assert len(foreman.tickets(job).json["tickets"]) == 12 and len(gone.tickets(job, "audit").json["tickets"]) == 1
    with office.app.app_context():
        office.parts.devices.revoke(gone.kid, "server")
        record = office.parts.records.record(job)
        assert len(record["walks"]) == 1
    return job


def rebuilt(office):
    with office.app.app_context():
        return rebuild(office.parts.transactions, office.parts.records)


def test_rebuilding_a_sound_store_changes_nothing(any_office):
    filled(any_office)
    before = dump(any_office)
    assert rebuilt(any_office) == (4, 3, 1, 13)
    assert dump(any_office) == before


def test_dropped_and_falsified_tables_come_back_as_they_were(any_office):
    filled(any_office)
    before = dump(any_office)
    with any_office.app.app_context(), any_office.parts.transactions.writing() as session:
        session.execute(sa.delete(DerivedJob))
        session.execute(sa.delete(DeviceRow))
        session.execute(sa.delete(TicketRow))
        session.execute(sa.update(EntryRow).values(kind="forged", subject="forged", kid="forged"))
    assert dump(any_office) != before
    rebuilt(any_office)
    assert dump(any_office) == before


def test_a_record_follows_new_entries_and_new_people(any_office):
    job = filled(any_office)
    late = any_office.phone("lou", "inspector")
    with any_office.app.app_context():
        records = any_office.parts.records
        assert len(records.record(job)["areas"]) == 0
        any_office.parts.membership.join(late.person.id, job)
    late.send(late.entry("area", job))
    with any_office.app.app_context():
        record = records.record(job)
        assert len(record["areas"]) == 1
        assert [flag for flag in record["flags"] if flag["code"] == "unknown_person"] == []


def test_a_record_is_folded_again_when_only_the_people_have_changed(any_office):
    job = filled(any_office)
    with any_office.app.app_context():
        records = any_office.parts.records
        assert records.record(job)["flags"] == []
        with any_office.parts.transactions.writing() as session:
            session.execute(sa.update(PersonRow).where(PersonRow.login == "fay").values(role="administrator"))
        codes = {flag["code"] for flag in records.record(job)["flags"]}
    assert "no_authority" in codes


def test_a_record_is_read_and_not_folded_again_while_nothing_changes(any_office):
    job = filled(any_office)
    with any_office.app.app_context():
        records = any_office.parts.records
        first = records.record(job)
        records.refresh = None  # folding again would have to call it
        assert records.record(job) == first
