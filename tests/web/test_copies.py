"""The office's route for saved copies, past what the matrix asks: parts, names, the trail, limits."""

import errno

import pytest

from inspect_app.web import copies
from tests.copies import files_of, item, manifest, sha, tar
from tests.office import Office

PICTURE = b"\xff\xd8\xff a picture, invented"
TAR = {"Content-Type": "application/x-tar"}


@pytest.fixture
def given(office: Office):
    job, chief = office.job()
    phone = office.phone("ann", "foreman", job)
    files = files_of(office.walk(phone, job, sha(PICTURE)), [(job, PICTURE)], phone)

    def send(data: bytes, by=chief, **headers: str):
        return by.client.post("/api/copies", data=data, headers=by.bearer | TAR | headers)

    return office, job, chief, files, send


def test_parts_are_brought_one_by_one_and_each_stands_in_the_trail_of_its_job(given):
    _, job, chief, files, send = given
    first, second = send(tar(files[:5])).json, send(tar(files[5:])).json
    assert first["sealed"] and [one["status"] for one in first["items"]].count("absent") == 2
    assert second["copy"] is None and [one["status"] for one in second["items"]] == ["accepted", "accepted"]
    assert first["items"][0]["who"] == "ann (invented)" and first["items"][-1]["message"]
    steps = chief.client.get(f"/api/jobs/{job}/trail", headers=chief.bearer).json
    facts = [one["facts"] for one in steps if one["what"] == "copy_imported"]
    assert facts == [{"entries": 1, "photos": 1}, {"entries": 3, "photos": 0}]
    send(tar(files))
    again = chief.client.get(f"/api/jobs/{job}/trail", headers=chief.bearer).json
    assert len(again) == len(steps), "nothing came, nothing is told"


def test_a_list_that_names_people_of_other_jobs_learns_no_name(given):
    office, job, *_, send = given
    _, stranger = office.job()
    listed = manifest([item("entry", "a" * 43, job, 1, person=stranger.person.id)])
    told = send(tar([("manifest.json", listed), (f"seals/{stranger.kid}", files_of([], [], stranger)[1][1])]))
    assert stranger.person.name not in told.text and told.json["items"][0]["status"] == "absent"


def test_reasons_are_in_the_language_asked(given):
    *_, send = given
    said = send(tar([("manifest.json", manifest([item("entry", "a" * 43, given[1], 1)]))]), **{"Accept-Language": "es"})
    assert "no en el archivo" in said.json["items"][0]["message"]


def test_more_than_a_request_may_carry_is_refused_and_a_large_photo_is_not(given, monkeypatch):
    *_, files, send = given
    assert send(tar(files) + bytes(2 * 1024 * 1024)).status_code == 200, "over the limit of every other call"
    monkeypatch.setattr(copies, "LARGEST", 1000)
    assert send(tar(files)).status_code == 413


def test_what_came_in_before_the_disk_was_full_stands_in_the_trail_too(given, monkeypatch):
    office, job, chief, files, send = given

    def full(*_):
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(office.parts.vault, "put", full)
    assert send(tar(files)).status_code >= 500
    steps = chief.client.get(f"/api/jobs/{job}/trail", headers=chief.bearer).json
    assert [one["facts"] for one in steps if one["what"] == "copy_imported"] == [{"entries": 4, "photos": 0}]
