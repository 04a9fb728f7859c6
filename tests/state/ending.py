"""Everything is healed, everything is sent, and what is there is counted: lost and unexpected are nothing."""

import random
from collections import Counter

from inspect_app.entry.format import parse
from inspect_app.entry.receipts import verify_receipts
from inspect_app.record.fold import fold
from inspect_app.store.people_map import people_of
from inspect_app.store.records import folded
from tests.state.machine import COUNTED, Machine

ROUNDS = 40  # of a phone's sending: more than any photo here has pieces


class Ending(Machine):
    def sent_home(self):
        for phone, sent in self.on_the_way:
            self.deliver(phone, sent)
        for phone in self.everybody() * 2:  # what one brings may let in what another waits with
            self.send_all(phone)
        held = self.server.held(self.jobs)
        assert self.expected.differs(held) == ""
        self.nothing_is_lost(held)
        for job in self.jobs:
            self.the_chains_are_whole(job)
        self.everybody_has_fetched_all()

    def send_all(self, phone):
        if phone.kid not in self.expected.enrolled:
            self.enrolled(phone)
        for _ in range(ROUNDS):
            waiting = [name for name in phone.unsent_pictures() if not self.settled_apart(phone, name)]
            entries = [one for one in phone.unsent() if one not in phone.store.answers]
            entries += [one for one in phone.unsent() if self.may_go_now(phone, one)]
            if not waiting and not entries:
                return
            assert phone.bearer or self.token(phone)
            if entries:
                self.deliver(phone, phone.batch(entries[:100]))
            for name in waiting if phone.bearer else []:
                self.deliver(phone, phone.upload(name, 40_000))
        raise AssertionError(f"never done: {entries} {waiting}")

    def may_go_now(self, phone, digest):
        """Whether asking again would take it: a refusal of yesterday says nothing of today."""
        one, answer = self.expected.signed[digest], phone.store.answers.get(digest)
        if digest in self.expected.log:
            return True
        now_possible = one.by in self.expected.members[one.job] or one.kid in self.expected.revoked
        return answer in ("unknown_key", "not_a_member") and now_possible

    def settled_apart(self, phone, name):
        """The office has its bytes and waits for a person; or its carrier is not of that job."""
        mine = phone.person.id in self.expected.members[name[0]]
        return not mine or (phone.store.pictures[name].apart and name in self.expected.photos_apart)

    def nothing_is_lost(self, held):
        on_phones = {one for phone in self.everybody() for one in phone.unsent()}
        saved = {one for phone in self.everybody() for one in phone.store.saved}
        receipts = {pair for phone in self.everybody() for pair in phone.store.receipts.items()}
        lost = [pair for pair in receipts if held.log.get(pair[0]) != pair[1]]
        lost += [one for one in saved if one not in set(held.log) | held.apart | on_phones]
        lost += [one for one in on_phones if self.wrongly_waiting(one, held)]
        unexpected = (set(held.log) | held.apart) - set(self.expected.signed) - self.before
        assert (lost, unexpected) == ([], set())
        for phone in self.everybody():
            for (job, sha256), one in phone.store.pictures.items():
                if phone.person.id in self.expected.members[job]:
                    assert self.server.parts.vault.read(sha256, verify=True) == one.data
                    assert held.photos.get((job, sha256), "") == one.receipt
        COUNTED["in the log"] += len(held.log)
        COUNTED["kept apart"] += len(held.apart)
        COUNTED["recovered: erased by hand, and here all the same"] += len(self.erased & (set(held.log) | held.apart))
        COUNTED["lost"] += len(lost)
        COUNTED["unexpected"] += len(unexpected)

    def wrongly_waiting(self, digest, held):
        """Nothing waits on a phone but what is kept apart, and what its author's job does not take yet."""
        one = self.expected.signed[digest]
        return digest not in held.apart and one.by in self.expected.members[one.job]

    def the_chains_are_whole(self, job):
        with self.server.app.app_context():
            parts = self.server.parts
            facts = verify_receipts(parts.reading.receipts(job), self.jwk)
            tokens = [one.token for one in parts.reading.job_entries(job)]
            record, people = parts.records.record(job), people_of(parts.transactions, job)
        assert (facts["refused"], facts["gaps"], facts["forks"], facts["breaks"]) == ([], [], [], [])
        places = Counter((parse(one).kid, parse(one).payload["seq"]) for one in tokens)
        forks = {(kid, fork["seq"]) for kid, chain in record["chains"].items() for fork in chain["forks"]}
        assert forks == {place for place, times in places.items() if times > 1}
        COUNTED["forks, both branches kept"] += len(forks)
        random.Random(len(tokens)).shuffle(tokens)
        assert fold([folded(one) for one in [*tokens, *tokens[:3]]], people) == record

    def everybody_has_fetched_all(self):
        for phone in self.everybody():
            if phone.kid in self.expected.revoked:
                continue
            assert self.token(phone)
            own = [job for job in self.jobs if phone.person.id in self.expected.members[job]]
            while self.pull(phone, 9):
                pass
            log = {one for one in self.expected.log if one in self.before or self.expected.signed[one].job in own}
            assert {one for one in log if one in self.expected.signed} <= set(phone.store.known)
