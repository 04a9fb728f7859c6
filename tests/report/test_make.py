"""One job's report end to end, on a whole server: numbered, never edited, superseded, verified."""

import hashlib
import json
import os
from concurrent.futures import ThreadPoolExecutor

import pytest

from inspect_app.evidence.verify import verify
from inspect_app.store.vault_disk import Disk
from inspect_app.web.reports_desk import maker
from tests.office import Office
from tests.phone import new_uuid
from tests.report.sample_pictures import picture


@pytest.fixture
def office(tmp_path):
    return Office(tmp_path / "data")


def walked(office, photo=None):
    """A small signed walk of four entries, or five with a photo, on a job with one area."""
    job, chief = office.job()
    foreman = office.phone("fay", "foreman", job)
    assembly, area, walk, station = (new_uuid() for _ in range(4))
    accept(chief, chief.entry("assembly", job, assembly), chief.entry("area", job, area, {"assembly": assembly}))
    definition = next(iter(office.parts.definitions.by_digest))
    tokens = [
        foreman.entry("walk", job, walk, {"definition": definition, "areas": [area], "placed": []}),
        foreman.entry("station", job, station, {"walk": walk, "area": area}),
    ]
    if photo:
        tokens.append(foreman.entry("photo", job, photo, {"walk": walk, "station": station, "sha256": photo}))
    accept(foreman, *tokens, foreman.entry("signoff", job, walk, {"walk": walk}))
    return job, foreman


def accept(phone, *tokens):
    assert {answer["status"] for answer in phone.send(*tokens).json["answers"]} == {"accepted"}


def make(office, job, **options):
    with office.app.app_context():
        return maker().make(job, **options)


def keep_photo(office, job, data):
    name = hashlib.sha256(data).hexdigest()
    with office.app.app_context():
        office.parts.vault.put([data], name)
        office.parts.log.receive_photo(job, name, len(data), "image/jpeg")
    return name


def test_a_report_is_sealed_verified_and_lies_beside_its_contents(office):
    job, _ = walked(office)
    made = make(office, job)
    found = verify(
        made.shelved.pdf.read_bytes(), made.contents["hashes"]["fingerprint"], made.shelved.contents_file.read_bytes()
    )
    open_ones = {fact.name for fact in found.facts if fact.status == "not_determinable"}
    assert not found.failed and "time_stamped" in open_ones and open_ones <= {"time_stamped", "server_known"}
    assert sorted(os.listdir(made.shelved.pdf.parent)) == ["contents-0001.json", "report-0001.pdf"]
    assert made.contents["number"] == 1 and made.contents["final"] is True
    assert json.loads(made.shelved.contents_file.read_bytes()) == made.contents


def test_the_log_s_head_and_every_key_s_head_are_sealed(office):
    job, foreman = walked(office)
    told = make(office, job).contents["hashes"]
    with office.app.app_context():
        receipts = office.parts.reading.receipts(job)
    assert told["server_kid"] == office.parts.server_key.kid
    assert told["head_seq"] is not None and len(receipts) == 6
    mine = next(key for key in told["keys"] if key["kid"] == foreman.kid)
    assert (mine["count"], mine["person"]) == (3, "fay (invented)")


def test_asked_again_with_nothing_new_it_is_the_same_report(office):
    job, _ = walked(office)
    first = make(office, job)
    again = make(office, job)
    assert again.new is False
    assert again.shelved.pdf == first.shelved.pdf
    assert len(os.listdir(first.shelved.pdf.parent)) == 2


def test_something_new_gets_the_next_number_and_the_old_files_stay_to_the_byte(office):
    data = picture("late")
    job, foreman = walked(office, hashlib.sha256(data).hexdigest())
    first = make(office, job)
    before = first.shelved.pdf.read_bytes()
    assert first.contents["final"] is False
    assert [one["code"] for one in first.contents["missing"]] == ["photo_missing"]
    keep_photo(office, job, data)
    second = make(office, job)
    assert (second.contents["number"], second.contents["supersedes"], second.contents["final"]) == (2, 1, True)
    assert first.shelved.pdf.read_bytes() == before
    reply = foreman.client.get(f"/api/jobs/{job}/report", headers=foreman.bearer).json
    assert reply == {"state": "ready", "number": 2, "missing": []}
    served = foreman.client.get(f"/api/jobs/{job}/report.pdf", headers=foreman.bearer)
    assert served.data == second.shelved.pdf.read_bytes()


def test_a_photo_that_cannot_be_drawn_or_was_lost_by_the_disk_does_not_stop_the_report(office):
    data = b"this is no picture"
    job, _ = walked(office, hashlib.sha256(data).hexdigest())
    name = keep_photo(office, job, data)
    made = make(office, job)
    assert made.contents["photos"][0]["undecodable"] == "not_an_image"
    office.parts.vault.path(name).unlink()
    made = make(office, job)
    assert made.contents["final"] is False
    assert made.contents["photos"][0]["held"] is False


def test_many_at_once_give_one_report(office):
    job, _ = walked(office)
    with ThreadPoolExecutor(4) as pool:
        made = list(pool.map(lambda _: make(office, job), range(6)))
    assert {one.shelved.number for one in made} == {made[0].shelved.number}
    assert sum(one.new for one in made) == 1


def test_a_report_that_could_not_be_made_leaves_no_half_file_and_is_made_the_next_time(office):
    class Full(Disk):
        def rename(self, source, target):
            raise OSError(28, "No space left on device")

    job, foreman = walked(office)
    with office.app.app_context():
        shelf = maker().shelf
    shelf.disk = Full()
    with pytest.raises(OSError):
        make(office, job)
    assert foreman.client.get(f"/api/jobs/{job}/report", headers=foreman.bearer).json["state"] == "failed"
    assert foreman.client.get(f"/api/jobs/{job}/report.pdf", headers=foreman.bearer).status_code == 404
    shelf.disk = Disk()
    made = make(office, job)
    assert made.contents["number"] == 2 and made.contents["supersedes"] is None
    assert sorted(os.listdir(made.shelved.pdf.parent)) == ["contents-0002.json", "report-0002.pdf"]


def test_files_that_were_lost_or_changed_are_made_anew_under_a_new_number(office):
    job, _ = walked(office)
    first = make(office, job)
    first.shelved.pdf.unlink()
    second = make(office, job)
    assert second.new and second.shelved.number > first.shelved.number
    second.shelved.contents_file.write_bytes(b"{}")
    assert make(office, job).new


def test_paper_and_language_can_be_asked_for(office):
    job, _ = walked(office)
    make(office, job)
    other = make(office, job, paper="a4", language="es")
    assert other.new and (other.contents["paper"], other.contents["language"]) == ("a4", "es")


def test_only_people_of_the_job_see_its_report(office):
    job, _ = walked(office)
    make(office, job)
    stranger = office.phone("sam", "foreman")
    for call in ("report", "report.pdf"):
        assert stranger.client.get(f"/api/jobs/{job}/{call}", headers=stranger.bearer).status_code == 404
        assert office.client().get(f"/api/jobs/{job}/{call}").status_code == 401


def test_a_job_without_a_report_says_so(office):
    job, _ = office.job()
    foreman = office.phone("fay", "foreman", job)
    reply = foreman.client.get(f"/api/jobs/{job}/report", headers=foreman.bearer).json
    assert reply == {"state": "none", "number": None, "missing": []}
    assert (
        foreman.client.get(f"/api/jobs/{job}/report.pdf", headers=foreman.bearer).json["error"]["code"] == "report_none"
    )
