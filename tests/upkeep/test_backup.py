"""A backup holds whatever its database gave a receipt for, at any moment it is taken; a folder is gone on with."""

import json
import os
import stat
import tarfile
import threading

import pytest

from inspect_app.command_line import main
from inspect_app.errors import BadInput, Conflict
from inspect_app.store.vault_disk import Disk
from inspect_app.upkeep import backup_place
from inspect_app.upkeep.backup import back_up
from inspect_app.upkeep.backup_form import PAGE, photo_name, read_page
from inspect_app.upkeep.check import check
from tests.office import Office
from tests.upkeep.filled import LOST_PHOTO, PHOTO, SHA, Filled, checked


def backed(office, target):
    return back_up(office.settings.data, office.settings.database_url, target, office.clock())


def whole(target):
    """What a check says of a backup's folder."""
    page = read_page((target / PAGE).read_bytes(), "")
    return check(target, f"sqlite:///{(target / page.database).as_posix()}")


def test_a_backup_is_whole_by_itself_and_says_what_it_holds(any_office, tmp_path):
    Filled(any_office)
    made = backed(any_office, tmp_path / "backup")
    assert (made.faults, made.new, made.bytes, made.reports) == ([], 1, len(PHOTO), 1)
    found = whole(tmp_path / "backup")
    assert found.faults == [] and found.counts["statements"] == checked(any_office).counts["statements"]
    assert made.page.photos == {SHA: len(PHOTO)} and made.page.last == 22


def test_nobody_but_its_owner_reads_it_and_no_sign_in_is_in_it(office, tmp_path):
    Filled(office)
    backed(office, tmp_path / "backup")
    for path in [tmp_path / "backup", *(tmp_path / "backup").rglob("*")]:
        assert stat.S_IMODE(path.stat().st_mode) & 0o077 == 0, path
    names = {path.name for path in (tmp_path / "backup").rglob("*")}
    assert "server.key" in names and "session.key" not in names and "uploads" not in names


def test_the_next_backup_of_a_folder_copies_only_what_is_new(office, tmp_path):
    filled = Filled(office)
    first = backed(office, tmp_path / "backup")
    filled.photo(filled.foreman, LOST_PHOTO)
    office.clock.forward(minutes=1)
    before = (tmp_path / "backup" / photo_name(SHA)).stat().st_ino
    second = backed(office, tmp_path / "backup")
    assert (first.new, second.new, len(second.page.photos)) == (1, 1, 2)
    assert (tmp_path / "backup" / photo_name(SHA)).stat().st_ino == before
    assert len(list((tmp_path / "backup").glob("database-*.sqlite3"))) == 1
    assert whole(tmp_path / "backup").faults == []


def test_one_file_holds_the_same_and_leaves_nothing_beside_it(office, tmp_path):
    Filled(office)
    folder, file = backed(office, tmp_path / "backup"), backed(office, tmp_path / "to" / "backup.tar")
    with tarfile.open(tmp_path / "to" / "backup.tar") as tar:
        names = tar.getnames()
    assert sorted(names) == sorted([PAGE, *file.page.files, *map(photo_name, file.page.photos)])
    assert file.page.photos == folder.page.photos
    assert [path.name for path in (tmp_path / "to").iterdir()] == ["backup.tar"]
    with pytest.raises(Conflict, match="backup_not_ours"):
        backed(office, tmp_path / "to" / "backup.tar")


class Stopping(Disk):
    """Ends the work, as a full disk would, at its k-th write."""

    def __init__(self, left):
        self.left = left

    def sync(self, file):
        self.left -= 1
        if self.left < 0:
            raise OSError(28, "No space left on device")
        super().sync(file)


def test_one_that_was_cut_off_anywhere_leaves_the_one_before_good_and_is_gone_on_with(office, tmp_path, monkeypatch):
    filled = Filled(office)
    target = tmp_path / "backup"
    for at in range(0, 60, 4):
        monkeypatch.setattr(backup_place, "Disk", lambda at=at: Stopping(at))
        try:
            backed(office, target)
        except OSError:
            assert not (target / PAGE).exists()
            continue
        break
    assert at > 10 and whole(target).faults == []
    filled.photo(filled.foreman, LOST_PHOTO)
    for at in range(0, 60, 7):
        office.clock.forward(minutes=1)
        monkeypatch.setattr(backup_place, "Disk", lambda at=at: Stopping(at))
        try:
            backed(office, target)
            break
        except OSError:
            found = whole(target)
            assert found.faults == [] and found.counts["photos"] == 1
    assert whole(target).counts["photos"] == 2
    assert not list(target.glob("*.part")) and not (target / "backup.begun").exists()


def test_a_photo_that_is_damaged_is_named_and_the_rest_is_backed_up(office, tmp_path):
    filled = Filled(office)
    filled.photo(filled.foreman, LOST_PHOTO)
    file = office.settings.data / photo_name(SHA)
    file.chmod(0o600)
    file.write_bytes(b"x" * len(PHOTO))
    made = backed(office, tmp_path / "backup")
    assert [(one.code, one.where) for one in made.faults] == [("photo_damaged", photo_name(SHA))]
    assert SHA not in made.page.photos and len(made.page.photos) == 1
    assert [one.code for one in whole(tmp_path / "backup").faults] == ["photo_gone"]


def test_what_is_there_already_is_never_written_over(office, tmp_path):
    Filled(office)
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "notes.txt").write_text("mine")
    other = Office(tmp_path / "other")
    Filled(other)
    backed(other, tmp_path / "theirs")
    for target, error, code in (
        (tmp_path / "mine", Conflict, "backup_not_ours"),
        (tmp_path / "theirs", Conflict, "backup_other_server"),
        (office.settings.data / "backup", BadInput, "backup_inside"),
        (office.settings.data, BadInput, "backup_inside"),
    ):
        with pytest.raises(error, match=code):
            backed(office, target)
    assert [path.name for path in (tmp_path / "mine").iterdir()] == ["notes.txt"]


def test_taken_while_people_deliver_it_holds_all_that_its_own_receipts_name(any_office, tmp_path):
    """Receipts of the copy are within the copy, and the server never waits for it."""
    filled, stop, sent = Filled(any_office), threading.Event(), []

    def deliver():
        n = 0
        while not stop.is_set():
            n += 1
            filled.photo(filled.foreman, b"a photo of its own, " * 200 + str(n).encode())
            assert filled.foreman.send(filled.foreman.entry("area", filled.job)).status_code == 200
            sent.append(n)

    thread = threading.Thread(target=deliver)
    thread.start()
    try:
        for _ in range(2):
            before = len(sent)
            any_office.clock.forward(seconds=1)
            made = backed(any_office, tmp_path / "backup")
            assert made.faults == [] and whole(tmp_path / "backup").faults == []
            assert whole(tmp_path / "backup").counts["photos"] >= before + 1
    finally:
        stop.set()
        thread.join()
    assert len(sent) > 2 and checked(any_office).faults == []


def test_the_shell_says_that_it_holds_the_key(office, tmp_path, monkeypatch, capsys):
    Filled(office)
    monkeypatch.setenv("SEAMWALK_DATA", str(office.settings.data))
    assert main(["backup", str(tmp_path / "backup")]) == 0
    assert "the server's signing key" in capsys.readouterr().out
    assert main(["backup", str(tmp_path / "backup"), "--lang", "es"]) == 0
    assert "1 fotos (0 nuevas" in capsys.readouterr().out
    assert main(["check", str(tmp_path / "backup")]) == 0
    page = json.loads((tmp_path / "backup" / PAGE).read_text())
    (tmp_path / "backup" / PAGE).write_text(json.dumps(page | {"files": {"../../etc": "x", page["database"]: "y"}}))
    assert main(["check", str(tmp_path / "backup")]) == 2


def test_a_check_of_a_backup_finds_whatever_a_restore_of_it_would_miss(office, tmp_path, capsys):
    Filled(office)
    target = tmp_path / "backup"
    backed(office, target)
    report = next((target / "reports").glob("*/*.pdf"))
    sound = report.read_bytes()
    report.write_bytes(sound.replace(b"1.7", b"1.6"))
    assert main(["check", str(target), "--lang", "en"]) == 1
    assert "not what the backup says" in capsys.readouterr().out
    report.write_bytes(sound)
    assert main(["check", str(target)]) == 0
    next((target / "definitions").glob("*.json")).unlink()
    capsys.readouterr()
    assert main(["check", str(target), "--json"]) == 1
    assert [one["code"] for one in json.loads(capsys.readouterr().out)["faults"]] == ["backup_file_gone"]


@pytest.mark.parametrize("spoil", [
    lambda page: json.dumps(json.loads(page) | {"files": list(json.loads(page)["files"])}),
    lambda page: json.dumps(json.loads(page) | {"photos": list(json.loads(page)["photos"])}),
    lambda page: "[" * 100_000,
], ids=["files", "photos", "deep"])  # fmt: skip
def test_a_page_of_any_other_shape_is_refused_in_words(office, tmp_path, spoil):
    backed(office, tmp_path / "backup")
    page = tmp_path / "backup" / PAGE
    page.write_text(spoil(page.read_text()))
    assert main(["check", str(tmp_path / "backup")]) == 2


def rot(file, restored=True):
    """One bit of it turns over, as a disk's do: size and time stay. Or a hand changes it, and the time tells."""
    was, data = file.stat(), file.read_bytes()
    file.chmod(0o600)
    file.write_bytes(bytes([data[0] ^ 1]) + data[1:])
    if restored:
        os.utime(file, ns=(was.st_atime_ns, was.st_mtime_ns))


def test_what_rotted_in_the_backup_itself_is_copied_anew_within_seven_backups_and_what_was_touched_at_once(
    office, tmp_path, monkeypatch
):
    filled, target = Filled(office), tmp_path / "backup"
    for n in range(13):
        filled.photo(filled.foreman, LOST_PHOTO + bytes([n]))
    last = sorted(backed(office, target).page.photos)[-1]
    read: list[str] = []
    sound = backup_place.FolderPlace._sound
    noting = lambda place, file, sha256: read.append(sha256) or sound(place, file, sha256)  # noqa: E731
    monkeypatch.setattr(backup_place.FolderPlace, "_sound", noting)
    rot(target / photo_name(last))
    copied = []
    for _ in range(7):
        office.clock.forward(minutes=1)
        copied.append(backed(office, target).new)
    assert sum(copied) == 1 and whole(target).faults == []
    assert sorted(read) == sorted(backed(office, target).page.photos), "each once in seven, and no more than a seventh"

    rot(target / photo_name(last), restored=False)
    office.clock.forward(minutes=1)
    assert backed(office, target).new == 1 and whole(target).faults == []
