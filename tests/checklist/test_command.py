"""``seamwalk checklist``: what it prints and how it exits."""

import json

import pytest

from inspect_app.command_line import main
from inspect_app.settings import shipped
from tests.checklist.sample import TEXT


def test_the_released_files_are_clean(capsys):
    files = [str(file) for file in sorted(shipped("checklists").glob("*.yaml"))]
    assert len(files) >= 3
    assert main(["checklist", "check", *files]) == 0
    assert len(capsys.readouterr().out.splitlines()) == len(files)


def test_each_problem_is_a_line_with_file_line_field_value_and_way_out(tmp_path, capsys):
    file = tmp_path / "sample-check-3.yaml"
    file.write_text(TEXT.replace("severity: major", "severity: grave").replace("spacing@1", "space@1"), "utf-8")
    assert main(["checklist", "check", "--language", "en", str(file)]) == 2
    lines = capsys.readouterr().out.splitlines()
    assert lines[0] == (
        f"{file}:18: items[0].severity: Not one of the words allowed here (grave) - "
        "use one of: critical, major, minor, record"
    )
    assert lines[1].startswith(f"{file}:30: items[1].rule.name: ") and len(lines) == 2


def test_it_speaks_spanish_to_a_spanish_shell(tmp_path, capsys, monkeypatch):
    monkeypatch.setenv("LC_ALL", "es_MX.UTF-8")
    file = tmp_path / "sample-check-3.yaml"
    file.write_text(TEXT.replace("severity: major", "severity: grave"), "utf-8")
    assert main(["checklist", "check", str(file)]) == 2
    assert "No es una de las palabras permitidas aquí (grave)" in capsys.readouterr().out


def test_one_bad_file_does_not_hide_the_next(tmp_path, capsys):
    for name in ("one-1.yaml", "sample-check-3.yaml", "sample-check-4.yaml"):
        (tmp_path / name).write_text(TEXT if name.startswith("sample") else "[", "utf-8")
    (tmp_path / "two-1.yaml").write_bytes(b"id: a\nversion: \xff\n")
    files = [str(file) for file in sorted(tmp_path.glob("*.yaml"))]
    assert main(["checklist", "check", *files]) == 2
    out = capsys.readouterr().out
    assert "one-1.yaml:1: file: " in out
    assert "sample-check-3.yaml: sample-check 3, 2 items, " in out
    assert "sample-check-4.yaml:1: file: " in out and "sample-check-3.yaml" in out
    assert "two-1.yaml:2: file: " in out


def test_a_folder_stands_for_its_definitions_and_an_empty_one_is_no_clean_one(tmp_path, capsys):
    folder = shipped("checklists")
    assert main(["checklist", "check", str(folder)]) == 0
    assert len(capsys.readouterr().out.splitlines()) == len(list(folder.glob("*.yaml")))
    assert main(["checklist", "check", str(tmp_path)]) == 2
    told = capsys.readouterr()
    assert "*.yaml" in told.err and told.out == ""
    (tmp_path / "sample-check-4.yaml").write_text(TEXT, "utf-8")
    assert main(["checklist", "check", str(folder), str(tmp_path)]) == 2


def test_a_file_that_is_not_there_is_told_with_a_way_out(tmp_path, capsys):
    assert main(["checklist", "check", str(tmp_path / "none-1.yaml")]) == 2
    told = capsys.readouterr()
    assert "none-1.yaml" in told.err and told.out == ""


@pytest.mark.parametrize("to_file", [False, True])
def test_the_json_schema_is_printed_or_written(to_file, tmp_path, capsys):
    file = tmp_path / "schema.json"
    assert main(["checklist", "schema", *([str(file)] if to_file else [])]) == 0
    text = file.read_text("utf-8") if to_file else capsys.readouterr().out
    assert json.loads(text)["$ref"] == "#/$defs/Definition"
