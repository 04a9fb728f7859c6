"""Limits keep a server's disk, and never strand a phone."""

import os
import re
from pathlib import Path

import pytest

from inspect_app.intake.uploads_caps import DAY, DEFAULT_CAPS, Caps
from tests.intake.receiving import OTHER_PHONE, PHONE, PHOTO, Receiving
from tests.intake.test_uploads import refusal


def test_a_photo_over_the_limit_is_refused_before_its_first_byte(tmp_path):
    receiving = Receiving(tmp_path, Caps(photo=1000))
    refused = refusal(receiving.create, length=1001)
    assert (refused.code, refused.value, refused.facts["most"]) == ("upload_too_large", "1001", 1000)
    assert receiving.create(PHOTO[:1000]).offset == 0


def test_a_phone_keeps_no_photo_that_the_office_would_not_take():
    chunks = (Path(__file__).parents[2] / "static" / "photo" / "chunks.js").read_text("utf-8")
    limit = re.search(r"PHOTO_LIMIT = ([0-9_]+)", chunks)
    assert limit and int(limit[1].replace("_", "")) == DEFAULT_CAPS.photo


def test_unfinished_uploads_of_a_device_are_limited_in_number_and_finishing_one_makes_room(tmp_path):
    receiving = Receiving(tmp_path, Caps(unfinished=3))
    photos = [PHOTO[at:] for at in range(4)]
    made = [receiving.create(photo) for photo in photos[:3]]
    assert refusal(receiving.create, photos[3]).code == "upload_too_many"
    assert receiving.create(photos[0]) == made[0]  # what was begun can be continued
    assert receiving.create(photos[3], device=OTHER_PHONE).offset == 0
    receiving.patch(made[0].id, 0, photos[0])
    assert receiving.create(photos[3]).offset == 0


def test_unfinished_uploads_of_a_device_are_limited_in_the_bytes_they_declare(tmp_path):
    receiving = Receiving(tmp_path, Caps(bytes=2 * len(PHOTO)))
    receiving.create(PHOTO)
    assert refusal(receiving.create, PHOTO + b"?").code == "upload_too_many_bytes"
    assert receiving.create(PHOTO[1:]).offset == 0


@pytest.mark.parametrize(("days", "left"), [(6.9, True), (7.1, False)])
def test_an_upload_nobody_continued_for_a_week_is_swept_whole(tmp_path, days, left):
    receiving = Receiving(tmp_path)
    made = receiving.create()
    receiving.patch(made.id, 0, PHOTO[:10])
    for file in receiving.folder.glob("*/*.*"):
        os.utime(file, (receiving.time - days * DAY,) * 2)
    assert receiving.uploads.sweep() == 0  # it swept within the hour, when the upload was made
    receiving.time += 3601
    for file in receiving.folder.glob("*/*.*"):
        os.utime(file, (receiving.time - days * DAY,) * 2)
    assert receiving.uploads.sweep() == (0 if left else 1)
    endings = sorted(file.suffix for file in receiving.folder.glob("*/*.*"))
    if left:
        assert endings == [".json", ".part", ".turn"] and receiving.uploads.head(PHONE, made.id).offset == 10
    else:
        assert endings == [] and refusal(receiving.uploads.head, PHONE, made.id).code == "upload_unknown"


def test_what_a_crash_left_without_a_declaration_is_swept_too(tmp_path):
    receiving = Receiving(tmp_path)
    folder = receiving.folder / "somebody"
    folder.mkdir()
    for ending in ("part", "turn", "new"):
        file = folder / f"{'0' * 32}.{ending}"
        file.write_bytes(b"half")
        os.utime(file, (receiving.time - 8 * DAY,) * 2)
    assert receiving.uploads.sweep() == 1
    assert list(folder.iterdir()) == []
