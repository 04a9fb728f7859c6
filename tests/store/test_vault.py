"""The vault holds what it was given, under its own hash, and nothing else."""

import hashlib
import random
import stat
import threading

import pytest

from inspect_app.store.vault import Vault, WrongHash

PHOTO = random.Random(7).randbytes(300_000)
NAME = hashlib.sha256(PHOTO).hexdigest()


@pytest.fixture
def vault(tmp_path):
    return Vault(tmp_path / "vault")


def test_a_photo_comes_back_as_it_went_in(vault):
    vault.put([PHOTO[:7], PHOTO[7:]], NAME)
    assert vault.read(NAME, verify=True) == PHOTO
    assert vault.path(NAME) == vault.folder / NAME[:2] / NAME
    assert list(vault.names()) == [NAME]


def test_putting_twice_is_putting_once_and_touches_nothing(vault):
    vault.put([PHOTO], NAME)
    before = vault.path(NAME).stat()
    vault.put([PHOTO], NAME)
    assert vault.path(NAME).stat() == before
    assert list(vault.incoming.iterdir()) == []


def test_a_held_photo_is_read_only(vault):
    vault.put([PHOTO], NAME)
    assert stat.S_IMODE(vault.path(NAME).stat().st_mode) == 0o444


def test_bytes_with_another_hash_are_refused_with_both_hashes_and_leave_nothing(vault):
    changed = PHOTO[:-1] + bytes([PHOTO[-1] ^ 1])
    with pytest.raises(WrongHash) as refusal:
        vault.put([changed], NAME)
    assert (refusal.value.declared, refusal.value.found) == (NAME, hashlib.sha256(changed).hexdigest())
    assert not vault.holds(NAME) and list(vault.incoming.iterdir()) == []


@pytest.mark.parametrize("name", ["", "..", "../../etc", NAME.upper(), NAME[:-1], NAME + "0", NAME + "\n"])
def test_only_a_hash_is_a_name(vault, name):
    with pytest.raises(RuntimeError):
        vault.path(name)


def test_a_finished_upload_is_adopted_and_keeps_its_own_name_until_removed(vault, tmp_path):
    part = tmp_path / "upload.part"
    part.write_bytes(PHOTO)
    vault.adopt(part, NAME)
    part.unlink()
    assert vault.read(NAME, verify=True) == PHOTO


def test_adopting_bytes_with_another_hash_stores_nothing_and_keeps_the_upload(vault, tmp_path):
    part = tmp_path / "upload.part"
    part.write_bytes(PHOTO[:-1])
    with pytest.raises(WrongHash):
        vault.adopt(part, NAME)
    assert part.read_bytes() == PHOTO[:-1] and list(vault.names()) == []


def test_a_changed_byte_on_the_disk_is_found_only_by_verifying(vault):
    vault.put([PHOTO], NAME)
    _damage(vault)
    assert vault.read(NAME) != PHOTO
    with pytest.raises(WrongHash):
        vault.read(NAME, verify=True)


def test_good_bytes_take_the_place_of_damaged_ones_which_are_kept_aside(vault):
    vault.put([PHOTO], NAME)
    damaged = _damage(vault)
    vault.put([PHOTO], NAME)
    assert vault.read(NAME, verify=True) == PHOTO
    (aside,) = (vault.folder / "damaged").iterdir()
    assert aside.read_bytes() == damaged and aside.name.startswith(NAME)


def test_leftovers_of_a_crash_are_swept_and_the_photos_stay(vault):
    vault.put([PHOTO], NAME)
    (vault.incoming / "half").write_bytes(PHOTO[:1000])
    assert vault.sweep() == 0  # it may be what another process is writing at this moment
    assert vault.sweep(untouched=0) == 1
    assert list(vault.names()) == [NAME] and list(vault.incoming.iterdir()) == []


def test_many_threads_putting_the_same_photo_all_succeed(vault):
    failures = []

    def put():
        try:
            vault.put([PHOTO], NAME)
        except Exception as error:
            failures.append(error)

    threads = [threading.Thread(target=put) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert failures == [] and vault.read(NAME, verify=True) == PHOTO
    assert list(vault.incoming.iterdir()) == []


def _damage(vault):
    path = vault.path(NAME)
    path.chmod(0o644)
    damaged = b"\x00" + PHOTO[1:-1] + b"\x00"
    path.write_bytes(damaged)
    return damaged
