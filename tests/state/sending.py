"""Requests: made, lost, doubled, late, cut, struck by a death of the server or a full disk."""

from random import Random

from hypothesis import strategies as st
from hypothesis.stateful import rule

from inspect_app.entry.format import parse
from tests.state.machine import COUNTED, FATES, PICK, SEED, STRIKES
from tests.state.saving import Saving

SIZES = st.sampled_from([0, 1, 600, 40_000, 70_000])


class Sending(Saving):
    @rule(pick=PICK, carrier=PICK, new=st.integers(0, 3), order=SEED, most=st.integers(1, 6), fate=FATES,
          strike=STRIKES)  # fmt: skip
    def send_entries(self, pick, carrier, new, order, most, fate, strike):
        """Some of what is unsent, in any order, some of it twice; at times by the hand of who shares the phone."""
        phone = self.a_phone(pick)
        self.save_something(pick, order, "area", new, None)
        carrier = self.a_phone(carrier) if order % 3 == 0 else phone
        if not phone.unsent() or not (carrier.bearer or self.token(carrier)):
            return
        chance = Random(order)
        sent = carrier.batch(chance.choices(phone.unsent(), k=most), phone)
        if fate == "request lost":
            self.on_the_way.append((phone, sent))
            return
        if order % 4 == 0:
            self.on_the_way.append((phone, sent))
        self.deliver(phone, sent, strike, fate == "heard")

    @rule(pick=PICK, which=SEED, sizes=st.lists(SIZES, min_size=1, max_size=4), fate=FATES, strike=STRIKES,
          harm=st.sampled_from(["", "", "", "spoiled", "cut"]))  # fmt: skip
    def send_of_a_photo(self, pick, which, sizes, fate, strike, harm):
        """Some requests of one upload in a row, the last of them with what may go wrong."""
        phone = self.a_phone(pick)
        if not phone.unsent_pictures():
            self.photograph(pick, which, 1 + which * 90, which % 3)
        for turn, size in enumerate(sizes, 1):
            waiting, last = phone.unsent_pictures(), turn == len(sizes)
            if not waiting or not (phone.bearer or self.token(phone)):
                return
            sent = phone.upload(waiting[which % len(waiting)], size, last and harm == "spoiled")
            if last and (fate == "request lost" or which % 5 == 0):
                self.on_the_way.append((phone, sent))
            if not last:
                self.deliver(phone, sent)
            elif fate != "request lost":
                cut = len(sent.body) // 2 if harm == "cut" and sent.body else None
                self.deliver(phone, sent, strike, fate == "heard", cut)

    @rule(which=SEED, times=st.integers(1, 4))
    def what_was_on_the_way_arrives(self, which, times):
        """Late, perhaps after all that followed it, and as often as the network likes."""
        for _ in range(times if self.on_the_way else 0):
            phone, sent = self.on_the_way[which % len(self.on_the_way)]
            self.deliver(phone, sent)
            COUNTED["late or doubled"] += 1

    @rule(pick=PICK, limit=st.integers(1, 9))
    def fetch(self, pick, limit):
        phone = self.a_phone(pick)
        if phone.bearer or self.token(phone):
            self.pull(phone, limit)

    def pull(self, phone, limit):
        """One page; whether there is more. A cursor once passed has passed nothing that comes after it."""
        at = f"/api/entries?after={phone.store.cursor}&limit={limit}"
        reply = self.server.ask("GET", at, {"Authorization": f"Bearer {phone.bearer}"})
        if reply.status_code == 401:
            phone.bearer = ""
            return False
        assert (reply.status_code == 403) == (phone.kid in self.expected.revoked), reply.json
        if reply.status_code != 200:
            return False
        phone.store.known |= {parse(one["entry"]).digest: one["entry"] for one in reply.json["entries"]}
        phone.store.cursor = reply.json["next"]
        return reply.json["more"]

    @rule(hours=st.sampled_from([0, 0, 1, 13, 200]))
    def the_server_is_killed_or_time_passes(self, hours):
        """Tokens, sign-ins and uploads that nobody continues come to their end."""
        self.clock.forward(hours=hours)
        if not hours:
            self.server.die()
            COUNTED["server killed"] += 1
