"""``seamwalk report`` and ``seamwalk verify`` as a person uses them."""

import json
from datetime import UTC, datetime

import pytest

from inspect_app.command_line import main
from inspect_app.evidence.entries import REST
from tests.evidence.sealed import countersigned, key, sealed
from tests.office import Office
from tests.report.test_make import walked
from tests.report.time_authority import serving


@pytest.fixture
def data(tmp_path, monkeypatch):
    monkeypatch.setenv("SEAMWALK_DATA", str(tmp_path / "data"))
    monkeypatch.delenv("LC_ALL", raising=False)
    monkeypatch.setenv("LANG", "C")
    return tmp_path


def test_a_report_is_made_stamped_copied_and_verifies(data, capsys, monkeypatch):
    job, _ = walked(Office(data / "data"))
    with serving(at=datetime.now(UTC)) as authority:
        monkeypatch.setenv("SEAMWALK_TSA_URL", authority.url)
        assert main(["report", job, "--out", str(data / "out.pdf"), "--paper", "a4"]) == 0
    said = capsys.readouterr().out
    fingerprint = said.split()[-1]
    assert str(data / "out.pdf") in said and len(fingerprint) == 64
    contents = next((data / "data" / "reports" / job).glob("contents-*.json"))
    asked = ["verify", str(data / "out.pdf"), "--trust", fingerprint, "--contents", str(contents)]
    assert main([*asked, "--json"]) == 2, "anybody can run a time authority"
    clock = next(one for one in json.loads(capsys.readouterr().out)["facts"] if one["name"] == "authority_known")
    assert clock["reason"] == "authority_not_given"
    assert main([*asked, "--trust", clock["about"]["fingerprint"]]) == 0
    assert "Every fact above holds" in capsys.readouterr().out


@pytest.mark.parametrize("url", ["ftp://stamps.invalid/", "stamps.invalid", "https://"])
def test_an_address_that_cannot_give_time_stamps_is_refused_with_a_way_out(data, capsys, monkeypatch, url):
    monkeypatch.setenv("SEAMWALK_TSA_URL", url)
    assert main(["report", "any"]) == 2
    said = capsys.readouterr().err
    assert url in said and "http:// or https://" in said


def test_an_unknown_job_is_refused_by_name_with_the_jobs_there_are(data, capsys):
    job, _ = walked(Office(data / "data"))
    assert main(["report", "no-such-job"]) == 2
    said = capsys.readouterr().err
    assert "There is no job no-such-job on this server." in said
    assert job in said and "ids listed above" in said
    assert "belong" not in said


def test_on_a_server_without_jobs_the_way_to_one_is_said(data, capsys, monkeypatch):
    assert main(["report", "nope"]) == 2
    assert "no job nope" in (said := capsys.readouterr().err) and "seamwalk job add" in said
    monkeypatch.setenv("LANG", "es_MX.UTF-8")
    assert main(["report", "nope"]) == 2
    assert "No hay ninguna obra nope en este servidor" in capsys.readouterr().err


def test_a_report_is_announced_in_the_machine_s_language_and_a_draft_is_said_to_be_one(data, capsys, monkeypatch):
    job, _ = walked(Office(data / "data"), "c" * 64)
    monkeypatch.setenv("LANG", "es_MX.UTF-8")
    assert main(["report", job]) == 0
    told = capsys.readouterr()
    assert "El informe 1 está hecho:" in told.out
    assert told.err.strip() == "Es un borrador: falta una cosa. Figura en su sección 1."
    assert main(["report", job]) == 0
    assert "Nada ha cambiado desde el informe 1:" in capsys.readouterr().out
    monkeypatch.setenv("LANG", "C")
    assert main(["report", job]) == 0
    assert "Nothing has changed since report 1:" in capsys.readouterr().out


def test_a_seal_key_that_cannot_be_read_is_refused_with_a_way_out(data, capsys, monkeypatch):
    job, _ = walked(Office(data / "data"))
    monkeypatch.setenv("SEAMWALK_SEAL_PKCS12", str(data / "none.p12"))
    assert main(["report", job]) == 2
    assert "SEAMWALK_SEAL_PKCS12" in capsys.readouterr().err


def test_verify_says_in_words_what_it_cannot_know(data, capsys):
    (data / "r.pdf").write_bytes(countersigned())
    assert main(["verify", str(data / "r.pdf")]) == 2
    said = capsys.readouterr().out
    assert "not determinable" in said and "--trust" in said and "Nothing failed" in said
    assert said.count("✓") == 10 + len(("record_enclosed", "contents_match", *REST)) and "✗" not in said
    assert main(["verify", str(data / "r.pdf"), "--trust", "00" * 32]) == 1
    assert "Do not rely on this file" in capsys.readouterr().out


def test_verify_fails_for_a_changed_file_and_tells_programs_which_fact(data, capsys):
    changed = bytearray(sealed())
    changed[60] ^= 1
    (data / "r.pdf").write_bytes(changed)
    assert main(["verify", str(data / "r.pdf"), "--json", "--trust", key("Issuer (invented)").fingerprint]) == 1
    told = json.loads(capsys.readouterr().out)
    assert told["failed"] is True
    assert {fact["name"] for fact in told["facts"] if fact["status"] == "fails"} >= {
        "seal_intact",
        "covers_file",
        "signer_known",
    }


def test_verify_speaks_spanish_where_the_machine_does(data, capsys, monkeypatch):
    monkeypatch.setenv("LANG", "es_MX.UTF-8")
    (data / "r.pdf").write_bytes(sealed())
    assert main(["verify", str(data / "r.pdf")]) == 2
    assert "Nada falló" in capsys.readouterr().out


def test_a_file_that_is_not_there_is_refused(data, capsys):
    assert main(["verify", str(data / "none.pdf")]) == 2
    assert "none.pdf" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("given", "shown"), [("12", "12"), ("", "—"), ("g" * 64, "g" * 64), ("a" * 65, "a" * 65), ("\x1b[2J", "□[2J")]
)
@pytest.mark.parametrize("extra", [[], ["--json"]])
def test_a_fingerprint_typed_wrong_is_refused_and_nothing_is_said_of_the_file(data, capsys, given, shown, extra):
    (data / "r.pdf").write_bytes(sealed())
    assert main(["verify", str(data / "r.pdf"), "--trust", given, *extra]) == 2
    said = capsys.readouterr()
    field, message, way_out = said.err.splitlines()
    assert (said.out, field) == ("", f"--trust: {shown}")
    assert "fingerprint" in message and "64" in way_out
    assert "Do not rely" not in said.err


def test_a_fingerprint_may_be_typed_with_colons_blanks_and_capitals(data, capsys):
    (data / "r.pdf").write_bytes(sealed())
    plain = key("Issuer (invented)").fingerprint.upper()
    pairs = [plain[at : at + 2] for at in range(0, 64, 2)]
    for between in (":", " "):
        main(["verify", str(data / "r.pdf"), "--trust", between.join(pairs)])
        said = capsys.readouterr().out
        assert "✗" not in said and "✓ The seal is of the certificate expected" in said


@pytest.mark.parametrize("flag", [[], ["--contents"]])
def test_the_way_out_of_a_missing_file_is_about_that_file(data, capsys, flag):
    (data / "r.pdf").write_bytes(sealed())
    missing = str(data / "none.pdf")
    assert main(["verify", *([str(data / "r.pdf")] if flag else []), *flag, missing]) == 2
    field, message, way_out = capsys.readouterr().err.splitlines()
    assert field == f"{'contents' if flag else 'file'}: {missing}" and missing in message
    assert "name" in way_out and "SEAMWALK_DATA" not in way_out


def test_a_copy_that_cannot_be_written_is_told_with_a_way_out_of_its_own(data, capsys):
    job, _ = walked(Office(data / "data"))
    assert main(["report", job, "--out", str(data / "none" / "r.pdf")]) == 2
    told = capsys.readouterr().err
    assert str(data / "none" / "r.pdf") in told and "SEAMWALK_DATA" not in told and "--out" in told


def test_verify_and_report_speak_the_language_asked_for_whatever_the_machine_s(data, capsys, monkeypatch):
    (data / "r.pdf").write_bytes(sealed())
    assert main(["verify", str(data / "r.pdf"), "--lang", "es"]) == 2
    assert "Nada falló" in capsys.readouterr().out
    assert main(["verify", str(data / "none.pdf"), "--lang", "es"]) == 2
    assert "no se puede leer" in capsys.readouterr().err
    job, _ = walked(Office(data / "data"))
    assert main(["report", job, "--lang", "es"]) == 0
    assert "El informe 1 está hecho:" in capsys.readouterr().out
    monkeypatch.setenv("LANG", "es_MX.UTF-8")
    assert main(["verify", str(data / "r.pdf"), "--lang", "en"]) == 2
    assert "Nothing failed" in capsys.readouterr().out
    assert main(["report", job]) == 0
    assert "El informe 2 está hecho:" in capsys.readouterr().out  # the job's own language again, said in the machine's
    assert main(["report", "nope", "--lang", "en"]) == 2
    assert "There is no job nope" in capsys.readouterr().err
