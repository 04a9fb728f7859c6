"""Whatever call the disk fails at, or the process dies at, the vault holds whole photos only."""

import hashlib
import os

import pytest

from inspect_app.store.vault import Vault
from tests.store.faulty_disk import CRASHED, FaultyDisk, in_a_child

PHOTO = os.urandom(50_000)
NAME = hashlib.sha256(PHOTO).hexdigest()


def _put(vault, source):
    vault.put([PHOTO[:20_000], PHOTO[20_000:]], NAME)


def _adopt(vault, source):
    vault.adopt(source, NAME)


@pytest.fixture
def source(tmp_path):
    path = tmp_path / "upload.part"
    path.write_bytes(PHOTO)
    return path


@pytest.mark.parametrize("store", [_put, _adopt])
@pytest.mark.parametrize("fault", ["full", "broken"])
def test_a_fault_at_any_call_is_raised_and_leaves_the_photo_whole_or_absent(tmp_path, source, store, fault):
    clean = FaultyDisk(-1, fault)
    store(Vault(tmp_path / "clean", clean), source)
    for at in range(len(clean.done)):
        disk = FaultyDisk(at, fault)
        vault = Vault(tmp_path / f"vault{at}", disk)
        if clean.done[at] == "link":
            store(vault, source)  # a disk that cannot link: the photo is copied instead
        else:
            with pytest.raises(OSError):
                store(vault, source)
        assert list(vault.incoming.iterdir()) == []
        assert not vault.holds(NAME) or vault.read(NAME, verify=True) == PHOTO
        store(Vault(vault.folder), source)
        assert vault.read(NAME, verify=True) == PHOTO


@pytest.mark.parametrize("store", [_put, _adopt])
def test_a_crash_at_any_call_leaves_the_photo_whole_or_absent_and_a_sweep_cleans_up(tmp_path, source, store):
    clean = FaultyDisk(-1, "crash")
    store(Vault(tmp_path / "clean", clean), source)
    for at in range(len(clean.done)):
        folder = tmp_path / f"vault{at}"
        assert in_a_child(lambda f=folder, k=at: store(Vault(f, FaultyDisk(k, "crash")), source)) == CRASHED
        vault = Vault(folder)
        vault.sweep(untouched=0)
        assert list(vault.incoming.iterdir()) == []
        assert not vault.holds(NAME) or vault.read(NAME, verify=True) == PHOTO
        store(vault, source)
        assert vault.read(NAME, verify=True) == PHOTO


def test_bytes_are_synced_before_they_get_their_name_and_folders_after(tmp_path):
    disk = FaultyDisk(-1, "full")
    _put(Vault(tmp_path / "vault", disk), None)
    assert disk.done == ["create", "write", "write", "sync", "rename", "sync_folder", "sync_folder"]
