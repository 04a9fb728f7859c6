"""The drill: a server is lost, an older backup becomes a server again, and nothing is said twice or lost unseen."""

import os
import shutil
import stat
import uuid
from pathlib import Path

import pytest

from inspect_app.command_line import main
from inspect_app.commands.restore import set_back
from inspect_app.entry.format import parse
from inspect_app.entry.receipts import verify_receipts
from inspect_app.entry.statement import parse_statement
from inspect_app.errors import BadInput, Conflict
from inspect_app.evidence.enclosure import enclosures
from inspect_app.evidence.entries import entry_facts
from inspect_app.evidence.fact import HOLDS, UNKNOWN
from inspect_app.settings import settings_from
from inspect_app.upkeep.backup import back_up
from inspect_app.upkeep.backup_form import PAGE, photo_name, read_page
from tests.conftest import POSTGRESQL
from tests.office import Office
from tests.postgresql import new_database
from tests.upkeep.filled import LOST_PHOTO, PHOTO, SHA, Filled, checked


@pytest.fixture(params=["folder", "backup.tar"])
def backup(request, tmp_path):
    return tmp_path / "safe" / request.param


def backed(office, target):
    return back_up(office.settings.data, office.settings.database_url, target, office.clock())


def empty(office, tmp_path, request):
    """Settings of a new place: a folder that is not there, and an empty database of the same kind."""
    url = ""
    if office.settings.database_url.startswith("postgresql"):
        url = new_database(request.getfixturevalue("postgresql"), f"test_{uuid.uuid4().hex}")
    return settings_from({"SEAMWALK_DATA": str(tmp_path / "new"), "SEAMWALK_DATABASE_URL": url})


def opened(office, settings):
    other = object.__new__(Office)
    other.clock, other.told, other.settings = office.clock, [], settings
    return other.again()


def test_the_drill(any_office, backup, tmp_path, request):
    """Backup, work on, lose the server, restore, deliver again: the phone's SAVED set is there, once."""
    filled = Filled(any_office)
    job, fay = filled.job, filled.foreman
    kept = backed(any_office, backup)
    later = [fay.entry("area", job) for _ in range(3)]
    lost = {one["digest"]: one["receipt"] for one in fay.send(*later).json["answers"]}
    lost_photo = filled.photo(fay, LOST_PHOTO)
    filled.close()
    shutil.rmtree(any_office.settings.data)

    any_office.clock.forward(days=1)
    settings = empty(any_office, tmp_path, request)
    made = set_back(settings, backup, clock=any_office.clock)
    assert made.done and made.faults == [] and made.page.last == kept.page.last
    again = opened(any_office, settings)
    assert checked(again).faults == []
    assert stat.S_IMODE((settings.data / "server.key").stat().st_mode) == 0o600
    with again.app.app_context():
        assert parse_statement(again.parts.statements.at(made.seq)).payload["last"] == kept.page.last
        assert again.app.extensions["photos"].vault.read(SHA, verify=True) == PHOTO

    fay.client = again.client()
    assert fay.send(*later).status_code == 401, "a sign-in of before may have been ended since"
    fay.get_token()
    assert {one["status"] for one in fay.send(*later).json["answers"]} == {"accepted"}
    filled.office = again
    new_photo = filled.photo(fay, LOST_PHOTO)
    assert len(fay.tickets(job).json["tickets"]) == 12
    with again.app.app_context():
        receipts = again.parts.reading.receipts(job)
        entries = {parse(one.token).digest: one.receipt for one in again.parts.reading.job_entries(job)}
        facts = verify_receipts(receipts, again.parts.server_key.jwk)
    assert not any(facts[name] for name in ("refused", "gaps", "forks", "breaks"))
    numbers = [[parse_statement(one).payload["seq"] for one in some]
               for some in ([*lost.values(), lost_photo], [*(entries[digest] for digest in lost), new_photo])]
    assert not set(numbers[0]) & set(numbers[1]) and max(numbers[0]) < made.seq < min(numbers[1])
    assert checked(again).faults == []


def test_a_report_made_afterwards_encloses_the_restoration_and_says_what_it_cannot_know(office, tmp_path, request):
    filled = Filled(office)
    backed(office, tmp_path / "backup")
    told = {}
    for name in ("before", "after"):
        source = office.app.extensions["reports"].source
        with office.app.app_context():
            enclosed = enclosures(b"{}", source.gather(filled.job, "f" * 64).signed)
        facts = entry_facts({one.name: one.data for one in enclosed}, None)
        told[name] = {one.name: one.status for one in facts}
        if name == "before":
            settings = empty(office, tmp_path, request)
            set_back(settings, tmp_path / "backup", clock=office.clock)
            office = opened(office, settings)
            filled.foreman.client = office.client()
            filled.foreman.get_token()
            filled.foreman.send(filled.foreman.entry("area", filled.job))
    assert (told["before"]["never_set_back"], told["after"]["never_set_back"]) == (HOLDS, UNKNOWN)
    assert {told["after"][name] for name in ("receipts_whole", "keys_enrolled", "entries_receipted")} == {HOLDS}


def test_both_chains_side_by_side_show_as_a_fork_that_the_restoration_explains(office, tmp_path, request):
    filled = Filled(office)
    backed(office, tmp_path / "backup")
    filled.foreman.send(filled.foreman.entry("area", filled.job))
    with office.app.app_context():
        before, key = office.parts.reading.receipts(filled.job), office.parts.server_key.jwk
    settings = empty(office, tmp_path, request)
    made = set_back(settings, tmp_path / "backup", clock=office.clock)
    again = opened(office, settings)
    filled.foreman.client = again.client()
    filled.foreman.get_token()
    filled.foreman.send(filled.foreman.entry("area", filled.job))
    with again.app.app_context():
        after = again.parts.reading.receipts(filled.job)
        word = parse_statement(again.parts.statements.at(made.seq))
    assert before[:-1] == after[:-1] and before[-1] != after[-1]
    facts = verify_receipts([*before, *after], key)
    assert [fork["n"] for fork in facts["forks"]] == [parse_statement(before[-1]).payload["n"]]
    assert parse_statement(after[-1]).payload["restored"] == word.digest
    assert word.payload["last"] < parse_statement(before[-1]).payload["seq"] < word.payload["seq"]


def test_nothing_that_is_there_is_ever_written_over(any_office, tmp_path, request):
    filled = Filled(any_office)
    backed(any_office, tmp_path / "backup")
    with pytest.raises(Conflict, match="restore_not_empty"):
        set_back(any_office.settings, tmp_path / "backup", clock=any_office.clock)
    if any_office.settings.database_url.startswith("postgresql"):
        filled.close()
        any_office.settings.data.rename(tmp_path / "moved")
        with pytest.raises(Conflict, match="restore_database_full"):
            set_back(any_office.settings, tmp_path / "backup", clock=any_office.clock)
        assert not any_office.settings.data.exists()
    else:
        assert checked(any_office).faults == []


@pytest.mark.parametrize("any_office", [POSTGRESQL], indirect=True)  # an embedded database is one of the files
def test_a_restore_into_a_server_s_database_that_is_cut_off_at_its_end_is_gone_on_with_by_the_same_command(
    any_office, tmp_path, monkeypatch, request
):
    Filled(any_office)
    backed(any_office, tmp_path / "backup")
    settings, rename = empty(any_office, tmp_path, request), Path.rename

    def killed(path, target):
        if target == settings.data:
            shutil.copytree(path, tmp_path / "as it was")
            raise KeyboardInterrupt
        return rename(path, target)

    monkeypatch.setattr(Path, "rename", killed)
    with pytest.raises(KeyboardInterrupt):
        set_back(settings, tmp_path / "backup", clock=any_office.clock)
    monkeypatch.undo()
    staging = settings.data.with_name(f"{settings.data.name}.restoring")
    shutil.rmtree(staging, ignore_errors=True)
    shutil.copytree(tmp_path / "as it was", staging)  # what a kill leaves, and no handler after it
    made = set_back(settings, tmp_path / "backup", clock=any_office.clock)
    assert made.done and made.faults == [] and not (settings.data / "restore.json").exists() and not staging.exists()
    again = opened(any_office, settings)
    with again.app.app_context():
        assert again.parts.statements.last() == made.seq
        assert again.parts.vault.holds(SHA)
    assert checked(again).faults == []


@pytest.mark.parametrize("wrong", ["photo", "database", "key", "gone", "page"])
def test_a_damaged_backup_is_named_and_restored_only_when_that_is_wanted(office, tmp_path, request, wrong):
    Filled(office)
    target = tmp_path / "backup"
    backed(office, target)
    page = read_page((target / PAGE).read_bytes(), "")
    report = next(name for name in page.files if name.startswith("reports/"))
    places = {"photo": photo_name(SHA), "database": page.database, "key": "server.key", "gone": report, "page": PAGE}
    file = target / places[wrong]
    if wrong == "gone":
        file.unlink()
    else:
        file.write_bytes(file.read_bytes()[:-700] + b"x" * 100)
    settings = empty(office, tmp_path, request)
    if wrong == "page":
        with pytest.raises(BadInput, match="not_a_backup"):
            set_back(settings, target, clock=office.clock)
    else:
        made = set_back(settings, target, clock=office.clock)
        assert not made.done and made.faults
    assert set(os.listdir(tmp_path)) == {"data", "backup"}
    if wrong == "photo":
        assert set_back(settings, target, True, office.clock).done
        assert [one.code for one in checked(opened(office, settings)).faults] == ["photo_damaged"]


def test_a_clock_behind_the_backup_is_refused_because_numbers_go_on_from_it(office, tmp_path, request):
    Filled(office)
    backed(office, tmp_path / "backup")
    office.clock.forward(days=-1)
    settings = empty(office, tmp_path, request)
    with pytest.raises(BadInput, match="restore_clock"):
        set_back(settings, tmp_path / "backup", clock=office.clock)
    assert not settings.data.exists() and not (tmp_path / "new.restoring").exists()


def test_open_invitations_are_withdrawn_since_nobody_knows_which_were_used(office, tmp_path, request):
    filled = Filled(office)
    with office.app.app_context():
        desk = office.app.extensions["office"]
        firm = desk.firms.join(filled.job, "Sub (invented)", "sub", None)
        _, secret, _ = desk.invitations.make(filled.job, firm.id, "foreman", 7, filled.chief.person.id)
    backed(office, tmp_path / "backup")
    settings = empty(office, tmp_path, request)
    assert set_back(settings, tmp_path / "backup", clock=office.clock).invitations == 1
    assert opened(office, settings).client().get(f"/api/invitations/{secret}").status_code == 410


def test_no_report_gets_a_number_that_somebody_may_have_on_paper(office, tmp_path, request):
    filled = Filled(office)
    backed(office, tmp_path / "backup")
    with office.app.app_context():
        assert office.app.extensions["reports"].shelf.begin(filled.job) == 2
    office.clock.forward(minutes=1)
    settings = empty(office, tmp_path, request)
    set_back(settings, tmp_path / "backup", clock=office.clock)
    again = opened(office, settings)
    office.clock.forward(minutes=1)
    with again.app.app_context():
        shelf = again.app.extensions["reports"].shelf
        new = "01ffffff-0000-7000-8000-000000000000"  # begun after it
        assert [shelf.begin(filled.job), shelf.begin(filled.job), shelf.begin(new)] == [100, 101, 1]


def test_the_shell_restores_and_says_what_is_left_to_do_by_hand(office, tmp_path, monkeypatch, capsys):
    office.clock.forward(days=-10_000)  # the machine's clock is not behind the backup's
    Filled(office)
    backed(office, tmp_path / "backup")
    monkeypatch.setenv("SEAMWALK_DATA", str(tmp_path / "new"))
    assert main(["restore", str(tmp_path / "backup")]) == 0
    said = capsys.readouterr().out
    assert "checked before and after" in said and "end the keys of lost phones" in said
    assert main(["check"]) == 0
    assert main(["restore", str(tmp_path / "backup"), "--lang", "es"]) == 2
    assert "nunca sobrescribe" in capsys.readouterr().err
    monkeypatch.setenv("SEAMWALK_DATA", str(tmp_path / "newer"))
    (tmp_path / "backup" / photo_name(SHA)).write_bytes(b"x" * len(PHOTO))
    assert main(["restore", str(tmp_path / "backup")]) == 1
    assert photo_name(SHA) in capsys.readouterr().err and not (tmp_path / "newer").exists()
    assert main(["restore", str(tmp_path / "none.tar")]) == 2


@pytest.mark.parametrize("place", ["new/other.db", "new/below/it.db", "else/where.db"])
def test_the_database_comes_to_where_its_server_looks_for_it(office, tmp_path, place):
    Filled(office)
    backed(office, tmp_path / "backup")
    url = f"sqlite:///{(tmp_path / place).as_posix()}"
    settings = settings_from({"SEAMWALK_DATA": str(tmp_path / "new"), "SEAMWALK_DATABASE_URL": url})
    made = set_back(settings, tmp_path / "backup", clock=office.clock)
    again = opened(office, settings)
    assert made.done and checked(again).faults == []
    with again.app.app_context():
        assert again.parts.statements.last() == made.seq, "else numbers that were given are given again"


def test_a_database_that_is_named_from_wherever_one_stands_is_refused_before_anything_is_done(office, tmp_path):
    backed(office, tmp_path / "backup")
    told = {"SEAMWALK_DATA": str(tmp_path / "new"), "SEAMWALK_DATABASE_URL": "sqlite:///beside.db"}
    with pytest.raises(BadInput, match="bad_database_url"):
        set_back(settings_from(told), tmp_path / "backup", clock=office.clock)
    assert not (tmp_path / "new").exists()


@pytest.mark.parametrize("other", [False, True])
def test_without_its_own_key_it_becomes_no_server_whatever_one_insists_on(office, tmp_path, other):
    Filled(office)
    backed(office, tmp_path / "backup")
    (tmp_path / "backup" / "server.key").unlink()
    if other:
        Office(tmp_path / "other")
        shutil.copy(tmp_path / "other" / "server.key", tmp_path / "backup" / "server.key")
    settings = settings_from({"SEAMWALK_DATA": str(tmp_path / "new")})
    assert not set_back(settings, tmp_path / "backup", clock=office.clock).done
    with pytest.raises(BadInput, match="backup_no_key"):
        set_back(settings, tmp_path / "backup", despite=True, clock=office.clock)
    assert not (tmp_path / "new").exists()
