"""Packages that stay in the data folder go a week after they were last touched, and nothing else does."""

import os
from datetime import timedelta

from inspect_app.package.sweep import KEPT, sweep
from tests.package.packages import MADE, folder_of, packed
from tests.upkeep.filled import PHOTO, SHA, Filled


def aged(path, when):
    """As if nobody had touched it or anything in it since."""
    for one in (*path.rglob("*"), path):
        if not one.is_file() or one.stat().st_nlink == 1:
            os.utime(one, (when.timestamp(), when.timestamp()))


def test_the_next_package_takes_away_those_that_nobody_touched_for_a_week(office):
    filled = Filled(office)
    folder = office.app.extensions["packages"].folder
    old, read = (folder_of(office, filled.job, folder / packed(office, filled.job, MADE + timedelta(n)).bag.name)
                 for n in range(2))  # fmt: skip
    own = folder_of(office, filled.job, folder / "for-the-owner")
    half = folder / f"{old.name}.{'a' * 32}.part"
    (half / "data").mkdir(parents=True)
    outside = folder_of(office, filled.job, folder.parent.parent / "elsewhere")
    link = folder / "seamwalk-package-01234567-20261101T000000Z"
    link.symlink_to(outside)
    for one in (old, read, own, half, outside):
        aged(one, MADE)
    os.utime(read / "manifest-sha256.txt", (MADE.timestamp() + 60, MADE.timestamp()))  # somebody looked into its list
    assert (old / f"data/photos/{SHA}.jpg").stat().st_nlink > 1
    packed(office, filled.job, MADE + KEPT - timedelta(seconds=1))
    assert old.is_dir() and half.is_dir(), "not yet"
    packed(office, filled.job, MADE + KEPT + timedelta(seconds=1))
    assert sorted(one.name for one in folder.iterdir()) == sorted([read.name, own.name, link.name])
    assert outside.is_dir() and office.parts.vault.path(SHA).read_bytes() == PHOTO, "the vault's bytes are its own"
    assert (read / f"data/photos/{SHA}.jpg").read_bytes() == PHOTO


def test_what_cannot_be_taken_away_keeps_no_package_from_being_made(tmp_path):
    one = tmp_path / f"seamwalk-package-01234567-20261101T000000Z.{'b' * 32}.part"
    one.write_bytes(b"a file in a folder's place")
    os.utime(one, (0, 0))
    far = tmp_path / "seamwalk-package-01234567-20261101T000000Z"
    far.mkdir()
    os.utime(far, (10**12, 10**12))  # the year 33658, where the file system takes it
    sweep(tmp_path, MADE)
    sweep(tmp_path / "none", MADE)
    assert one.exists() and far.is_dir()
