"""Phones, people and a lying network around one real server: what was saved is never lost, what has a receipt stays.

Every rule is something that happens to a phone, a person, a request on its way, or the server. Numbers pick among what
there is, so that a failing run shrinks to few and small ones. After each request the server's store is compared with
``Expected``; ``sent_home`` in ``ending.py`` heals everything and counts what is there.
"""

import json
import shutil
import tempfile
from collections import Counter
from pathlib import Path
from typing import Any

from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize

from inspect_app.entry.uuid7 import uuid7
from tests.office import PASSWORD
from tests.state.expected import Expected, known
from tests.state.phone import Phone, Sent
from tests.state.server import Died, Server, Strike
from tests.state.town import town
from tests.steady_clock import SteadyClock

PICK = st.integers(0, 7)
SEED = st.integers(0, 999)
STRIKES = st.none() | st.builds(Strike, st.integers(0, 60), st.sampled_from(["die", "full", "broken", "busy"]))
FATES = st.sampled_from(["heard", "answer lost", "request lost"])
COUNTED: Counter[str] = Counter()


class Machine(RuleBasedStateMachine):
    """The state all rules share; the rules stand in the classes that ``run.py`` joins."""

    @initialize()
    def begin(self) -> None:
        place, self.count = town(), 0
        self.folder = Path(tempfile.mkdtemp(prefix="seamwalk-state-"))
        shutil.copytree(place.folder, self.folder / "life1")
        self.clock = SteadyClock()
        self.clock.forward(hours=1)
        self.server = Server(self.folder / "life1", self.clock)
        self.jobs, self.jwk = place.jobs, self.server.parts.server_key.jwk
        self.expected = Expected(
            self.server.held(self.jobs), {job: set(who) for job, who in place.members.items()}, {place.chief.id}
        )
        self.before = set(self.expected.log)
        self.chief = Phone(place.chief, 0)
        self.phones = [Phone(person, n + 1) for n, person in enumerate(place.people.values())]
        self.numbers, self.on_the_way, self.erased, self.pulled = len(self.phones) + 1, [], set(), {}
        self.arrived: Counter[Any] = Counter()
        self.lengths: dict[tuple[str, str], int] = {}
        for phone in (self.chief, *self.phones[:2]):
            self.enrolled(phone)
        COUNTED["runs"] += 1

    def teardown(self) -> None:
        if hasattr(self, "server"):
            try:
                self.sent_home()
            finally:
                self.server.close()
                shutil.rmtree(self.folder)

    def sent_home(self) -> None:
        raise NotImplementedError

    # What the rules are made of.

    def next_number(self) -> int:
        self.numbers += 1
        return self.numbers

    def a_phone(self, pick: int) -> Phone:
        return self.phones[pick % len(self.phones)]

    def enrolled(self, phone: Phone, strike: Strike | None = None) -> None:
        """Signs in and ties the phone's key to its person; the same key again gives the same."""
        client = self.server.app.test_client()
        csrf = {"X-Seamwalk-Csrf": client.get("/api/session").json["csrf"]}
        asked = {"login": phone.person.login, "password": PASSWORD}
        signed_in = client.post("/api/session", json=asked, headers=csrf)
        if signed_in.status_code == 429:  # somebody tried wrong passwords before
            self.clock.forward(hours=1)
            signed_in = client.post("/api/session", json=asked, headers=csrf)
        csrf = {"X-Seamwalk-Csrf": signed_in.json["csrf"]}
        proof = phone.proof(client.get("/api/nonce").json["nonce"], "enrol")
        asked = {"jwk": phone.jwk, "device": "a model", "proof": proof}
        assert client.post("/api/devices", json=asked, headers=csrf).status_code == 201
        self.expected.enrolled[phone.kid] = phone.person.id

    def token(self, phone: Phone) -> bool:
        """A bearer token by the key alone; none for a key that is not enrolled."""
        nonce = self.server.ask("GET", "/api/nonce", {}).json["nonce"]
        body = json.dumps({"proof": phone.proof(nonce, "deliver")}).encode()
        reply = self.server.ask("POST", "/api/delivery", {"Content-Type": "application/json"}, body)
        assert (reply.status_code == 200) == (phone.kid in self.expected.enrolled), reply.json
        phone.bearer = reply.json.get("token", "")
        return reply.status_code == 200

    def save(self, phone: Phone, kind: str, job: str, subject: str, body: dict[str, Any], replaces: list[str]) -> str:
        self.count += 1
        digest = phone.save(self.count, kind, job, subject, body, replaces)
        self.expected.signed[digest] = known(phone.store.saved[digest])
        COUNTED["entries saved"] += 1
        return digest

    def new_subject(self) -> str:
        self.count += 1
        return uuid7(1795642805120 + self.count, self.count.to_bytes(10, "big"))

    def deliver(
        self, phone: Phone, sent: Sent, strike: Strike | None = None, heard: bool = True, cut: int | None = None
    ) -> None:
        """One arrival of a request at the server, and what it leaves there; ``heard``: the phone gets the answer."""
        entries, after = isinstance(sent.about, list), self.expected.copy()
        told = after.receive(sent.about) if entries else []
        if not entries and sent.method == "PATCH" and cut is None:
            self.arrived[sent.key, sent.about] = max(
                self.arrived[sent.key, sent.about], int(sent.headers["Upload-Offset"]) + len(sent.body)
            )
        whole = not entries and self.arrived[sent.key, sent.about] >= self.lengths[sent.about]
        if whole:
            after.bring(sent.about, sent.key)
        try:
            reply = self.server.ask(sent.method, sent.path, sent.headers, sent.body, strike, cut)
        except Died:
            COUNTED["server killed"] += 1
            self.settle(after)
            sent.waiting = False
            self.unsure(phone, sent)
            return
        COUNTED["requests"] += 1
        if entries and reply.status_code == 200:
            self.check(sent, told, reply, after)
            self.expected = after
        else:
            assert reply.status_code in (200, 201, 204, 400, 401, 404, 409, 410, 460, 503, 507), reply.data
            self.settle(after)
        if not heard or not sent.waiting:
            COUNTED["answers lost"] += 1
            self.unsure(phone, sent)
        elif reply.status_code == 401:
            phone.bearer = ""
        elif entries and reply.status_code == 200:
            phone.hear_batch(sent, reply, self.jwk)
        elif not entries and sent.about in phone.store.pictures:
            phone.hear_upload(sent, reply, self.jwk)
        sent.waiting = False

    def unsure(self, phone: Phone, sent: Sent) -> None:
        if not isinstance(sent.about, list) and sent.about in phone.store.pictures:
            phone.store.pictures[sent.about].sure = False

    def check(self, sent: Sent, told: list[str], reply: Any, after: Expected) -> None:
        found = [one.get("code") if one["status"] == "refused" else one["status"] for one in reply.json["answers"]]
        assert found == told, (told, found)
        for digest, one in zip(sent.about, reply.json["answers"], strict=True):
            assert ("receipt" in one) == (one["status"] in ("accepted", "duplicate")), one
            if "receipt" in one:
                assert after.receipts.setdefault(digest, one["receipt"]) == one["receipt"]

    def settle(self, after: Expected) -> None:
        """After a death, or an answer that is no answer: all of what was asked has happened, or nothing of it."""
        held = self.server.held(self.jobs)
        nothing, all_of_it = self.expected.differs(held), after.differs(held)
        assert not nothing or not all_of_it, f"{nothing} | {all_of_it}"
        if not all_of_it:
            self.expected = after

    def everybody(self) -> list[Phone]:
        return [self.chief, *self.phones]
