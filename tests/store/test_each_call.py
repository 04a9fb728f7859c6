"""Whatever call of the server fails, once and in whichever way: no receipt for what is not held, words for the phone,
and the same requests, sent again, end as if nothing had happened."""

import hashlib
import random
import shutil
from types import SimpleNamespace

import pytest

from inspect_app.store.database import db
from inspect_app.upkeep.check import check
from tests.office import Office
from tests.phone import Phone
from tests.seed import chance
from tests.store.each_call import Calls, counted, ways_of
from tests.upload_headers import metadata_of, piece_at

PHOTO = random.Random(9).randbytes(90_000)
SHA = hashlib.sha256(PHOTO).hexdigest()
HALF = 50_000


@pytest.fixture(scope="module")
def begun(tmp_path_factory):
    """An office with a job and a foreman, and what he is about to send; ``kept`` is its folder, for each fault anew."""
    folder = tmp_path_factory.mktemp("each") / "data"
    office = Office(folder)
    job, _ = office.job(definitions={})  # none is kept here that it could go by
    fay = office.phone("fay", "foreman", job)
    *first, last = office.walk(fay, job, SHA)
    closed(office)
    kept = shutil.copytree(folder, folder.with_name("kept"))
    return SimpleNamespace(office=office, kept=kept, job=job, fay=fay, first=first, last=last)


class Sender:
    """A phone that notes every receipt it is given, and every answer that is none of the protocol."""

    def __init__(self, begun):
        self.job, self.begun, self.phone = begun.job, begun, Phone(begun.office.client(), begun.fay.person)
        self.phone.key, self.phone.jwk, self.phone.kid = begun.fay.key, begun.fay.jwk, begun.fay.kid
        self.receipts, self.wrong = {}, []

    def everything(self):
        """All of it once, in the order a phone sends it; whether all of it was answered well."""
        first, last = self.begun.first, [self.begun.last]
        return all([self.token(), self.entries(first), self.photo(), self.entries(last), self.asked()])

    def token(self):
        return self.fine(self.phone.get_token())

    def entries(self, tokens):
        reply = self.phone.send(*tokens)
        if self.fine(reply):
            for answer in reply.json["answers"]:
                assert answer["status"] in ("accepted", "duplicate"), answer
                self.told(answer["digest"], answer["receipt"])
        return reply.status_code == 200

    def photo(self):
        declared = {"Upload-Length": str(len(PHOTO)), "Upload-Metadata": metadata_of(self.job, SHA)}
        made = self.tus("post", "/api/photos", declared)
        if made.status_code != 201:
            return False
        at = made.headers["Location"]
        for end in (HALF, len(PHOTO)):
            stands = self.tus("head", at, {})
            if stands.status_code != 200:
                return False
            offset = int(stands.headers["Upload-Offset"])
            if offset < end:
                piece = PHOTO[offset:end]
                if self.tus("patch", at, piece_at(offset, piece), piece).status_code != 204:
                    return False
        return True

    def asked(self):
        asked = {"job": self.job, "sha256": SHA}
        reply = self.phone.client.get("/api/photos/receipt", query_string=asked, headers=self.phone.bearer)
        if reply.status_code == 200:
            self.told(SHA, reply.json["receipt"])
        return reply.status_code == 200 or not self.fine(reply)

    def tus(self, method, path, headers, data=None):
        reply = getattr(self.phone.client, method)(
            path, data=data, headers={"Tus-Resumable": "1.0.0", **headers, **self.phone.bearer}
        )
        if reply.headers.get("Seamwalk-Receipt"):
            self.told(SHA, reply.headers["Seamwalk-Receipt"])
        if reply.status_code >= 300 and method != "head":
            self.fine(reply)
        return reply

    def told(self, name, receipt):
        assert self.receipts.setdefault(name, receipt) == receipt, "two receipts for one thing"

    def fine(self, reply):
        if reply.status_code < 300:
            return True
        error = (reply.json or {}).get("error", {})
        if reply.status_code == 500 or not (error.get("message") and error.get("way_out")):
            self.wrong.append((reply.status_code, error.get("code")))
        return False


def closed(office):
    with office.app.app_context():
        db.engine.dispose()


def fresh(begun):
    """The office as it was before anything was sent."""
    closed(begun.office)
    shutil.rmtree(begun.office.settings.data)
    shutil.copytree(begun.kept, begun.office.settings.data)
    return begun.office


def all_calls(begun):
    with counted(fresh(begun), Calls()) as calls:
        assert Sender(begun).everything()
    return calls.seen


def points(seen):
    return [(at, way) for at, name in enumerate(seen) for way in ways_of(name)]


def held_after(begun, at, way):
    """One fault, and the same requests again. What went wrong, in words; empty where nothing did."""
    office, sender = fresh(begun), Sender(begun)
    with counted(office, Calls(at, way)) as calls:
        sender.everything()
    name = calls.seen[at] if at < len(calls.seen) else "none"
    where, wrong = f"call {at} ({name}) {way}", [f"answered {answer}" for answer in sender.wrong]
    after = Sender(begun)
    after.receipts = dict(sender.receipts)
    found = check(office.settings.data, office.settings.database_url)
    with office.app.app_context():
        given = set(office.parts.reading.receipts(begun.job))
    wrong += [f"a receipt for what is not held: {lost}" for lost in set(sender.receipts.values()) - given]
    wrong += [f"check: {one.code} {one.where}" for one in found.faults]
    if not after.everything() or len(after.receipts) != 5:
        wrong.append(f"the same requests again did not end well: {after.wrong} {len(after.receipts)}")
    found = check(office.settings.data, office.settings.database_url)
    wrong += [f"check afterwards: {one.code}" for one in found.faults]
    return [f"{where}: {one}" for one in wrong]


def test_a_few_calls_failing_once_lose_nothing_and_give_no_false_receipt(begun):
    seen = all_calls(begun)
    assert len(seen) > 150 and {"db.commit", "db.execute", "disk.sync", "disk.rename", "open"} <= set(seen)
    chosen = chance("each server call").sample(points(seen), 8)
    assert [held_after(begun, at, way) for at, way in chosen] == [[]] * 8


@pytest.mark.soak
def test_every_call_failing_once_in_every_way_loses_nothing_and_gives_no_false_receipt(begun):
    seen = all_calls(begun)
    wrong = [one for at, way in points(seen) for one in held_after(begun, at, way)]
    print(f"every server call failed once: {len(seen)} calls, {len(points(seen))} points, {len(wrong)} failures")
    assert wrong == []
