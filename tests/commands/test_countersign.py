"""``seamwalk countersign`` and ``seamwalk fingerprint`` as a person uses them."""

import re

import pytest

from inspect_app.command_line import main
from inspect_app.evidence.verify import verify
from tests.evidence.sealed import sealed, signed_again
from tests.office import Office
from tests.report.countersigners import WORD, file_of, pkcs12_of, shelved
from tests.report.time_authority import serving

ENGINEER = "Engineer (invented)"


@pytest.fixture
def here(tmp_path, monkeypatch):
    monkeypatch.setenv("SEAMWALK_DATA", str(tmp_path / "data"))
    monkeypatch.setenv("SEAMWALK_COUNTERSIGN_PASSPHRASE", WORD)
    monkeypatch.delenv("LC_ALL", raising=False)
    monkeypatch.setenv("LANG", "C")
    (tmp_path / "own.p12").write_bytes(pkcs12_of(ENGINEER))
    (tmp_path / "report.pdf").write_bytes(sealed())
    return tmp_path


def test_a_file_is_countersigned_beside_itself_and_time_stamped(here, capsys, monkeypatch):
    from datetime import UTC, datetime

    with serving(at=datetime.now(UTC)) as authority:
        monkeypatch.setenv("SEAMWALK_TSA_URL", authority.url)
        own = ["--pkcs12", str(here / "own.p12"), "--words", "Read"]
        assert main(["countersign", str(here / "report.pdf"), *own]) == 0
    said, out = capsys.readouterr().out, here / "report-countersigned.pdf"
    found = verify(out.read_bytes())
    assert ENGINEER in said and str(out) in said
    assert not found.failed and found.signatures[-1].stamp.name == "Clock house (invented)"
    assert out.read_bytes().startswith((here / "report.pdf").read_bytes())
    assert main(["countersign", str(here / "report.pdf"), "--pkcs12", str(here / "own.p12")]) == 2
    assert "is not written over" in capsys.readouterr().err


def test_a_report_of_a_job_is_countersigned_where_it_stands(here, capsys):
    job = shelved(office := Office(here / "data"))
    assert main(["countersign", job, "--number", "1", "--pkcs12", str(here / "own.p12")]) == 0
    assert str(file_of(office, job)) in capsys.readouterr().out
    assert [one.name for one in verify(file_of(office, job).read_bytes()).signatures][1:] == [ENGINEER]


def test_a_file_that_another_program_signed_is_taken_in(here, capsys):
    from tests.evidence.sealed import key

    job = shelved(office := Office(here / "data"))
    (here / "signed.pdf").write_bytes(signed_again(sealed(), key(ENGINEER), "Countersignature"))
    assert main(["countersign", job, "--number", "1", "--signed", str(here / "signed.pdf")]) == 0
    assert file_of(office, job).read_bytes() == (here / "signed.pdf").read_bytes()


@pytest.mark.parametrize(
    ("more", "said"),
    [([], "No private key was given"), (["--pkcs12", "none.p12"], "cannot be read"),
     (["--pkcs12", "report.pdf"], "no PKCS#12 file"), (["--signed", "report.pdf"], "taken in for a report of a job")],
)  # fmt: skip
def test_what_is_missing_or_does_not_open_is_said_with_a_way_out(here, capsys, monkeypatch, more, said):
    monkeypatch.chdir(here)
    assert main(["countersign", "report.pdf", *more]) == 2
    assert said in capsys.readouterr().err


def test_without_a_terminal_and_without_the_passphrase_nothing_waits_for_ever(here, capsys, monkeypatch):
    monkeypatch.delenv("SEAMWALK_COUNTERSIGN_PASSPHRASE")
    assert main(["countersign", str(here / "report.pdf"), "--pkcs12", str(here / "own.p12")]) == 2
    assert "SEAMWALK_COUNTERSIGN_PASSPHRASE" in capsys.readouterr().err


def test_a_report_that_was_changed_gets_nobody_s_name(here, capsys):
    (here / "report.pdf").write_bytes(sealed() + b"\n")
    assert main(["countersign", str(here / "report.pdf"), "--pkcs12", str(here / "own.p12")]) == 2
    assert "Do not put your name under it" in capsys.readouterr().err
    assert not (here / "report-countersigned.pdf").exists()


def test_the_fingerprints_are_read_out_four_digits_at_a_time_in_both_languages(here, capsys):
    assert main(["fingerprint"]) == 0
    first = re.findall(r"^  ((?:[0-9a-f]{4} ){15}[0-9a-f]{4})$", capsys.readouterr().out, re.M)
    assert main(["fingerprint", "--lang", "es"]) == 0
    told = capsys.readouterr().out
    assert len(first) == 2 and all(one in told for one in first) and "Clave de este servidor" in told
