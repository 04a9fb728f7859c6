"""The real server, killed by its process id again and again while phones deliver entries and photos: whatever it gave a
receipt for is there, a check finds nothing, and what was told of an upload's offset stays true."""

import threading
import time

import pytest

from tests.commands.delivering import Deliverer, ended, whole
from tests.commands.served import served
from tests.commands.test_serve import place  # noqa: F401  (a fixture)
from tests.seed import chance


def killed(place, kills, luck):  # noqa: F811
    """Kill so many times; the deliverers, when all of them have ended well."""
    at, stop = {"address": "http://127.0.0.1:9"}, threading.Event()
    threads = [Deliverer(phone, place.job, at, stop) for phone in place.people]
    for life in range(kills + 1):
        with served(place.data, place.url) as (address, process):
            at["address"] = address
            if life == 0:
                for thread in threads:
                    thread.start()
            if life < kills:
                time.sleep(luck.random() * 0.8)
                process.kill()
            else:
                ended(threads, stop)
    return threads


@pytest.mark.soak
def test_killed_two_hundred_times_it_keeps_what_it_gave_receipts_for(place):  # noqa: F811
    kills = 200 if not place.url else 40
    threads = killed(place, kills, chance("many kills"))
    count, cuts = whole(place, threads), sum(thread.cuts for thread in threads)
    where = "PostgreSQL" if place.url else "SQLite"
    print(f"server killed {kills} times ({where}): {count} receipts, {cuts} requests cut, 0 lost, 0 unexpected")
    assert cuts >= kills / 2
