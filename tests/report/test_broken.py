"""A report of a job that is not whole: a draft that names what is lacking and the way out, never a crash."""

import hashlib

import pytest

from tests.office import Office
from tests.phone import new_uuid
from tests.report.laid_out import texts_of
from tests.report.sample_pictures import picture
from tests.report.test_make import accept, keep_photo, make, walked


@pytest.fixture
def office(tmp_path):
    return Office(tmp_path / "data")


def printed(made, folder):
    assert made.contents["final"] is False
    return " ".join("".join(texts_of(made.shelved.pdf.read_bytes(), folder)).split())


def codes(made):
    return [one["code"] for one in made.contents["missing"]]


def test_a_job_without_a_walk_is_a_draft_that_says_how_to_get_one(office, tmp_path):
    job, _ = office.job()
    made = make(office, job)
    assert codes(made) == ["walk_missing"]
    text = printed(made, tmp_path)
    assert "Nothing has been looked at" in text and "No walk has arrived. Open one on a phone" in text
    spanish = printed(make(office, job, language="es"), tmp_path)
    assert "No ha llegado ningún recorrido. Abra uno en un teléfono" in spanish


def test_an_open_walk_is_a_draft_that_says_who_signs_it(office, tmp_path):
    job, _ = office.job()
    foreman = office.phone("fay", "foreman", job)
    definition = next(iter(office.parts.definitions.by_digest))
    body = {"definition": definition, "areas": [], "placed": []}
    accept(foreman, foreman.entry("walk", job, new_uuid(), body))
    made = make(office, job)
    assert codes(made) == ["not_signed"]
    assert "Walk 1 has not been signed. Whoever opened it signs it on the phone" in printed(made, tmp_path)


def test_a_photo_that_has_not_arrived_is_named_with_where_it_may_be(office, tmp_path):
    name = hashlib.sha256(picture("late")).hexdigest()
    job, _ = walked(office, name)
    text = printed(make(office, job), tmp_path)
    assert "has not arrived" in text and name in text and "It may still be on the phone" in text
    assert "its bytes have not arrived" in text and "can no longer be found" not in text


def test_a_photo_that_was_received_and_then_lost_is_said_to_be_lost_with_its_hash(office, tmp_path):
    data = picture("lost")
    job, _ = walked(office, hashlib.sha256(data).hexdigest())
    name = keep_photo(office, job, data)
    assert make(office, job).contents["final"] is True
    office.parts.vault.path(name).unlink()
    made = make(office, job)
    assert codes(made) == ["photo_lost"]
    text = printed(made, tmp_path)
    assert f"was received by this server and can no longer be found there (SHA-256 {name})" in text
    assert "not arrived" not in text and "Photo 1 was received and can no longer be found on the server." in text


@pytest.mark.parametrize("damage", ["changed", "unreadable"])
def test_a_photo_that_the_disk_changed_or_cannot_read_is_not_printed_as_the_evidence(office, tmp_path, damage):
    data = picture("hurt")
    job, _ = walked(office, hashlib.sha256(data).hexdigest())
    name = keep_photo(office, job, data)
    make(office, job)
    file = office.parts.vault.path(name)
    file.chmod(0o644)
    if damage == "changed":
        file.write_bytes(data[:-2] + b"\0\0")
    else:  # what nobody can open as a file, root or not
        file.unlink()
        file.mkdir()
    made = make(office, job)
    assert codes(made) == [{"changed": "photo_damaged", "unreadable": "photo_lost"}[damage]]
    assert name in printed(made, tmp_path)
    assert made.contents["photos"][0]["held"] is False


def test_a_photo_that_is_no_picture_is_kept_and_said_not_to_be_drawn(office, tmp_path):
    data = b"this is no picture"
    job, _ = walked(office, hashlib.sha256(data).hexdigest())
    keep_photo(office, job, data)
    made = make(office, job)
    assert made.contents["final"] is True
    text = " ".join("".join(texts_of(made.shelved.pdf.read_bytes(), tmp_path)).split())
    assert "Photo 1 is kept, but it cannot be drawn: the file is no picture." in text
