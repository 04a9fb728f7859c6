"""``seamwalk package``: where it writes, what it says, and what it refuses with a way out."""

import shutil
import zipfile
from typing import Any

import bagit
import pytest

from inspect_app.command_line import main
from tests.office import Office
from tests.upkeep.filled import SHA, Filled


@pytest.fixture(scope="module")
def still(tmp_path_factory: pytest.TempPathFactory) -> Any:
    """Made once; the command opens the store by itself."""
    data = tmp_path_factory.mktemp("still") / "data"
    filled = Filled(Office(data))
    filled.close()
    return filled


@pytest.fixture
def run(still, monkeypatch, capsys):
    monkeypatch.setenv("SEAMWALK_DATA", str(still.office.settings.data))

    def run(*arguments: object) -> tuple[int, str, str]:
        code = main(["package", *map(str, arguments)])
        said = capsys.readouterr()
        return code, said.out, said.err

    return run


def test_without_a_place_it_lies_in_the_data_folder_and_takes_no_room_for_photos(still, run):
    code, said, wrong = run(still.job)
    folder = still.office.settings.data / "packages"
    (made,) = folder.iterdir()
    assert code == 0 and str(made) in said and "photos 1" in said
    assert wrong.splitlines() == ["▲ Checklists that entries name and that are not in it: 1. package.json lists them."]
    bagit.Bag(str(made)).validate()
    assert (made / f"data/photos/{SHA}.jpg").stat().st_nlink == 2


def test_it_writes_a_zip_file_or_a_folder_where_it_is_told_and_says_so_in_spanish_too(still, run, tmp_path):
    code, said, _ = run(still.job, "--to", tmp_path / "one.ZIP", "--lang", "es")
    assert code == 0 and "Paquete de evidencia" in said and "fotos 1" in said
    with zipfile.ZipFile(tmp_path / "one.ZIP") as archive:
        assert archive.testzip() is None
    assert run(still.job, "--to", tmp_path / "new" / "folder")[0] == 0
    bagit.Bag(str(tmp_path / "new" / "folder")).validate()


def test_what_is_missing_is_said_and_the_package_is_made_all_the_same(still, run, tmp_path):
    data = tmp_path / "data"
    shutil.copytree(still.office.settings.data, data)
    (data / "photos" / SHA[:2] / SHA).unlink()
    (data / "reports" / still.job / "report-0001.pdf").unlink()
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("SEAMWALK_DATA", str(data))
        code, _, wrong = run(still.job, "--to", tmp_path / "package")
    assert code == 0 and {"Photos", "Finished"} < {line.split()[1] for line in wrong.splitlines()}
    bagit.Bag(str(tmp_path / "package")).validate()


def test_a_place_that_is_taken_or_cannot_be_written_and_a_job_that_is_not_here_are_refused(still, run, tmp_path):
    (tmp_path / "taken.zip").write_bytes(b"mine")
    (tmp_path / "file").write_bytes(b"mine")
    nowhere = dict.fromkeys(("none/package.zip", "file/package"), "cannot be written")
    for target, words in {"taken.zip": "never replaces", **nowhere}.items():
        code, said, wrong = run(still.job, "--to", tmp_path / target)
        assert (code, said) == (2, "") and words in wrong and "to:" in wrong, target
    assert {one.name: one.read_bytes() for one in tmp_path.iterdir()} == {"taken.zip": b"mine", "file": b"mine"}
    code, _, wrong = run("0193a5b0-0000-7000-8000-000000000000")
    assert code == 2 and still.job in wrong
