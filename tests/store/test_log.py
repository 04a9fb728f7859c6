"""Appending: each thing once, in one order, with a receipt that anybody can check."""

import hashlib
import threading

from inspect_app.entry.format import parse
from inspect_app.entry.jws import verify
from inspect_app.entry.receipts import verify_receipts
from inspect_app.entry.statement import parse_statement
from tests.phone import new_uuid

PHOTO = hashlib.sha256(b"a photo").hexdigest()


def test_the_same_entry_twice_gives_the_same_receipt_and_one_row(any_office):
    phone = any_office.phone("ada", "administrator")
    entry = parse(phone.job(new_uuid()))
    with any_office.app.app_context():
        log, reading = any_office.parts.log, any_office.parts.reading
        first = log.append(entry)
        before = any_office.parts.statements.last()
        assert log.append(entry) == first
        assert any_office.parts.statements.last() == before
        assert [item.token for item in reading.job_entries(entry.job)] == [entry.token]


def test_the_same_photo_twice_gives_the_same_receipt_and_tells_once(any_office):
    job, told = new_uuid(), []
    with any_office.app.app_context():
        log = any_office.parts.log
        log.on_photo = lambda *told_of: told.append(told_of)
        first = log.receive_photo(job, PHOTO, 7, "image/jpeg")
        assert log.receive_photo(job, PHOTO, 7, "image/jpeg") == first
        assert log.photo_receipt(job, PHOTO) == first
        assert told == [(job, PHOTO)]
        assert parse_statement(first).payload["size"] == 7


def test_a_photo_of_two_jobs_has_a_receipt_in_each_chain(any_office):
    one, two = new_uuid(), new_uuid()
    with any_office.app.app_context():
        log = any_office.parts.log
        receipts = [log.receive_photo(job, PHOTO, 7, "image/jpeg") for job in (one, two)]
    payloads = [parse_statement(receipt).payload for receipt in receipts]
    assert [(p["job"], p["n"], p["prev"]) for p in payloads] == [(one, 0, None), (two, 0, None)]
    assert payloads[0]["seq"] < payloads[1]["seq"]


def test_receipts_verify_with_the_server_key_and_chain_without_gap(any_office):
    job, chief = any_office.job()
    chief.send(*[chief.entry("area", job) for _ in range(5)])
    with any_office.app.app_context():
        any_office.parts.log.receive_photo(job, PHOTO, 7, "image/jpeg")
        receipts = any_office.parts.reading.receipts(job)
    for receipt in receipts:
        verify(parse_statement(receipt), any_office.parts.server_key.jwk)
    facts = verify_receipts(receipts, any_office.parts.server_key.jwk)
    assert facts["count"] == 7
    assert not any(facts[name] for name in ("refused", "gaps", "forks", "breaks"))


def test_many_threads_appending_at_once_give_gapless_numbers_and_unbroken_chains(any_office):
    phone = any_office.phone("ada", "administrator")
    jobs = [new_uuid() for _ in range(2)]
    work = [[parse(phone.entry("area", jobs[i % 2])) for i in range(12)] for _ in range(6)]
    failures = []

    def append(entries):
        try:
            for entry in entries:
                with any_office.app.app_context():
                    any_office.parts.log.append(entry)
        except Exception as error:
            failures.append(error)

    with any_office.app.app_context():
        start = any_office.parts.statements.last()
    threads = [threading.Thread(target=append, args=(entries,)) for entries in work]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert failures == []
    with any_office.app.app_context():
        found = any_office.parts.reading.entries_after(0, jobs, 1000)
        assert [item.seq for item in found] == list(range(start + 1, start + 73))
        for job in jobs:
            facts = verify_receipts(any_office.parts.reading.receipts(job), any_office.parts.server_key.jwk)
            assert (facts["count"], facts["gaps"], facts["forks"], facts["breaks"]) == (36, [], [], [])


def test_a_reader_that_follows_the_numbers_never_misses_a_late_commit(any_office):
    """Each writer waits inside its transaction, so that commits come late and close together."""
    phone = any_office.phone("ada", "administrator")
    job = new_uuid()
    entries = [parse(phone.entry("area", job)) for _ in range(24)]
    parts, failures, done = any_office.parts, [], threading.Event()

    def write(mine):
        try:
            for entry in mine:
                with any_office.app.app_context(), parts.transactions.writing():
                    parts.log.append(entry)
                    threading.Event().wait(0.003)
        except Exception as error:
            failures.append(error)

    def follow(into):
        cursor, last = 0, False
        while True:
            last = done.is_set()
            with any_office.app.app_context():
                page = parts.reading.entries_after(cursor, [job], 100)
            into += [item.seq for item in page]
            cursor = page[-1].seq if page else cursor
            if last and not page:
                return

    seen: list[int] = []
    reader = threading.Thread(target=follow, args=(seen,))
    writers = [threading.Thread(target=write, args=(entries[i::4],)) for i in range(4)]
    for thread in (reader, *writers):
        thread.start()
    for thread in writers:
        thread.join()
    done.set()
    reader.join()
    assert failures == []
    assert len(seen) == 24 and seen == sorted(set(seen))


def test_two_servers_on_one_database_share_one_order(any_office):
    """Another process has another lock of its own: then only the database's lock orders them."""
    other = any_office.again()
    phone = any_office.phone("ada", "administrator")
    job = new_uuid()
    entries = [parse(phone.entry("area", job)) for _ in range(30)]
    failures = []

    def append(office, mine):
        try:
            for entry in mine:
                with office.app.app_context():
                    office.parts.log.append(entry)
        except Exception as error:
            failures.append(error)

    threads = [
        threading.Thread(target=append, args=(office, entries[i::2]))
        for i, office in enumerate((any_office, other))
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert failures == []
    with any_office.app.app_context():
        facts = verify_receipts(any_office.parts.reading.receipts(job), any_office.parts.server_key.jwk)
    assert (facts["count"], facts["gaps"], facts["forks"], facts["breaks"]) == (30, [], [], [])
