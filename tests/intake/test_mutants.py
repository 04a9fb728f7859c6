"""Batches of entries gone wrong: an answer for each, a receipt only for what is stored, and nothing that was
stored is other than what was sent."""

import random
from collections import Counter

import pytest
from joserfc import jws as outside
from joserfc.jwk import ECKey

from inspect_app.entry.jws import verify
from inspect_app.entry.receipts import verify_receipts
from inspect_app.entry.statement import parse_statement
from inspect_app.intake.batch import digest_of
from tests.entry.mutants import flipped, in_earnest, in_transit
from tests.seed import chance

NO_TEXT = (None, 7, True, [], {"entry": "a.b.c"}, "")


class Intake:
    """One server and one phone that has lost its senses; ``sent``: good tokens, to be replayed and changed."""

    def __init__(self, office, source: random.Random) -> None:
        self.job, self.chief = office.job()
        self.chance = source
        self.server = office.client().get("/api/server").json
        self.held = {one["entry"]: one["receipt"] for one in self.chief.pull(limit=100).json["entries"]}
        self.sent = list(self.held)
        self.receipts = set(self.held.values())
        self.after, self.seen = 0, Counter()

    def good(self) -> str:
        """The next entry; now and then from a backup of the phone, so that its chain forks."""
        before = dict(self.chief.chains)
        token = self.chief.entry(self.chance.choice(["area", "assembly"]), self.job)
        if self.chance.random() < 0.2:
            self.chief.chains = before
        self.sent = [*self.sent[-200:], token]
        return token

    def item(self) -> object:
        token, other = self.chance.choice(self.sent), self.chance.choice(self.sent)
        return self.chance.choice([
            lambda: self.good(), lambda: token, lambda: in_transit(token, other, self.chance),
            lambda: in_transit(token, other, self.chance), lambda: in_earnest(token, self.chief.key, self.chance),
            lambda: self.chance.choice(NO_TEXT),
        ])()  # fmt: skip

    def deliver(self, items: list[object]) -> list[dict]:
        """Send, and hold the answers to what must be true of any batch."""
        reply = self.chief.send(*items, **{"Accept-Language": self.chance.choice(["en", "es"])})
        assert reply.status_code == 200, (reply.status_code, reply.text, items)
        answers = reply.json["answers"]
        assert len(answers) == len(items)
        for item, answer in zip(items, answers, strict=True):
            self._hold(item, answer)
            self.seen[answer.get("code") or answer["status"]] += 1
        self._look(answers)
        return answers

    def _hold(self, item: object, answer: dict) -> None:
        if answer["status"] in ("accepted", "duplicate"):
            assert isinstance(item, str) and answer["digest"] == digest_of(item)
            receipt = parse_statement(answer["receipt"])
            verify(receipt, self.server["jwk"])
            assert (receipt.payload["entry"], receipt.payload["job"]) == (answer["digest"], self.job)
            if answer["status"] == "accepted":
                outside.deserialize_compact(item, ECKey.import_key(self.chief.jwk), algorithms=["ES256"])
                assert item not in self.held
                self.held[item] = answer["receipt"]
                self.receipts.add(answer["receipt"])
            assert answer["receipt"] in self.receipts
        else:
            assert answer["status"] == "refused" and not answer.get("receipt"), answer
            assert answer["code"] and answer["field"] and answer["message"] and answer["way_out"], answer

    def _look(self, answers: list[dict]) -> None:
        """What the log gained is what was accepted, to the byte, and nothing else."""
        page = self.chief.pull(self.after, limit=500).json
        assert not page["more"]
        stored = {one["entry"]: one["receipt"] for one in page["entries"]}
        assert {token: self.held.get(token) for token in stored} == stored
        if self.after:
            assert len(stored) == sum(answer["status"] == "accepted" for answer in answers)
        self.after = page["next"]

    def whole(self) -> None:
        """All receipts together are one chain without gap, fork or break."""
        chain = verify_receipts(self.held.values(), self.server["jwk"])
        assert chain["count"] == len(self.held)
        assert [chain[name] for name in ("refused", "gaps", "forks", "breaks")] == [[], [], [], []]


def run(intake: Intake, batches: int) -> None:
    for _ in range(batches):
        good = [intake.good() for _ in range(intake.chance.randrange(4))]
        items = [*good, *(intake.item() for _ in range(intake.chance.randrange(1, 20)))]
        intake.chance.shuffle(items)
        answers = intake.deliver(items)
        taken = {item for item, answer in zip(items, answers, strict=True)
                 if isinstance(item, str) and answer["status"] in ("accepted", "duplicate")}  # fmt: skip
        assert set(good) <= taken  # no bad neighbour hides a good one
    intake.whole()


def flips(intake: Intake, places: slice, bits: range) -> int:
    """Send one entry with each of these bits changed, and then itself."""
    token = intake.good()
    changed = [flipped(token, at, bit) for at in range(len(token))[places] for bit in bits]
    for first in range(0, len(changed), 100):
        assert {answer["status"] for answer in intake.deliver(changed[first : first + 100])} == {"refused"}
    assert intake.deliver([token])[0]["status"] == "accepted"
    return len(changed)


def test_whatever_a_broken_line_or_a_hostile_phone_sends_each_item_has_its_answer(office):
    intake = Intake(office, chance("batches"))
    run(intake, 20)
    assert flips(intake, slice(None, None, 9), range(intake.chance.randrange(8), 8, 8)) > 50
    assert intake.seen["accepted"] > 20 and intake.seen["duplicate"] > 5 and len(intake.seen) > 8, intake.seen


@pytest.mark.soak
def test_three_thousand_batches_gone_wrong(office):
    intake = Intake(office, chance("many batches"))
    run(intake, 3000)
    print(f"batches: 3000, items {intake.seen.total()}, answered {dict(intake.seen.most_common())}")
    assert intake.seen["accepted"] > 3000 and len(intake.seen) > 15


@pytest.mark.soak
def test_no_changed_bit_of_an_entry_is_stored(office):
    intake = Intake(office, chance("bits"))
    print(f"bits of one entry changed and sent: {flips(intake, slice(None), range(8))}")
    intake.whole()
