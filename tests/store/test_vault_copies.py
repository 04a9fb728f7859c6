"""Small copies are disposable, made once, and a photo without one is still a photo."""

import hashlib

import pytest

from inspect_app.intake.pictures import Undecodable
from inspect_app.store.vault import Vault
from inspect_app.store.vault_copies import Copies, NoCopy
from tests.store.faulty_disk import FaultyDisk

PHOTO = b"not really a photo"
NAME = hashlib.sha256(PHOTO).hexdigest()


class Shrinking:
    def __init__(self, gives):
        self.gives = gives
        self.times = 0

    def __call__(self, path, sizes):
        assert path.read_bytes() == PHOTO
        self.times += 1
        return self.gives


def _copies(tmp_path, shrink):
    vault = Vault(tmp_path / "vault")
    vault.put([PHOTO], NAME)
    return Copies(tmp_path / "copies", vault, shrink)


def test_both_sizes_come_from_one_decoding(tmp_path):
    shrink = Shrinking({1600: b"large", 320: b"small"})
    copies = _copies(tmp_path, shrink)
    assert copies.path(NAME, 320).read_bytes() == b"small"
    assert copies.path(NAME, 1600).read_bytes() == b"large"
    assert shrink.times == 1


def test_a_photo_that_cannot_be_drawn_is_tried_once_and_says_why(tmp_path):
    shrink = Shrinking(Undecodable("truncated"))
    copies = _copies(tmp_path, shrink)
    for _ in range(2):
        with pytest.raises(NoCopy) as refusal:
            copies.path(NAME, 320)
        assert (refusal.value.sha256, refusal.value.reason) == (NAME, "truncated")
    assert shrink.times == 1


def test_a_lost_folder_is_made_again(tmp_path):
    copies = _copies(tmp_path, Shrinking({1600: b"large", 320: b"small"}))
    copies.path(NAME, 320).unlink()
    assert copies.path(NAME, 320).read_bytes() == b"small"


def test_a_photo_that_is_not_held_has_no_copy(tmp_path):
    copies = _copies(tmp_path, Shrinking({}))
    with pytest.raises(FileNotFoundError):
        copies.path("0" * 64, 320)


def test_a_full_disk_leaves_no_half_copy(tmp_path):
    vault = Vault(tmp_path / "vault")
    vault.put([PHOTO], NAME)
    shrink = Shrinking({1600: b"large", 320: b"small"})
    with pytest.raises(OSError):
        Copies(tmp_path / "copies", vault, shrink, FaultyDisk(0, "full", only="write")).path(NAME, 320)
    assert [file for file in (tmp_path / "copies").rglob("*") if file.is_file()] == []
    assert Copies(tmp_path / "copies", vault, shrink).path(NAME, 320).read_bytes() == b"small"
