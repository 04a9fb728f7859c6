"""A bit of any byte of a package is found and named: by its lists, and by its record where the lists fit it."""

import random
from hashlib import sha256

import pytest

from tests.evidence.attacks.found import trust, turned_archive
from tests.evidence.attacks.on_the_archive import archive
from tests.evidence.flips import BAG, HELP, Flipped, places
from tests.evidence.packed import DEFINITION, PHOTOS, bagged, job, payload, reports, sound
from tests.evidence.test_verify import flipped
from tests.phone import new_uuid

SEED = 20261125
RECORD = [name for name in sound() if name not in (*BAG, HELP) and "/reports/" not in name]
REPORTS = [name for name in sound() if "/reports/" in name]
BYTES_OF_FILES = {"bag_matches", "bag_complete"}


def some(every, count):
    return random.Random(SEED).sample(every, count)


def unfound(package, spots, needed=None):
    """Those of the bytes that nothing names; ``needed``: facts of which one has to be false. Where the lists were left,
    the very file has to be named, or, of a list, some file."""
    assert package.untouched().false == {}
    chance = random.Random(SEED)
    missed = []
    for name, at in spots:
        turned, named = package.found(name, at, chance.randrange(8))
        of_a_list = package.fitting or (name in BAG and named)
        if not turned.false or (needed and not needed & turned.false.keys()) or not (of_a_list or name in named):
            missed.append((name, at, turned, named))
    return missed


def everything():
    return [(name, at) for name, data in sound().items() for at in range(len(data))]


def test_a_flip_anywhere_is_found_by_the_lists(tmp_path):
    beside = [spot for spot in everything() if spot[0] not in REPORTS]
    spots = [*some(beside, 60), *some([spot for spot in everything() if spot[0] in REPORTS], 6)]
    assert unfound(Flipped(tmp_path, fitting=False), spots, BYTES_OF_FILES) == []


def test_a_flip_in_the_record_is_found_though_the_lists_were_made_to_fit(tmp_path):
    assert unfound(Flipped(tmp_path, fitting=True), some(places(RECORD), 60)) == []


def test_a_flip_in_a_report_is_found_though_the_lists_were_made_to_fit(tmp_path):
    found = Flipped(tmp_path, fitting=True)
    assert unfound(found, some(places(REPORTS), 8), {"reports_hold"}) == []


def test_a_flip_in_the_zip_around_the_files_is_found():
    assert unfound_in_zip(some(around(), 40)) == []


def around():
    """The bytes of the zip that are no file's: headers, descriptors, directory, end."""
    data, inside = archive(), set()
    for content in sound().values():
        at = data.index(content)
        inside |= set(range(at, at + len(content)))
    assert len(inside) == sum(map(len, sound().values())) and DEFINITION in data and PHOTOS[0] in data
    return [at for at in range(len(data)) if at not in inside]


def unfound_in_zip(spots):
    assert turned_archive(lambda data: data).false == {}
    chance, missed = random.Random(SEED), []
    for at in spots:
        changed = flipped(archive(), at, chance.randrange(8))
        found = turned_archive.__wrapped__(lambda _, changed=changed: changed)
        missed += [] if {"archive_sound", "package_readable", "bag_complete"} & found.false.keys() else [(at, found)]
    return missed


@pytest.mark.soak
@pytest.mark.parametrize("name", [*sound()])
def test_every_byte_of_every_file_is_found_by_the_lists(tmp_path, name, monkeypatch):
    """That a changed report is found by its seal has a test of its own: here each is taken as it was."""
    from tests.evidence.attacks import found

    real = found.check
    remembered = {one.file: one for one in real(found.opened(sound(), tmp_path / "before"), trust()).reports}

    def check(opened, trusted, later=None):
        def ask(work, *given):
            return remembered[given[0]] if work is found.read_report else work(*given)

        return found.check_package(opened, trusted, later, ask)

    monkeypatch.setattr("tests.evidence.flips.check", check)
    spots = [(name, at) for at in range(len(sound()[name]))]
    assert unfound(Flipped(tmp_path / "package", fitting=False), spots, BYTES_OF_FILES) == []


@pytest.mark.soak
def test_a_flip_anywhere_in_a_large_package_is_found_and_its_file_named(tmp_path):
    chance = random.Random(SEED)
    photos = tuple(b"\xff\xd8" + chance.randbytes(200_000) for _ in range(150))
    files = bagged(payload(of_many(photos), {1: reports()[0]}, (*PHOTOS, *photos)))
    large = Flipped(tmp_path, fitting=False, files=files)
    names = chance.choices(list(files), [len(data) for data in files.values()], k=100)
    spots = [(name, chance.randrange(len(files[name]))) for name in names]
    assert unfound(large, spots, {"bag_matches"}) == []


def of_many(photos):
    site = job().site.up_to(None)
    for data in photos:
        name = sha256(data).hexdigest()
        site.say(site.foreman, "photo", name, {"walk": new_uuid(), "station": None, "sha256": name, "size": len(data)})
    return site.made((*PHOTOS, *photos))


@pytest.mark.soak
@pytest.mark.parametrize("name", RECORD)
def test_every_byte_of_the_record_is_found_though_the_lists_were_made_to_fit(tmp_path, name):
    assert unfound(Flipped(tmp_path, fitting=True), places([name])) == []


@pytest.mark.soak
def test_every_byte_of_the_zip_around_the_files_is_found():
    assert unfound_in_zip(around()) == []
