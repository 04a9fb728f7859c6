"""What people do about phones: keys enrolled, ended and let in again, jobs joined, sign-ins that fail or end."""

import json

from hypothesis import strategies as st
from hypothesis.stateful import rule

from inspect_app.store.rebuild import rebuild
from tests.state.machine import COUNTED, PICK, SEED, Machine


class People(Machine):
    @rule(pick=PICK, what=st.sampled_from(["enrolled", "new key", "revoked", "joins"]), job=PICK)
    def a_key_or_a_job_of_somebody(self, pick, what, job):
        phone = self.a_phone(pick)
        known, ended = phone.kid in self.expected.enrolled, phone.kid in self.expected.revoked
        if what == "enrolled" and not known:
            self.enrolled(phone)
        elif what == "new key" and ended:
            # What it holds is kept on the copy: a phone sends what its older keys have signed, too.
            self.phones.append(phone.twin())
            phone.renew(self.next_number())
            self.enrolled(phone)
        elif what == "revoked" and known:
            self.revoke(phone)
        elif what == "joins":
            with self.server.app.app_context():
                self.server.parts.membership.join(phone.person.id, self.jobs[job % 2])
            joined = self.expected.members[self.jobs[job % 2]]
            if phone.person.id not in joined:
                joined.add(phone.person.id)
                for one in self.everybody():  # whoever has just joined fetches that job from its beginning
                    one.store.cursor = 0 if one.person.id == phone.person.id else one.store.cursor

    def revoke(self, phone):
        if self.chief.bearer or self.token(self.chief):
            reply = self.server.ask("DELETE", f"/api/devices/{phone.kid}", _bearer(self.chief))
            if reply.status_code == 401:
                self.chief.bearer = ""
                return
            assert reply.status_code == 200, reply.json
            self.expected.revoked.add(phone.kid)
            COUNTED["phones revoked"] += 1

    @rule(which=SEED, who=st.integers(0, 3))
    def somebody_lets_in_what_is_or_will_be_kept_apart(self, which, who):
        """Of an administrator it counts; of anybody else it is kept and lets nothing in."""
        signed = self.expected.signed
        of_revoked = sorted(one for one in signed if signed[one].kid in self.expected.revoked)
        if of_revoked:
            digest = of_revoked[which % len(of_revoked)]
            phone = self.chief if who else self.a_phone(which)
            self.save(phone, "admission", signed[digest].job, digest, {"entry": digest}, [])
            if phone is self.chief and (phone.bearer or self.token(phone)):
                self.deliver(phone, phone.batch(phone.unsent()))
                COUNTED["admissions"] += 1

    @rule(pick=PICK, password=st.sampled_from(["", "wrong", "a-password-for-tests"]))
    def a_sign_in_fails_and_it_tells_what_is_unsent(self, pick, password):
        """No sign-in, and none that fails, touches a delivery; the office hears job by job what is still on a phone."""
        phone, client = self.a_phone(pick), self.server.app.test_client()
        csrf = {"X-Seamwalk-Csrf": client.get("/api/session").json["csrf"]}
        asked = {"login": phone.person.login, "password": password}
        reply = client.post("/api/session", json=asked, headers=csrf)
        assert reply.status_code in ((200, 429) if password.startswith("a-") else (400, 401, 429))
        if phone.bearer or self.token(phone):
            self.tell_what_is_unsent(phone)

    def tell_what_is_unsent(self, phone):
        unsent = [("entry", self.expected.signed[one].job, one) for one in phone.unsent()]
        unsent += [("photo", job, sha256) for job, sha256 in phone.unsent_pictures()]
        items = [{"what": what, "job": job, "name": name, "size": 1} for what, job, name in unsent]
        body = json.dumps({"items": items, "oldest": None}).encode()
        reply = self.server.ask("POST", "/api/manifest", {**_bearer(phone), "Content-Type": "application/json"}, body)
        if reply.status_code == 401:
            phone.bearer = ""
            return
        assert reply.status_code == 200, reply.json
        with self.server.app.app_context():
            kept = self.server.parts.manifests.of([phone.kid])
        assert [[one["name"] for one in told.items] for told in kept] == [[one["name"] for one in items]]

    @rule()
    def what_is_derived_is_made_again(self):
        with self.server.app.app_context():
            rebuild(self.server.parts.transactions, self.server.parts.records)


def _bearer(phone):
    return {"Authorization": f"Bearer {phone.bearer}"}
