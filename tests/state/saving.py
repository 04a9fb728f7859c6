"""What happens on a phone without any network: saving, correcting, photographs, clocks, copies, backups, wiping."""

import hashlib
from datetime import timedelta

from hypothesis import strategies as st
from hypothesis.stateful import rule

from inspect_app.entry.format import parse
from tests.state.machine import COUNTED, PICK, SEED, Machine
from tests.state.phone import Picture

MOST_PHONES = 6
SIZES = st.sampled_from([0, 1, 700, 70_000])
JUMPS = st.sampled_from([timedelta(days=n) for n in (-7305, -1, 1, 7305)] + [timedelta(minutes=n) for n in (-150, 3)])


class Saving(Machine):
    @rule(pick=PICK, job=PICK, kind=st.sampled_from(["area", "walk"]), n=st.integers(1, 4), jump=st.none() | JUMPS)
    def save_something(self, pick, job, kind, n, jump):
        """At times by a clock that has just jumped, by years or by minutes, forward or back."""
        phone = self.a_phone(pick)
        phone.jump += jump or timedelta()
        for _ in range(n):
            self.save(phone, kind, self.jobs[job % 2], self.new_subject(), {}, [])

    @rule(pick=PICK, which=SEED)
    def correct_something(self, pick, which):
        """One's own, or what was fetched of others: so two people edit the same version."""
        phone = self.a_phone(pick)
        seen = sorted({*phone.store.saved, *phone.store.known} & set(self.expected.signed))
        if seen:
            old = self.expected.signed[seen[which % len(seen)]]
            if old.kind in ("area", "walk"):
                token = phone.store.saved.get(old.digest) or phone.store.known[old.digest]
                self.save(phone, old.kind, old.job, str(parse(token).payload["subject"]), {}, [old.digest])

    @rule(pick=PICK, job=PICK, size=SIZES, number=st.integers(0, 2))
    def photograph(self, pick, job, size, number):
        """Bytes and the entry that names them; now and then two people hold the same picture."""
        phone, job = self.a_phone(pick), self.jobs[job % 2]
        data = bytes([number]) * size
        name = job, hashlib.sha256(data).hexdigest()
        self.lengths[name] = size
        phone.store.pictures.setdefault(name, Picture(data))
        self.save(phone, "photo", job, name[1], {"sha256": name[1], "size": size}, [])
        COUNTED["photos saved"] += 1

    @rule(pick=PICK, what=st.sampled_from(["backed up", "backed up", "put back", "put back", "copied", "wiped"]))
    def somebody_does_to_the_phone(self, pick, what):
        phone = self.a_phone(pick)
        if what == "backed up":
            phone.keep_backup()
        elif what == "put back" and phone.backup is not None:
            # What it saved since is gone from it by hand; what it says now takes numbers used before.
            self.gone(phone, set(phone.store.saved) - set(phone.backup.saved))
            phone.set_back()
            COUNTED["backups put back"] += 1
        elif what == "copied" and len(self.phones) < MOST_PHONES:
            self.phones.append(phone.twin())
            COUNTED["phones copied"] += 1
        elif what == "wiped":
            self.gone(phone, set(phone.store.saved))
            phone.renew(self.next_number())
            COUNTED["phones wiped"] += 1

    def gone(self, phone, digests):
        """Erased by hand unless another copy of the phone still has it; it may be on its way all the same."""
        elsewhere = {one for other in self.everybody() if other is not phone for one in other.store.saved}
        self.erased |= digests - elsewhere
