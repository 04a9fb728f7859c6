"""Phones that deliver to a real server without rest, and what must be there when all is over."""

import hashlib
import random
import threading
import time
from collections import Counter

import requests

from inspect_app.store.database import db
from inspect_app.upkeep.check import check
from tests.commands.test_serve import Wire
from tests.upload_headers import metadata_of, piece_at


class Deliverer(threading.Thread):
    """A phone that has something to send for as long as it is wanted, and never gives up an item without a receipt.
    ``refused``: how often it was answered with each status that is no success."""

    def __init__(self, phone, job, at, stop):
        super().__init__(daemon=True)
        self.phone, self.job, self.at, self.stop = phone, job, at, stop
        self.receipts, self.cuts, self.wrong, self.made = {}, 0, [], 0
        self.refused = Counter()

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
                if reply.status_code != 200:
                    self.refusal(reply.status_code, reply.json)
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
                if not made.ok:
                    self.refusal(made.status_code, made.json())
                    continue
                offset = int(made.headers["Upload-Offset"])
                if offset < told:
                    self.wrong.append(f"{told} bytes were said to be here, and there are {offset}")
                piece = data[offset : offset + 20_000]
                if piece:
                    made = requests.patch(self.at["address"] + made.headers["Location"], data=piece, timeout=10,
                                          headers=headers | piece_at(offset, piece))  # fmt: skip
                    if not made.ok:
                        self.refusal(made.status_code, made.json())
                        continue
                    told = max(told, int(made.headers["Upload-Offset"]))
                if made.headers.get("Seamwalk-Receipt"):
                    self.note(sha256, made.headers["Seamwalk-Receipt"])
            except requests.RequestException:
                self.cuts += 1
                time.sleep(0.05)

    def refusal(self, status, answer):
        self.refused[status] += 1
        if not answer["error"]["way_out"]:
            self.wrong.append(f"{status} without a way out")
        time.sleep(0.05)

    def note(self, name, receipt):
        if self.receipts.setdefault(name, receipt) != receipt:
            self.wrong.append("two receipts for one thing")


def ended(threads, stop):
    """Nothing new is begun, and what is begun comes to its end."""
    stop.set()
    for thread in threads:
        thread.join(60)
        assert not thread.is_alive(), "it never came to its end"


def whole(place, threads):
    """Everything that a receipt was given for is there, once. Returns how much that is."""
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
