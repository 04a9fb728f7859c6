"""What a revoked phone had not sent is kept apart, its photos too, and an administrator's entry lets it in."""

import base64
import hashlib

import pytest
from sqlalchemy import event

from inspect_app.entry.format import parse
from inspect_app.store.database import db

PHOTO = b"a photograph that was still on the phone"
SHA = hashlib.sha256(PHOTO).hexdigest()


class Lost:
    """A foreman's phone that was revoked with work on it: a walk, a station and a photo."""

    def __init__(self, office):
        self.office = office
        self.job, self.chief = office.job()
        self.fay = office.phone("fay", "foreman", self.job)
        self.tokens = office.walk(self.fay, self.job, SHA)
        with office.app.app_context():
            office.parts.devices.revoke(self.fay.kid, "server")

    def digests(self):
        return [parse(token).digest for token in self.tokens]

    def admit(self, *digests, phone=None, job=None):
        phone = phone or self.chief
        return phone.send(*(phone.entry("admission", job or self.job, one, {"entry": one}) for one in digests))

    def upload(self, phone=None, data=PHOTO):
        phone = phone or self.fay
        told = {"job": self.job, "sha256": hashlib.sha256(data).hexdigest(), "type": "image/jpeg"}
        metadata = ",".join(f"{name} {base64.b64encode(value.encode()).decode()}" for name, value in told.items())
        return phone.client.post("/api/photos", data=data, headers=phone.bearer | {
            "Tus-Resumable": "1.0.0", "Upload-Length": str(len(data)), "Upload-Metadata": metadata,
            "Content-Type": "application/offset+octet-stream",
        })  # fmt: skip

    def receipt(self):
        asked = {"job": self.job, "sha256": SHA}
        return self.fay.client.get("/api/photos/receipt", query_string=asked, headers=self.fay.bearer)

    def listed(self):
        return self.chief.client.get(f"/api/jobs/{self.job}/quarantine").json

    def record(self):
        with self.office.app.app_context():
            return self.office.parts.records.record(self.job)


@pytest.fixture
def lost(office):
    return Lost(office)


@pytest.fixture
def any_lost(any_office):
    """On each database that Seamwalk runs on: where it decides."""
    return Lost(any_office)


def statuses(reply):
    return [one["status"] for one in reply.json["answers"]]


def test_it_is_listed_with_whose_it_is_and_what_it_names(lost):
    assert statuses(lost.fay.send(*lost.tokens)) == ["quarantined"] * 4
    assert lost.upload().status_code == 201
    rows = {row["kind"]: row for row in lost.listed()}
    assert rows.keys() == {"walk", "station", "photo", "signoff"} and rows["walk"]["who"] == "fay (invented)"
    assert (rows["photo"]["photos"], rows["photo"]["held"], rows["walk"]["photos"]) == (1, 1, 0)
    assert lost.record()["walks"] == {}


def test_let_in_it_has_its_receipt_counts_in_the_record_and_is_marked_with_by_whom(any_lost):
    any_lost.fay.send(*any_lost.tokens)
    assert statuses(any_lost.admit(*any_lost.digests())) == ["accepted"] * 4
    record = any_lost.record()
    marked = {flag["digest"] for flag in record["flags"] if flag["code"] == "admitted"}
    assert len(record["walks"]) == 1 and marked == set(any_lost.digests()) and any_lost.listed() == []
    again = any_lost.fay.send(*any_lost.tokens).json["answers"]
    assert [one["status"] for one in again] == ["duplicate"] * 4 and all(one["receipt"] for one in again)
    steps = any_lost.chief.client.get(f"/api/jobs/{any_lost.job}/trail").json
    assert [one["what"] for one in steps[:4]] == ["admitted"] * 4 and any_lost.office.told[-1] == any_lost.job


def test_let_in_again_nothing_changes(lost):
    lost.fay.send(*lost.tokens)
    lost.admit(lost.digests()[0])
    before = lost.record()["walks"]
    assert statuses(lost.admit(lost.digests()[0])) == ["accepted"] and lost.record()["walks"] == before
    with lost.office.app.app_context():
        assert len(lost.office.parts.reading.job_entries(lost.job, "walk")) == 1


def test_an_admission_may_come_before_its_entry(lost):
    assert statuses(lost.admit(*lost.digests())) == ["accepted"] * 4
    assert statuses(lost.fay.send(*lost.tokens)) == ["accepted"] * 4 and lost.listed() == []


def test_its_photos_come_in_with_it_or_after_it(any_lost):
    any_lost.fay.send(*any_lost.tokens)
    assert any_lost.upload().status_code == 201 and any_lost.receipt().json["error"]["code"] == "photo_kept_apart"
    seen = {"query_string": {"job": any_lost.job}, "headers": any_lost.chief.bearer}
    assert any_lost.chief.client.get(f"/photos/{SHA}", **seen).status_code == 404
    any_lost.admit(*any_lost.digests())
    assert any_lost.chief.client.get(f"/photos/{SHA}", **seen).data == PHOTO
    assert any_lost.receipt().json["receipt"]


def test_a_photo_that_comes_after_its_entry_was_let_in_is_taken_at_once(lost):
    lost.admit(*lost.digests())
    lost.fay.send(*lost.tokens)
    assert lost.upload().headers["Seamwalk-Receipt"] == lost.receipt().json["receipt"]


@pytest.mark.parametrize("who", ["foreman", "inspector", "owner"])
def test_nobody_else_lets_anything_in(lost, who):
    lost.fay.send(*lost.tokens)
    other = lost.office.phone(who, who, lost.job)
    assert statuses(lost.admit(*lost.digests(), phone=other)) == ["accepted"] * 4  # kept, and flagged
    assert len(lost.listed()) == 4 and lost.record()["walks"] == {}
    assert "no_authority" in {flag["code"] for flag in lost.record()["flags"]}


def test_nor_an_administrator_of_another_job_or_of_a_part_of_this_one(lost):
    lost.fay.send(*lost.tokens)
    elsewhere, other = lost.office.job()
    assert statuses(lost.admit(*lost.digests(), phone=other, job=elsewhere)) == ["accepted"] * 4
    part = lost.office.phone("part", "administrator", lost.job)
    with lost.office.app.app_context():
        firm = lost.office.app.extensions["office"].firms.join(lost.job, "Dunlin (invented)", "sub", [])
        lost.office.parts.membership.place(part.person.id, lost.job, firm.id)
    lost.admit(*lost.digests(), phone=part)
    assert len(lost.listed()) == 4
    assert lost.chief.client.get(f"/api/jobs/{elsewhere}/quarantine").status_code == 404


def test_what_the_revoked_key_says_of_a_job_that_is_not_its_own_is_not_offered_there(lost):
    elsewhere, other = lost.office.job()
    lost.fay.send(lost.fay.entry("walk", elsewhere))
    assert other.client.get(f"/api/jobs/{elsewhere}/quarantine").json == []


def test_the_revoked_key_cannot_let_itself_in(lost):
    with lost.office.app.app_context():
        lost.office.parts.devices.revoke(lost.chief.kid, "server")
    lost.fay.send(*lost.tokens)
    assert statuses(lost.admit(*lost.digests())) == ["quarantined"] * 4 and lost.record()["walks"] == {}


def test_a_revoked_phone_reads_nothing_and_its_person_s_sign_ins_end(lost):
    assert lost.fay.pull().status_code == 403
    assert lost.fay.client.get("/api/jobs", headers=lost.fay.bearer).status_code == 403
    lost.office.clock.forward(seconds=1)
    nan = lost.office.phone("nan", "inspector", lost.job)
    assert nan.client.get("/api/jobs").status_code == 200
    lost.office.clock.forward(seconds=1)
    with lost.office.app.app_context():
        lost.office.parts.devices.revoke(nan.kid, "server")
    assert nan.client.get("/api/jobs").status_code == 401
    assert nan.sign_in("a-password-for-tests").status_code == 200 and nan.client.get("/api/jobs").status_code == 200


def test_who_ends_a_phone_of_their_own_stays_signed_in_where_they_did(lost):
    nan = lost.office.phone("nan", "inspector", lost.job)
    lost.office.clock.forward(seconds=1)
    reply = nan.client.delete(f"/api/devices/{nan.kid}", headers={"X-Seamwalk-Csrf": nan.csrf})
    assert reply.status_code == 200 and nan.client.get("/api/jobs").status_code == 200


def test_phones_are_listed_with_last_contact_and_what_is_unsent_of_this_job(lost):
    nan = lost.office.phone("nan", "inspector", lost.job)
    elsewhere, _ = lost.office.job()
    unsent = (("entry", lost.job), ("entry", lost.job), ("photo", lost.job), ("entry", elsewhere))
    items = [{"what": what, "job": job, "name": f"n{n}", "size": 1} for n, (what, job) in enumerate(unsent)]
    lost.office.clock.forward(hours=1)
    told = {"items": items, "oldest": "2026-11-25T07:00:00.000-05:00"}
    nan.client.post("/api/manifest", json=told, headers=nan.bearer)
    rows = {row["kid"]: row for row in lost.chief.client.get(f"/api/jobs/{lost.job}/devices").json}
    told = {"entries": 2, "photos": 1, "oldest": "2026-11-25T07:00:00.000-05:00"}
    assert rows[nan.kid]["unsent"].items() >= told.items()
    assert rows[nan.kid]["last_contact"] > rows[lost.chief.kid]["last_contact"]
    assert rows[lost.fay.kid]["revoked_at"] and rows[lost.chief.kid]["unsent"] is None
    headers = {"X-Seamwalk-Csrf": lost.chief.csrf}
    lost.chief.client.post(f"/api/devices/{nan.kid}", json={"name": "the white one"}, headers=headers)
    own = nan.client.get(f"/api/jobs/{lost.job}/devices").json
    assert [(row["kid"], row["name"]) for row in own] == [(nan.kid, "the white one")]


def test_what_arrived_since_a_phone_told_of_it_is_no_longer_said_to_be_on_it(lost):
    nan = lost.office.phone("nan", "inspector", lost.job)
    data = b"another photograph"
    here, still = lost.office.walk(nan, lost.job, hashlib.sha256(data).hexdigest())[:2]
    named = [("entry", parse(token).digest) for token in (here, still)]
    items = [{"what": what, "job": lost.job, "name": name, "size": 1}
             for what, name in [*named, ("photo", hashlib.sha256(data).hexdigest())]]  # fmt: skip
    nan.client.post("/api/manifest", json={"items": items, "oldest": None}, headers=nan.bearer)

    def unsent():
        rows = lost.chief.client.get(f"/api/jobs/{lost.job}/devices").json
        return next((row["unsent"]["entries"], row["unsent"]["photos"]) for row in rows if row["kid"] == nan.kid)

    assert unsent() == (2, 1)
    assert statuses(nan.send(here)) == ["accepted"] and unsent() == (1, 1)
    lost.upload(nan, data)
    assert unsent() == (1, 0)
    assert statuses(nan.send(still)) == ["accepted"] and unsent() == (0, 0)


def test_a_thousand_entries_kept_apart_are_listed_by_no_more_questions_than_one(lost):
    asked = []
    with lost.office.app.app_context():
        event.listen(db.engine, "before_cursor_execute", lambda *args: asked.append(args[2]))
    counts = []
    for more in (1, 30):
        lost.fay.send(*(lost.fay.entry("walk", lost.job) for _ in range(more)))
        asked.clear()
        lost.listed()
        counts.append(len(asked))
    assert len(lost.listed()) == 31 and counts[0] == counts[1]
