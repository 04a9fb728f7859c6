"""A package written as a folder: second names in the data folder, copies everywhere else, whole or not at all."""

import stat

import pytest

from inspect_app.errors import Conflict
from inspect_app.package.folder import write_folder
from inspect_app.store.vault_disk import Disk
from tests.package.packages import files_below, packed
from tests.upkeep.filled import SHA


def written(still, target, disk=None):
    return write_folder(packed(still.office, still.job).bag, target, still.office.settings.data, disk)


def test_in_the_data_folder_a_photo_gets_a_second_name_and_elsewhere_bytes_of_its_own(still, tmp_path):
    data, original = still.office.settings.data, still.office.parts.vault.path(SHA)
    inside, outside = written(still, data / "packages" / "one"), written(still, tmp_path / "elsewhere")
    name = f"data/photos/{SHA}.jpg"
    assert (inside / name).samefile(original) and not (outside / name).samefile(original)
    assert files_below(inside) == files_below(outside)
    (outside / name).write_bytes(b"edited")
    assert original.read_bytes() == (inside / name).read_bytes()


def test_where_the_disk_cannot_link_it_copies(still):
    class NoLinks(Disk):
        def link(self, source, target):
            raise OSError("no links here")

    folder = written(still, still.office.settings.data / "packages" / "two", NoLinks())
    assert not (folder / f"data/photos/{SHA}.jpg").samefile(still.office.parts.vault.path(SHA))


def test_a_full_disk_leaves_nothing_behind(still, tmp_path):
    class Full(Disk):
        def write(self, file, data):
            raise OSError(28, "no space left")

    with pytest.raises(OSError):
        written(still, tmp_path / "package", Full())
    assert [one.name for one in tmp_path.iterdir()] == []


def test_nothing_is_ever_replaced_but_an_empty_folder(still, tmp_path):
    (tmp_path / "empty").mkdir()
    assert written(still, tmp_path / "empty").is_dir()
    (tmp_path / "file").write_bytes(b"mine")
    for taken in ("empty", "file"):
        with pytest.raises(Conflict) as refused:
            written(still, tmp_path / taken)
        assert (refused.value.code, refused.value.field) == ("package_exists", "to")
    assert (tmp_path / "file").read_bytes() == b"mine"


def test_nobody_but_its_owner_may_read_a_copy(still, tmp_path):
    for path in [tmp_path / "package", *written(still, tmp_path / "package").rglob("*")]:
        assert stat.S_IMODE(path.stat().st_mode) & 0o077 == 0, path
