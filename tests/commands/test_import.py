"""``seamwalk import``, as it is typed."""

import io
import json
import sys

import pytest

from inspect_app.command_line import main
from tests.copies import files_of, item, manifest, sha, tar
from tests.office import Office

PICTURE = b"\xff\xd8\xff a picture, invented"


@pytest.fixture
def given(tmp_path, monkeypatch):
    """An office, and a copy of one walk with its photo: ``(office, members)``."""
    monkeypatch.setenv("SEAMWALK_DATA", str(tmp_path / "data"))
    monkeypatch.delenv("SEAMWALK_DATABASE_URL", raising=False)
    office = Office(tmp_path / "data")
    job, _ = office.job()
    phone = office.phone("ann", "foreman", job)
    return office, files_of(office.walk(phone, job, sha(PICTURE)), [(job, PICTURE)], phone)


def test_a_whole_copy_is_told_in_a_few_lines_and_again_says_that_it_was_here(given, tmp_path, capsys):
    file = tmp_path / "seamwalk-copy.tar"
    file.write_bytes(tar(given[1]))
    assert main(["import", str(file), "--lang", "en"]) == 0
    said = capsys.readouterr().out
    assert "sealed by the key of ann (invented)" in said and "Came in now: 5" in said and "✗" not in said
    assert "seamwalk report " in said, "the walk in it is signed and whole"
    assert main(["import", str(file), "--lang", "es"]) == 0
    assert "Ya estaba aquí: 5" in capsys.readouterr().out


def test_what_did_not_come_is_named_with_its_reason_and_way_out_in_both_languages(given, capsys, monkeypatch):
    name, photo = given[1][-1][0].split("/")[2], given[1][-1]
    data = tar([*given[1][:-2], (photo[0], photo[1] + b"!"), ("../../etc/\x1b[31mpasswd", b"x")])
    wanted = {"en": ("Damaged in the file: 1", "not in the file: 1", "Make a new copy"),
              "es": ("Dañado en el archivo: 1", "no en el archivo: 1", "Haga una copia nueva")}  # fmt: skip
    for language, words in wanted.items():
        monkeypatch.setattr(sys, "stdin", type("Piped", (), {"buffer": io.BytesIO(data)})())
        assert main(["import", "-", "--lang", language]) == 1
        said = capsys.readouterr().out
        assert all(word in said for word in words), said
        assert name in said and "\x1b" not in said and "{" not in said


def test_what_a_list_says_steers_no_terminal(given, tmp_path, capsys):
    file = tmp_path / "seamwalk-copy.tar"
    file.write_bytes(tar([("manifest.json", manifest([item("entry", "a" * 43, "\x1b]0;all came in\x07\n✓", 1)]))]))
    assert main(["import", str(file), "--lang", "en"]) == 1
    assert not {"\x1b", "\x07"} & set(said := capsys.readouterr().out) and "\n✓" not in said


def test_programs_get_each_item_with_its_status(given, tmp_path, capsys):
    file = tmp_path / "seamwalk-copy.tar"
    file.write_bytes(tar(given[1][:-1]))
    assert main(["import", str(file), "--json"]) == 1
    told = json.loads(capsys.readouterr().out)
    assert told["sealed"] and not told["whole"] and told["seals"][0]["state"] == "good"
    assert [one["status"] for one in told["items"]] == ["accepted"] * 4 + ["absent"]
    assert told["items"][-1]["code"] == "copy_absent" and told["items"][0]["kind"] == "walk"


@pytest.mark.parametrize("data", [None, b"", b"%PDF-1.7 not a copy"])
def test_a_file_that_is_no_copy_or_is_not_there_is_refused_in_words(given, tmp_path, capsys, data):
    file = tmp_path / "another.tar"
    if data is not None:
        file.write_bytes(data)
    assert main(["import", str(file), "--lang", "en"]) == 2
    said = capsys.readouterr().err
    assert str(file) in said and len(said.splitlines()) == 3
