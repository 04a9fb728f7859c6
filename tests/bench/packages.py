"""A package of five hundred photographs: put together beside copying and hashing them, downloaded beside reading them,
verified beside hashing them."""

import hashlib
import shutil
import tempfile
from collections.abc import Callable
from pathlib import Path

from inspect_app.commands.opened import open_folder
from inspect_app.commands.package_check import check_package
from inspect_app.package.folder import write_folder
from inspect_app.package.stored_zip import StoredZip
from tests.bench.measure import Row, ratio
from tests.bench.photographs import photographs
from tests.office import Office
from tests.package.packages import packed
from tests.upkeep.filled import Filled

COUNT, BLOCK = 500, 1024 * 1024


def rows() -> list[Row]:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        filled = Filled(Office(folder / "data"))
        (folder / "taken").mkdir()
        pictures = photographs(folder / "taken", COUNT)
        for at in range(0, COUNT, 50):
            _bring(filled, pictures[at : at + 50])
        try:
            return _rows(filled, pictures, folder)
        finally:
            filled.close()


def _bring(filled: Filled, pictures: list[Path]) -> None:
    """Each photo and a walk that names it, as a phone sends them."""
    for picture in pictures:
        data = picture.read_bytes()
        filled.photo(filled.foreman, data)
        walk = filled.office.walk(filled.foreman, filled.job, hashlib.sha256(data).hexdigest())
        assert filled.foreman.send(*walk).status_code == 200


def _rows(filled: Filled, pictures: list[Path], folder: Path) -> list[Row]:
    inside, outside = filled.office.settings.data / "bench", folder / "copied"
    bag = packed(filled.office, filled.job).bag

    def stage() -> None:
        made = packed(filled.office, filled.job).bag
        shutil.rmtree(write_folder(made, inside, filled.office.settings.data))

    def copy_and_hash() -> None:
        outside.mkdir()
        for picture in pictures:
            shutil.copyfile(picture, outside / picture.name)
            hashlib.sha256((outside / picture.name).read_bytes()).digest()
        shutil.rmtree(outside)

    def download() -> None:
        for _ in StoredZip(bag).blocks():
            pass

    def read() -> None:
        _each_block(pictures, lambda _: None)

    def hash_alone() -> None:
        _each_block(pictures, None)

    whole = write_folder(bag, folder / "whole", filled.office.settings.data)

    def verify() -> None:
        assert check_package(open_folder(whole), []).facts

    return [
        Row(f"put a package of {COUNT} photos together", "copy and hash the same files",
            ratio(stage, copy_and_hash, 1, 3), 0.1, "linked, their digests known from the intake"),
        Row("its download as a stored zip", "read the same bytes", ratio(download, read, 1, 4), 1.3,
            "summed up on the way"),
        Row("verify it", "hash the same bytes", ratio(verify, hash_alone, 1, 3), 1.5,
            "signatures, chains, verdicts, draws and reports beside its photos"),
    ]  # fmt: skip


def _each_block(files: list[Path], see: Callable[[bytes], object] | None) -> None:
    for one in files:
        digest = hashlib.sha256()
        with open(one, "rb", buffering=0) as file:
            while block := file.read(BLOCK):
                (see or digest.update)(block)
