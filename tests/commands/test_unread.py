"""Whoever reads what a command tells may go before it has told all: it ends quietly, by the status that shells know."""

import os
import subprocess
import sys

import pytest

from inspect_app.command_line import UNREAD, main, unread


def told_to_nobody(*words, **more):
    """Exit code and standard error of the command with nobody at the other end of its standard output."""
    reads, writes = os.pipe()
    os.close(reads)
    command = [sys.executable, "-m", "inspect_app.command_line", *words]
    ended = subprocess.run(command, stdout=writes, stderr=subprocess.PIPE, text=True, check=False, **more)
    os.close(writes)
    return ended.returncode, ended.stderr


@pytest.mark.parametrize(
    "words", [("calc", "--json"), ("calc", "slope", "slope=25%", "--json"), ("verify", "-", "--json")]
)
def test_a_closed_pipe_ends_a_command_without_a_word(words):
    assert told_to_nobody(*words, stdin=subprocess.DEVNULL) == (UNREAD, "")


@pytest.mark.skipif(os.name != "posix", reason="a shell that can close an output")
@pytest.mark.parametrize("words, code", [("calc slope slope=25%", 0), ("verify -", 2)])
def test_a_command_without_an_output_answers_by_its_status_alone(words, code):
    command = ["sh", "-c", f'"{sys.executable}" -m inspect_app.command_line {words} >&-']
    ended = subprocess.run(command, stdin=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True, check=False)
    assert (ended.returncode, ended.stderr) == (code, "")


def test_a_package_is_made_whole_before_nobody_hears_of_it(tmp_path):
    from tests.office import Office

    office = Office(tmp_path / "data")
    job, _ = office.job()
    environment = {**os.environ, "SEAMWALK_DATA": str(tmp_path / "data")}
    code, wrong = told_to_nobody("package", job, "--to", str(tmp_path / "made"), env=environment)
    assert (code, wrong) == (UNREAD, "")
    assert (tmp_path / "made" / "bagit.txt").is_file()


def test_what_breaks_elsewhere_than_at_the_reader_s_end_is_not_passed_over(monkeypatch):
    def broken(_arguments):
        raise BrokenPipeError

    monkeypatch.setattr("inspect_app.command_line.run", broken)
    with pytest.raises(BrokenPipeError):
        main(["calc"])
    assert unread(sys.stdout) is False
