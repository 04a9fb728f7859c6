"""``seamwalk verify`` on evidence packages from anybody, a folder or a zip: what it says in words and by its code."""

import json
import os
import re

import pytest

from inspect_app.command_line import main
from inspect_app.commands.opened import Place, open_archive, open_folder
from inspect_app.commands.verify import exit_code
from inspect_app.commands.verify_later import Later
from inspect_app.commands.verify_told import told_of_package
from inspect_app.errors import BadInput
from inspect_app.settings import shipped
from inspect_app.words import Words
from tests.evidence.attacks.found import check, trust
from tests.evidence.attacks.on_the_archive import FOLDER, archive, packed_anew, zipped
from tests.evidence.attacks.on_tokens import receipts_of_all
from tests.evidence.packed import bagged, job, payload, reports, sound, written


@pytest.fixture
def package(tmp_path):
    written(sound(), tmp_path / "package")
    return tmp_path / "package"


def found_in(path, later=()):
    """In this process, by a reader who has both fingerprints."""
    opened = open_folder(path) if path.is_dir() else open_archive(path)
    return check(opened, trust(), Later(later).witnesses if later else None)


def fact(found, name):
    return next(one for one in found.facts if one.name == name)


def test_the_command_tells_an_honest_package_alike_as_a_folder_and_as_a_zip(package, tmp_path, capsys):
    (tmp_path / "package.zip").write_bytes(archive())
    told = []
    for path in (package, tmp_path / "package.zip"):
        assert main(["verify", str(path), "--json", *(word for one in trust() for word in ("--trust", one))]) == 2
        told.append(json.loads(capsys.readouterr().out))
    assert told[0] == {"kind": "package"} | found_in(package).plain() | {"failed": False, "exit": 2}
    assert {one["name"] for one in told[0]["facts"] if one["status"] != "holds"} == {"log_not_cut", "reports_hold"}
    sound_zip = [one for one in told[1]["facts"] if one["name"] != "archive_sound"]
    assert len(told[1]["facts"]) == len(sound_zip) + 1 and told[1] | {"facts": sound_zip} == told[0]


def test_in_words_each_fact_that_does_not_hold_says_what_it_means_and_what_to_do(package, capsys):
    name = next(one for one in sound() if "/photos/" in one)
    (package / name).write_bytes(b"another photo")
    assert main(["verify", str(package)]) == 1
    said = capsys.readouterr().out
    assert f"NOT SO. 1 in all; the first: {name}." in said and "These photos are not those" in said
    assert re.search(r"data/reports/2-closeout.pdf: \d+ of \d+ facts hold", said) and "(--later FILE)" in said
    assert "verify.html in it is a help and no evidence" in said and "Do not rely on this package" in said
    said = "\n".join(told_of_package(found_in(package), Words(shipped("static") / "words"), "es"))
    assert "NO ES ASÍ" in said and "No confíe en este paquete" in said and not re.search(r"\{\w+\}", said)


@pytest.mark.parametrize("given, server, signer", [
    ([], "not_determinable", "not_determinable"), (["seal"], "holds", "holds"), (["seal", "server"], "holds", "holds"),
    (["server"], "holds", "not_determinable"), (["another"], "fails", "fails"), (["seal", "another"], "holds", "holds"),
    (["server", "another"], "holds", "fails"),
])  # fmt: skip
def test_whose_it_is_follows_from_the_fingerprints_that_were_given(package, given, server, signer):
    prints = {"seal": trust()[0], "server": trust()[1], "another": "ab" * 32}
    found = check(open_folder(package), tuple(prints[one] for one in given))
    assert fact(found, "server_known").status == server
    assert {fact(one.verification, "signer_known").status for one in found.reports} == {signer}


def test_a_later_report_a_later_package_and_bare_receipts_show_a_day_that_was_dropped(package, tmp_path):
    early = job().site.up_to(job().days[0]).made(())
    written(bagged(payload(early, {1: reports()[0]}, ())), tmp_path / "early")
    (tmp_path / "later.pdf").write_bytes(reports()[1])
    (tmp_path / "receipts.txt").write_bytes(receipts_of_all())
    for later in (tmp_path / "later.pdf", tmp_path / "receipts.txt", package):
        assert fact(found_in(tmp_path / "early", [later]), "log_not_cut")[1:3] == ("fails", "cut")
    assert fact(found_in(package, [tmp_path / "receipts.txt"]), "log_not_cut").status == "holds"
    assert fact(found_in(package, [tmp_path / "early"]), "log_not_cut")[1:3] == ("not_determinable", "goes_on")


def test_a_later_file_without_receipts_of_this_server_is_refused_with_a_way_out(package, tmp_path):
    (tmp_path / "note.txt").write_bytes(b"All is well\n")
    with pytest.raises(BadInput) as refused:
        found_in(package, [tmp_path / "note.txt"])
    assert (refused.value.code, refused.value.value) == ("no_receipts", str(tmp_path / "note.txt"))


def test_what_goes_with_a_report_is_refused_with_a_package_and_the_other_way_round(package, tmp_path, capsys):
    (tmp_path / "report.pdf").write_bytes(reports()[0])
    assert main(["verify", str(package), "--contents", str(package / "data/package.json")]) == 2
    assert "--contents" in capsys.readouterr().err
    assert main(["verify", str(tmp_path / "report.pdf"), "--later", str(tmp_path / "report.pdf")]) == 2
    assert "--later" in capsys.readouterr().err


def test_links_and_what_is_no_plain_file_are_named_and_never_opened(package, tmp_path):
    (tmp_path / "secret").write_text("a secret")
    name = next(one for one in sound() if "/photos/" in one)
    (package / name).unlink()
    (package / name).symlink_to(tmp_path / "secret")
    (package / "data" / "linked").symlink_to(tmp_path, target_is_directory=True)
    os.mkfifo(package / "data" / "pipe")
    (package / "data" / "pipe2.txt").write_text("more")
    found = found_in(package)
    named = {(one["file"], one["code"]) for one in fact(found, "bag_complete").about["files"]}
    assert {(one, "strange") for one in (name, "data/linked", "data/pipe", "data/pipe2.txt")} <= named
    assert "secret" not in json.dumps(found.plain())


def test_a_place_that_became_a_link_or_grew_between_listing_and_reading_is_not_read(package, tmp_path):
    places = open_folder(package).places
    (tmp_path / "secret").write_text("a secret")
    (package / "data/keys.json").unlink()
    (package / "data/keys.json").symlink_to(tmp_path / "secret")
    (package / "data/package.json").write_text("longer than before" * 99)
    for name in ("data/keys.json", "data/package.json"):
        with pytest.raises(OSError):
            places[name].sums()
    with pytest.raises(OSError):
        Place(str(package / "data/entries.txt"), 0, len(sound()["data/entries.txt"])).read(100)


@pytest.mark.parametrize("name", [
    "../out.txt", "/etc/out.txt", "data/../../out.txt", "data\\photos\\a.jpg", "C:out.txt", "data/entries.txt/x",
    f"data/photos/{'a' * 64}.exe", "data/\x1b[2J.txt",
])  # fmt: skip
def test_names_of_an_archive_lead_nowhere_and_are_shown_harmless(tmp_path, name):
    more = zipped(dict(sound()))
    with_more = packed_anew(more, lambda new: new.writestr(f"{FOLDER}/{name}", b"All is well"))
    (tmp_path / "package.zip").write_bytes(with_more)
    found = found_in(tmp_path / "package.zip")
    assert fact(found, "bag_complete")[1:3] == ("fails", "strange")
    assert "\x1b" not in "".join(told_of_package(found, Words(shipped("static") / "words"), "en"))
    assert sorted(one.name for one in tmp_path.iterdir()) == ["package.zip"]


def test_an_archive_packed_anew_by_another_program_is_no_plain_one_and_its_folder_is_told_as_the_way(tmp_path):
    (tmp_path / "package.zip").write_bytes(packed_anew(archive(), method=8))
    found = found_in(tmp_path / "package.zip")
    assert fact(found, "archive_sound").about["code"] == "packed" and exit_code(found.facts) == 1
    said = told_of_package(found, Words(shipped("static") / "words"), "en")
    assert any("unpack it and verify the folder" in line for line in said)


@pytest.mark.parametrize("data", [b"PK", b"PK\x05\x06" + b"\0" * 18, b"PK" + b"\xff" * 200, archive()[:5000]])
def test_what_begins_like_a_zip_and_is_none_is_unreadable_and_never_an_exception(tmp_path, data):
    (tmp_path / "package.zip").write_bytes(data)
    found = found_in(tmp_path / "package.zip")
    assert exit_code(found.facts) == 2 and {one.status for one in found.facts[1:]} == {"not_determinable"}


def test_a_folder_that_is_no_package_is_unreadable_rather_than_false(tmp_path):
    (tmp_path / "note.txt").write_text("hello")
    found = found_in(tmp_path)
    assert (exit_code(found.facts), found.facts[0].reason) == (2, "no_package")


def test_what_a_system_leaves_in_a_folder_is_counted_and_no_fault(package):
    for name in (".DS_Store", "data/.DS_Store", "data/photos/Thumbs.db"):
        (package / name).write_bytes(b"left by a system")
    complete = fact(found_in(package), "bag_complete")
    assert (complete.status, complete.about["left_out"]) == ("holds", 3)


@pytest.mark.parametrize("name", [*sound()])
@pytest.mark.parametrize("data", [b"", b"\0" * 99, b"[" * 9999, b"\xff\xfe{}", b"null", b"{}\n"])
def test_rubbish_in_place_of_any_file_is_an_answer_and_never_an_exception(tmp_path, name, data):
    written(bagged(sound() | {name: data}) if "data/" in name else sound() | {name: data}, tmp_path)
    found = check(open_folder(tmp_path), trust())
    assert found.failed or name == "verify.html"
    json.dumps(found.plain())
