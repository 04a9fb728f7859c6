"""What phones told of and never sent: named to their person and to the office, and told as late after two days."""

import io
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from inspect_app.people.unsent import Unsent, is_late
from tests.copies import files_of, sha, tar
from tests.office import PASSWORD, Office
from tests.phone import Phone

AT = "2026-11-25T16:40:05.120-05:00"


def told(phone: Phone, *items: dict[str, Any], oldest: str | None = AT) -> None:
    reply = phone.client.post("/api/manifest", json={"items": items, "oldest": oldest}, headers=phone.bearer)
    assert reply.status_code == 200


def entry(job: str, number: int = 0, **more: Any) -> dict[str, Any]:
    return {"what": "entry", "job": job, "name": f"{number:043d}", "size": 900, "kind": "answer", "at": AT, **more}


def missing(phone: Phone) -> list[Any]:
    return phone.client.get("/api/missing", headers=phone.bearer).json["phones"]


def devices(phone: Phone, job: str) -> dict[str, Any]:
    listed = phone.client.get(f"/api/jobs/{job}/devices", headers=phone.bearer).json
    return {one["kid"]: one for one in listed}


def erased(office: Office, phone: Phone) -> Phone:
    """The same person on an empty store: a key of its own, enrolled after the clock has moved."""
    office.clock.now += timedelta(minutes=5)
    again = Phone(office.client(), phone.person)
    assert again.sign_in(PASSWORD).status_code == 200 and again.enrol().status_code == 201
    assert again.get_token().status_code == 200
    return again


def test_after_its_data_were_erased_a_phone_is_told_what_the_one_before_never_sent(office):
    job, chief = office.job()
    phone = office.phone("ann", "foreman", job)
    picture = b"\xff\xd8\xff lost"
    sent, unsent = phone.entry("area", job), office.walk(phone, job, sha(picture))
    files = files_of(unsent, [(job, picture)], phone)
    ten = [entry(job, number) for number in range(10)]
    photo = {"what": "photo", "job": job, "name": sha(picture), "size": 9, "kind": "photo", "at": AT}
    names = [path.split("/")[1] for path, _ in files if path.startswith("entries/")]
    mine = [entry(job) | {"name": name} for name in names]
    phone.send(sent)
    told(phone, *ten, *mine, photo)
    assert missing(phone) == [], "its own unsent work is no news to it"
    again = erased(office, phone)
    (one,) = missing(again)
    assert one["kid"] == phone.kid and one["replaced"]
    assert (one["unsent"]["entries"], one["unsent"]["photos"]) == (14, 1)
    assert {item["name"] for item in one["unsent"]["items"]} == {item["name"] for item in [*ten, *mine, photo]}
    assert one["unsent"]["items"][0] == entry(job, 0)
    at_office = devices(chief, job)
    assert at_office[phone.kid]["replaced"] and len(at_office[phone.kid]["unsent"]["items"]) == 15
    assert not at_office[again.kid]["replaced"]
    with office.app.app_context():
        assert office.app.extensions["copies"].bring(io.BytesIO(tar(files))).whole
    (one,) = missing(again)
    assert {item["name"] for item in one["unsent"]["items"]} == {item["name"] for item in ten}, "a copy had the rest"


def test_nobody_is_told_of_another_person_s_phones(office):
    job, _ = office.job()
    ann, ben = office.phone("ann", "foreman", job), office.phone("ben", "foreman", job)
    told(ann, entry(job))
    assert missing(ben) == []
    assert ann.kid not in devices(ben, job)


def test_nobody_learns_by_a_photo_s_hash_what_a_job_holds_that_is_not_theirs(office):
    job, _ = office.job()
    mallory = office.phone("mallory", "foreman")
    photo = {"what": "photo", "job": job, "name": sha(b"one"), "size": 3}
    told(mallory, photo)
    again = erased(office, mallory)
    before = missing(again)
    with office.app.app_context():
        office.parts.log.receive_photo(job, sha(b"one"), 3, "image/jpeg")
    assert missing(again) == before and before[0]["unsent"]["items"] == [photo]
    with office.app.app_context():
        office.parts.membership.join(mallory.person.id, job)
    assert missing(again) == [], "a member is told"


def test_a_phone_that_tells_without_end_fills_neither_the_disk_nor_the_office_s_time(office, monkeypatch):
    job, _ = office.job()
    phone = office.phone("ann", "foreman", job)
    monkeypatch.setattr("inspect_app.store.manifests.MOST", 40)
    for first in range(0, 100, 10):
        items = [entry(job, number) for number in range(first, first + 10)]
        body = {"items": items, "oldest": AT, "more": True}
        assert phone.client.post("/api/manifest", json=body, headers=phone.bearer).status_code == 200
    with office.app.app_context():
        (kept,) = office.parts.manifests.of([phone.kid])
    assert [one["name"] for one in kept.items] == [entry(job, number)["name"] for number in range(60, 100)]


def test_what_was_kept_apart_has_arrived(office):
    job, chief = office.job()
    phone = office.phone("ann", "foreman", job)
    token = phone.entry("area", job)
    name = files_of([token], [], phone)[2][0].split("/")[1]
    told(phone, entry(job) | {"name": name})
    with office.app.app_context():
        office.parts.devices.revoke(phone.kid, "server")
    assert devices(chief, job)[phone.kid]["unsent"]["entries"] == 1
    phone.send(token)
    assert devices(chief, job)[phone.kid]["unsent"]["items"] == []


def test_a_photo_that_arrived_for_another_job_is_still_out_here(office):
    job, chief = office.job()
    there, _ = office.job()
    phone = office.phone("ann", "foreman", job, there)
    with office.app.app_context():
        office.parts.log.receive_photo(there, sha(b"one"), 3, "image/jpeg")
    told(phone, {"what": "photo", "job": job, "name": sha(b"one"), "size": 3})
    assert devices(chief, job)[phone.kid]["unsent"]["photos"] == 1


def overdue(phone: Phone, job: str) -> int:
    (one,) = [one for one in phone.client.get("/api/jobs", headers=phone.bearer).json["jobs"] if one["id"] == job]
    return one["overdue"]


def test_the_office_is_told_of_what_a_phone_holds_for_two_days_and_no_longer_once_it_came(office):
    job, chief = office.job()
    phone = office.phone("ann", "foreman", job)
    now = "1994" + AT[4:]  # by a clock that nobody believes
    first = phone.entry("area", job)
    name = files_of([first], [], phone)[2][0].split("/")[1]
    told(phone, entry(job, at=now) | {"name": name}, oldest=now)
    office.clock.now += timedelta(hours=47, minutes=55)
    chief.get_token(), phone.get_token()
    told(phone, entry(job, at=now) | {"name": name}, entry(job, 2, at=office.clock.now.isoformat()), oldest=now)
    assert overdue(chief, job) == 0
    office.clock.now += timedelta(minutes=10)
    assert overdue(chief, job) == 1, "counted from when the server first heard of it"
    assert overdue(phone, job) == 0, "told to who may do something about it"
    assert devices(chief, job)[phone.kid]["late"]
    phone.send(first)
    assert overdue(chief, job) == 0, "the other has been out for minutes"


def test_a_clock_that_is_years_off_makes_nothing_late_and_nothing_early(office):
    job, chief = office.job()
    phone = office.phone("ann", "foreman", job)
    for year in ("1994", "2046"):
        at = year + AT[4:]
        told(phone, entry(job, int(year), at=at), oldest=at)
        assert overdue(chief, job) == 0, year
    told(phone, entry(job, 5, at="yesterday"), oldest="yesterday")
    office.clock.now += timedelta(hours=48, minutes=1)
    chief.get_token()
    assert overdue(chief, job) == 1
    with office.app.app_context():
        office.parts.devices.revoke(phone.kid, "server")
    assert overdue(chief, job) == 0, "a phone that was given up is not asked after for ever"
    assert devices(chief, job)[phone.kid]["late"]


def test_what_was_made_two_days_ago_and_told_only_now_is_late_at_once(office):
    job, chief = office.job()
    phone = office.phone("ann", "foreman", job)
    at = (office.clock.now + timedelta(minutes=1)).isoformat()
    office.clock.now += timedelta(hours=49)
    phone.get_token(), chief.get_token()
    told(phone, entry(job, at=at), oldest=at)
    assert overdue(chief, job) == 1


@pytest.mark.parametrize("oldest", [None, "", "2026", "2026-11-25T16:40:05", "∞"])
def test_a_time_that_is_none_is_taken_for_none(oldest):
    heard = Unsent("", "2026-11-25T16:40:05.120Z", oldest, [])
    assert not is_late(heard, "2026-11-01T00:00:00Z", datetime(2026, 11, 27, 16, 40, tzinfo=UTC))
    assert is_late(heard, "2026-11-01T00:00:00Z", datetime(2026, 11, 27, 16, 41, tzinfo=UTC))


def test_a_phone_of_before_that_tells_neither_kind_nor_time_is_understood(office):
    job, chief = office.job()
    phone = office.phone("ann", "foreman", job)
    told(phone, {"what": "entry", "job": job, "name": "x" * 43, "size": 5})
    unsent = devices(chief, job)[phone.kid]["unsent"]
    assert unsent["items"] == [{"what": "entry", "job": job, "name": "x" * 43, "size": 5}] and unsent["oldest"] == AT


def test_however_many_jobs_there_are_each_phone_s_list_is_read_once(office, monkeypatch):
    jobs = [office.job()[0] for _ in range(4)]
    chief = office.phone("hugo", "administrator", *jobs)
    phone = office.phone("ann", "foreman", *jobs)
    at = office.clock.now.isoformat()
    told(phone, *(entry(job, n, at=at) for n, job in enumerate(jobs[:3])), oldest=at)
    office.clock.now += timedelta(hours=48, minutes=1)
    chief.get_token()
    manifests, read = office.parts.manifests, []
    of = manifests.of
    monkeypatch.setattr(manifests, "of", lambda kids: read.extend(kids) or of(kids))
    answer = chief.client.get("/api/jobs", headers=chief.bearer).json["jobs"]
    assert {one["id"]: one["overdue"] for one in answer} == dict(zip(jobs, [1, 1, 1, 0], strict=True))
    assert phone.kid in read and len(read) == len(set(read)), "not once for each job"
