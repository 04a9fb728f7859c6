"""The real server over real sockets: killed at any moment, it still holds what it gave receipts for."""

import json
import random
import threading
import time
import uuid
from types import SimpleNamespace

import pytest
import requests

from inspect_app.command_line import main
from inspect_app.entry.format import parse
from inspect_app.entry.receipts import verify_receipts
from tests.commands.served import served
from tests.conftest import POSTGRESQL
from tests.office import Office
from tests.phone import Phone
from tests.postgresql import new_database


class Wire:
    """What ``Phone`` asks of a client, over a real connection."""

    def __init__(self, address):
        self.address, self.session = address, requests.Session()

    def get(self, path, query_string=None, headers=None):
        return self._said(self.session.get(self.address + path, params=query_string, headers=headers, timeout=10))

    def post(self, path, json, headers=None):
        return self._said(self.session.post(self.address + path, json=json, headers=headers, timeout=10))

    @staticmethod
    def _said(reply):
        return SimpleNamespace(status_code=reply.status_code, json=json.loads(reply.content))


@pytest.fixture(params=["sqlite", POSTGRESQL])
def place(request, tmp_path):
    """``(data folder, database URL)`` with a job, its administrator's phone, and 3 foremen's."""
    url = ""
    if request.param == "postgresql":
        url = new_database(request.getfixturevalue("postgresql"), f"test_{uuid.uuid4().hex}")
    office = Office(tmp_path / "data", url)
    office.clock.now = office.clock.now.__class__.now(office.clock.now.tzinfo)
    people = [office.phone(f"fay{n}", "foreman") for n in range(3)]
    job, _ = office.job(*[phone.person.id for phone in people], definitions={})
    yield SimpleNamespace(data=tmp_path / "data", url=url, office=office, people=people, job=job)


def test_killed_again_and_again_it_still_holds_everything_it_gave_a_receipt_for(place):
    chance = random.Random(7)
    work = [[phone.entry("area", place.job) for _ in range(40)] for phone in place.people]
    receipts, cuts, stop = {}, [], threading.Event()
    now_at = {"address": ""}

    def deliver(phone: Phone, tokens):
        """Like a phone: what has no receipt is sent again, for as long as it takes."""
        waiting = list(tokens)
        while waiting and not stop.is_set():
            phone.client = Wire(now_at["address"])
            try:
                reply = phone.send(*waiting[:3])
            except (requests.RequestException, ValueError):
                cuts.append(len(waiting))
                time.sleep(0.02)
                continue
            assert reply.status_code == 200, reply.json
            for token, answer in zip(waiting[:3], reply.json["answers"], strict=True):
                assert answer["status"] in ("accepted", "duplicate"), answer
                receipts.setdefault(token, set()).add(answer["receipt"])
            waiting = [token for token in waiting if token not in receipts]

    threads = []
    for life in range(4):
        with served(place.data, place.url) as (address, process):
            now_at["address"] = address
            if not threads:
                for phone, tokens in zip(place.people, work, strict=True):
                    threads.append(threading.Thread(target=deliver, args=(phone, tokens)))
                    threads[-1].start()
            if life < 3:
                time.sleep(0.05 + chance.random() * 0.25)
                process.kill()
            else:
                for thread in threads:
                    thread.join(30)
                stop.set()
    assert cuts and max(cuts) > 3, "it was never killed in the middle of the work"
    again = place.office.again()
    with again.app.app_context():
        held = {item.token: item.receipt for item in again.parts.reading.job_entries(place.job, "area")}
        facts = verify_receipts(again.parts.reading.receipts(place.job), again.parts.server_key.jwk)
    assert set(receipts) == {token for tokens in work for token in tokens} == set(held)
    assert all(given == {held[token]} for token, given in receipts.items())
    assert (facts["count"], facts["gaps"], facts["forks"], facts["breaks"]) == (121, [], [], [])
    assert len({parse(token).digest for token in held}) == 120


def test_an_address_that_is_taken_is_said_in_words(tmp_path, monkeypatch, capsys):
    monkeypatch.setenv("SEAMWALK_DATA", str(tmp_path / "other"))
    with served(tmp_path / "data") as (address, _):
        port = address.rpartition(":")[2]
        assert main(["serve", "--port", port]) == 2
    assert f"address: 127.0.0.1:{port}" in capsys.readouterr().err


def test_a_folder_that_cannot_be_used_is_said_in_words(tmp_path, monkeypatch, capsys):
    (tmp_path / "file").write_text("")
    monkeypatch.setenv("SEAMWALK_DATA", str(tmp_path / "file" / "data"))
    assert main(["serve"]) == 2
    assert str(tmp_path / "file") in capsys.readouterr().err


def test_it_says_where_it_is_and_answers_with_json_and_pages(tmp_path):
    with served(tmp_path / "data") as (address, _):
        reply = requests.get(address + "/api/server", timeout=10)
        assert reply.status_code == 200 and reply.json()["kid"]
        assert requests.get(address + "/", timeout=10).headers["Content-Type"].startswith("text/html")
        assert "Server" not in reply.headers
