"""Limits keep a server's disk, and never strand a phone."""

import os

import pytest

from inspect_app.intake.uploads_caps import DAY, Caps
from tests.intake.test_uploads import refusal
from tests.intake.upload_bench import OTHER_PHONE, PHONE, PHOTO, Bench


def test_a_photo_over_the_limit_is_refused_before_its_first_byte(tmp_path):
    bench = Bench(tmp_path, Caps(photo=1000))
    refused = refusal(bench.create, length=1001)
    assert (refused.code, refused.value, refused.facts["most"]) == ("upload_too_large", "1001", 1000)
    assert bench.create(PHOTO[:1000]).offset == 0


def test_unfinished_uploads_of_a_device_are_limited_in_number_and_finishing_one_makes_room(tmp_path):
    bench = Bench(tmp_path, Caps(unfinished=3))
    photos = [PHOTO[at:] for at in range(4)]
    made = [bench.create(photo) for photo in photos[:3]]
    assert refusal(bench.create, photos[3]).code == "upload_too_many"
    assert bench.create(photos[0]) == made[0]  # what was begun can be continued
    assert bench.create(photos[3], device=OTHER_PHONE).offset == 0
    bench.patch(made[0].id, 0, photos[0])
    assert bench.create(photos[3]).offset == 0


def test_unfinished_uploads_of_a_device_are_limited_in_the_bytes_they_declare(tmp_path):
    bench = Bench(tmp_path, Caps(bytes=2 * len(PHOTO)))
    bench.create(PHOTO)
    assert refusal(bench.create, PHOTO + b"?").code == "upload_too_many_bytes"
    assert bench.create(PHOTO[1:]).offset == 0


@pytest.mark.parametrize(("days", "left"), [(6.9, True), (7.1, False)])
def test_an_upload_nobody_continued_for_a_week_is_swept_whole(tmp_path, days, left):
    bench = Bench(tmp_path)
    made = bench.create()
    bench.patch(made.id, 0, PHOTO[:10])
    for file in bench.folder.glob("*/*.*"):
        os.utime(file, (bench.time - days * DAY,) * 2)
    assert bench.uploads.sweep() == 0  # it swept within the hour, when the upload was made
    bench.time += 3601
    for file in bench.folder.glob("*/*.*"):
        os.utime(file, (bench.time - days * DAY,) * 2)
    assert bench.uploads.sweep() == (0 if left else 1)
    endings = sorted(file.suffix for file in bench.folder.glob("*/*.*"))
    if left:
        assert endings == [".json", ".part", ".turn"] and bench.uploads.head(PHONE, made.id).offset == 10
    else:
        assert endings == [] and refusal(bench.uploads.head, PHONE, made.id).code == "upload_unknown"


def test_what_a_crash_left_without_a_declaration_is_swept_too(tmp_path):
    bench = Bench(tmp_path)
    folder = bench.folder / "somebody"
    folder.mkdir()
    for ending in ("part", "turn", "new"):
        file = folder / f"{'0' * 32}.{ending}"
        file.write_bytes(b"half")
        os.utime(file, (bench.time - 8 * DAY,) * 2)
    assert bench.uploads.sweep() == 1
    assert list(folder.iterdir()) == []
