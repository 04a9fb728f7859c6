"""The stored zip file: read by Python's reader and by Info-ZIP's, from any byte on, beyond the old limits too."""

import random
import shutil
import subprocess
import tracemalloc
import zipfile
from pathlib import Path

import pytest

from inspect_app.package.bag import Bag
from inspect_app.package.member import Member
from inspect_app.package.stored_zip import StoredZip
from inspect_app.package.zip_file import ZipFile
from tests.package.packages import MADE, made_up, opened, zipped

FILES = {"a.jpg": b"", "b.jpg": b"x", "c.jpg": random.Random(3).randbytes(700_000), "d.pdf": b"%PDF" * 9}


@pytest.fixture
def bag(tmp_path):
    return made_up(tmp_path, FILES)


def test_another_reader_finds_every_member_whole_below_one_folder(bag):
    with opened(zipped(bag)) as archive:
        assert archive.testzip() is None
        assert archive.namelist() == [f"made-up/{one.name}" for one in bag.members]
        assert {name: archive.read(f"made-up/data/{name}") for name in FILES} == FILES
        for one in archive.infolist():
            assert one.compress_type == zipfile.ZIP_STORED and one.date_time == (2026, 11, 27, 9, 30, 14)
            assert one.external_attr >> 16 == 0o100644


@pytest.mark.skipif(not shutil.which("unzip"), reason="NOT RUN: Info-ZIP's unzip is not here")
def test_info_zip_takes_it_without_a_warning(bag, tmp_path):
    (tmp_path / "package.zip").write_bytes(zipped(bag))
    ran = subprocess.run(["unzip", "-q", "-d", "out", "package.zip"], cwd=tmp_path, capture_output=True, text=True)
    assert (ran.returncode, ran.stdout, ran.stderr) == (0, "", "")
    assert (tmp_path / "out" / "made-up" / "data" / "c.jpg").read_bytes() == FILES["c.jpg"]


def test_its_length_is_known_before_and_every_end_of_it_can_be_had_alone(tmp_path):
    bag = made_up(tmp_path, {"a": b"", "b": b"xyz", "c": bytes(range(40))})
    whole = zipped(bag)
    assert StoredZip(bag).size == len(whole)
    for start in range(len(whole) + 1):
        assert b"".join(StoredZip(bag).blocks(start)) == whole[start:], start


def test_as_a_file_it_gives_the_same_to_a_server_that_reads_again_what_it_could_not_send(bag):
    whole, chance = zipped(bag), random.Random(5)
    for start, stop in ((0, len(whole)), (1234, 600_001), (len(whole) - 40, len(whole))):
        file, found = ZipFile(StoredZip(bag), start, stop), bytearray()
        assert file.seek(0, 2) == stop and file.seek(start) == start
        while data := file.read(chance.choice((1, 500, 65536, 1 << 20))):
            kept = chance.randrange(len(data)) + 1 if chance.random() < 0.5 else len(data)
            found += data[:kept]
            file.seek(start + len(found))
        assert bytes(found) == whole[start:stop]


def test_a_file_that_changed_its_length_ends_the_zip_early_and_never_lies(bag):
    member = next(one for one in bag.members if one.name == "data/c.jpg")
    for data in (FILES["c.jpg"][:-1], FILES["c.jpg"] + b"!"):
        Path(str(member.source)).write_bytes(data)
        with pytest.raises(OSError):
            zipped(bag)


def test_bytes_that_changed_in_place_are_found_by_whoever_hashes(bag):
    member = next(one for one in bag.members if one.name == "data/c.jpg")
    Path(str(member.source)).write_bytes(b"\0" + FILES["c.jpg"][1:])
    with opened(zipped(bag)) as archive:
        assert archive.testzip() is None  # a checksum of what is there now says nothing of what was received
        manifest = archive.read("made-up/manifest-sha256.txt").decode()
    assert f"{member.sha256}  data/c.jpg" in manifest


def test_places_and_sizes_beyond_four_gigabytes_stand_in_the_directory_as_another_reads_it(tmp_path):
    large, small = tmp_path / "large", tmp_path / "small"
    with open(large, "wb") as out:
        out.truncate(5 << 30)  # sparse: it takes no room
    small.write_bytes(b"behind it")
    zip = StoredZip(Bag("big", MADE, [Member("large", 5 << 30, "", large), Member("small", 9, "", small)]))
    zip._crcs[0] = 0  # as if it had been read
    with zipfile.ZipFile(ZipFile(zip, 0, zip.size)) as archive:  # type: ignore[arg-type]
        assert [one.file_size for one in archive.infolist()] == [5 << 30, 9]
        assert archive.read("big/small") == b"behind it"


@pytest.mark.soak
def test_more_members_than_the_old_form_can_count_are_read(tmp_path):
    (tmp_path / "empty").write_bytes(b"")
    members = [Member(f"data/{index:05x}", 0, "", tmp_path / "empty") for index in range(65_600)]
    with opened(zipped(Bag("many", MADE, members))) as archive:
        assert len(archive.namelist()) == 65_600


@pytest.mark.soak
def test_a_member_beyond_four_gigabytes_is_read_to_its_end(tmp_path):
    with open(tmp_path / "large", "wb") as out:
        out.truncate(5 << 30)
    zip = StoredZip(Bag("big", MADE, [Member("large", 5 << 30, "", tmp_path / "large")]))
    with zipfile.ZipFile(ZipFile(zip, 0, zip.size)) as archive:  # type: ignore[arg-type]
        assert archive.testzip() is None


def test_the_memory_it_takes_does_not_grow_with_the_photos(tmp_path):
    def peak(count: int) -> int:
        bag = made_up(tmp_path, {f"{index}.jpg": bytes(1_000_000) for index in range(count)})
        tracemalloc.start()
        for _ in StoredZip(bag).blocks():
            pass
        found = tracemalloc.get_traced_memory()[1]
        tracemalloc.stop()
        return found

    assert peak(24) < peak(4) + 100_000 < 2_000_000
