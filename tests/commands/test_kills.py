"""The real server, killed by its process id again and again while phones deliver entries and photos: whatever it gave a
receipt for is there, a check finds nothing, and what was told of an upload's offset stays true."""

import hashlib
import random
import threading
import time

import pytest
import requests

from inspect_app.store.database import db
from inspect_app.upkeep.check import check
from tests.commands.served import served
from tests.commands.test_serve import Wire, place  # noqa: F401  (a fixture)
from tests.seed import chance
from tests.upload_headers import metadata_of, piece_at


class Deliverer(threading.Thread):
    """A phone that has something to send for as long as it is wanted, and never gives up an item without a receipt."""

    def __init__(self, phone, job, at, stop):
        super().__init__()
        self.phone, self.job, self.at, self.stop = phone, job, at, stop
        self.receipts, self.cuts, self.wrong, self.made = {}, 0, [], 0

    def run(self):
        waiting = []
        while waiting or not self.stop.is_set():
            if not waiting:
                waiting = [self.phone.entry("area", self.job) for _ in range(3)]
            try:
                self.phone.client = Wire(self.at["address"])
                reply = self.phone.send(*waiting)
                if reply.status_code == 401:
                    self.phone.get_token()
                    continue
                for token, answer in zip(waiting, reply.json["answers"], strict=True):
                    self.note(token, answer["receipt"])
                waiting = []
                self.photo()
            except (requests.RequestException, ValueError):
                self.cuts += 1
                time.sleep(0.05)

    def photo(self):
        """One in three pieces, from wherever the server says it stands, for as long as it takes."""
        self.made += 1
        data = random.Random(f"{self.phone.kid} {self.made}").randbytes(60_000)
        sha256, told = hashlib.sha256(data).hexdigest(), 0
        headers = {"Tus-Resumable": "1.0.0", **self.phone.bearer}
        while sha256 not in self.receipts:
            try:
                declared = {"Upload-Length": str(len(data)), "Upload-Metadata": metadata_of(self.job, sha256)}
                made = requests.post(self.at["address"] + "/api/photos", timeout=10, headers=headers | declared)
                offset = int(made.headers["Upload-Offset"])
                if offset < told:
                    self.wrong.append(f"{told} bytes were said to be here, and there are {offset}")
                piece = data[offset : offset + 20_000]
                if piece:
                    made = requests.patch(self.at["address"] + made.headers["Location"], data=piece, timeout=10,
                                          headers=headers | piece_at(offset, piece))  # fmt: skip
                    told = max(told, int(made.headers.get("Upload-Offset", 0)))
                if made.headers.get("Seamwalk-Receipt"):
                    self.note(sha256, made.headers["Seamwalk-Receipt"])
            except (requests.RequestException, KeyError):
                self.cuts += 1
                time.sleep(0.05)

    def note(self, name, receipt):
        if self.receipts.setdefault(name, receipt) != receipt:
            self.wrong.append("two receipts for one thing")


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
                stop.set()
                for thread in threads:
                    thread.join(60)
                    assert not thread.is_alive(), "it never came to its end"
    return threads


def whole(place, threads):  # noqa: F811
    """Everything that a receipt was given for is there, once."""
    again = place.office.again()
    with again.app.app_context():
        entries = {one.token: one.receipt for one in again.parts.reading.job_entries(place.job, "area")}
        held = again.parts.reading.photos(place.job)
        receipts = set(again.parts.reading.receipts(place.job))
        db.engine.dispose()
    given = {name: receipt for thread in threads for name, receipt in thread.receipts.items()}
    assert [one for thread in threads for one in thread.wrong] == []
    assert set(given.values()) <= receipts and given.keys() <= entries.keys() | held.keys()
    assert len(receipts) == len(entries) + len(held) + 1, "nothing unexpected"
    found = check(again.settings.data, again.settings.database_url)
    assert found.faults == []
    return len(given)


@pytest.mark.soak
def test_killed_two_hundred_times_it_keeps_what_it_gave_receipts_for(place):  # noqa: F811
    kills = 200 if not place.url else 40
    threads = killed(place, kills, chance("many kills"))
    count, cuts = whole(place, threads), sum(thread.cuts for thread in threads)
    where = "PostgreSQL" if place.url else "SQLite"
    print(f"server killed {kills} times ({where}): {count} receipts, {cuts} requests cut, 0 lost, 0 unexpected")
    assert cuts >= kills / 2
