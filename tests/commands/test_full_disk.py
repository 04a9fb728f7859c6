"""The real server on a real disk that is full, again and again: nothing false is said, and with room all ends well."""

import threading
import time
from types import SimpleNamespace

import pytest

from tests.commands.delivering import Deliverer, ended, whole
from tests.commands.served import served
from tests.office import Office
from tests.small_disk import fill, small_disk

MEGABYTE = 1 << 20
FULL = 507  # Insufficient Storage (RFC 4918, 11.5)


@pytest.fixture
def disk(tmp_path):
    with small_disk(tmp_path / "disk", 96 * MEGABYTE) as folder:
        yield folder


@pytest.fixture
def place(disk):
    """A job on that disk, its administrator's phone, and 3 foremen's."""
    office = Office(disk / "data")
    office.clock.now = office.clock.now.__class__.now(office.clock.now.tzinfo)
    people = [office.phone(f"fay{n}", "foreman") for n in range(3)]
    job, _ = office.job(*[phone.person.id for phone in people], definitions={})
    return SimpleNamespace(data=disk / "data", url="", office=office, people=people, job=job)


def until(true, seconds=60):
    end = time.monotonic() + seconds
    while not true():
        assert time.monotonic() < end, "it never came to that"
        time.sleep(0.05)


def filled(place, disk, times):
    """Fill the disk so many times while phones deliver, and once start the server anew on it while it is full."""
    at, stop = {"address": ""}, threading.Event()
    threads = [Deliverer(phone, place.job, at, stop) for phone in place.people]
    other = disk / "another program's"

    def each_is_refused():
        before = [thread.refused[FULL] for thread in threads]
        until(lambda: all(t.refused[FULL] >= was + 3 for t, was in zip(threads, before, strict=True)))

    with served(place.data) as (address, _):
        at["address"] = address
        for thread in threads:
            thread.start()
        for _ in range(times):
            until(lambda: all(thread.receipts for thread in threads))
            fill(other)
            each_is_refused()
            before = [len(thread.receipts) for thread in threads]
            other.unlink()
            until(lambda was=before: all(len(t.receipts) > n + 2 for t, n in zip(threads, was, strict=True)))
        assert sum(thread.cuts for thread in threads) == 0, "it answered every request"
        fill(other)
        each_is_refused()
    with served(place.data) as (address, _):
        at["address"] = address
        each_is_refused()
        other.unlink()
        ended(threads, stop)
    return threads


def test_a_full_disk_is_said_and_nothing_that_has_a_receipt_is_lost(place, disk):
    threads = filled(place, disk, 2)
    assert whole(place, threads) > 20
    assert {status for thread in threads for status in thread.refused} == {FULL}


@pytest.mark.soak
def test_a_disk_that_is_full_again_and_again_loses_nothing(place, disk):
    threads = filled(place, disk, 20)
    refused = sum(thread.refused.total() for thread in threads)
    print(f"disk full 21 times: {whole(place, threads)} receipts, {refused} requests refused, 0 lost, 0 unexpected")
