"""``seamwalk verify`` on files from anybody: it always comes back with facts."""

import json

import pytest

from inspect_app.command_line import main
from inspect_app.commands.again import verify_again
from inspect_app.commands.bounded import verify_bounded
from inspect_app.commands.verify import exit_code
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from tests.evidence.sealed import countersigned, key, sealed

ISSUER = key("Issuer (invented)").fingerprint


def streamed(dictionary: bytes) -> bytes:
    """A file whose whole cross-reference is one stream (ISO 32000-1, 7.5.8) without a byte in it."""
    start = b"%PDF-1.7\n"
    table = b"1 0 obj\n<</Type/XRef/Size 9/Length 0/Root 2 0 R" + dictionary + b">>\nstream\n\nendstream\nendobj\n"
    return start + table + b"startxref\n%d\n%%%%EOF\n" % len(start)


def forking() -> bytes:
    """A form whose fields have two children each, the same one twice, 40 deep: a million million paths."""
    fields = {n: b"<</T(a)/Kids[%d 0 R %d 0 R]>>" % (n + 1, n + 1) for n in range(2, 42)}
    data, places = b"%PDF-1.7\n", {}
    for n, body in {1: b"<</AcroForm<</Fields[2 0 R]>>>>", **fields, 42: b"<</T(z)/FT/Sig>>"}.items():
        places[n] = len(data)
        data += b"%d 0 obj\n%s\nendobj\n" % (n, body)
    rows = b"".join(b"%010d 00000 n \n" % places[n] for n in sorted(places))
    table = b"xref\n0 43\n0000000000 65535 f \n" + rows + b"trailer\n<</Size 43/Root 1 0 R>>\nstartxref\n%d\n%%%%EOF\n"
    return data + table % len(data)


def test_the_command_says_of_an_honest_report_what_verification_finds(tmp_path, capsys):
    (tmp_path / "report.pdf").write_bytes(countersigned())
    assert main(["verify", str(tmp_path / "report.pdf"), "--trust", ISSUER, "--json"]) == 2
    found = verify_again(countersigned(), [ISSUER])
    # Its contents are a stand-in of no form: nobody can make them again, and nobody calls them false.
    assert {fact.name for fact in found.facts if fact.status != HOLDS} == {
        "time_stamped", "signer_known", "contents_follow", "inputs_follow"}  # fmt: skip
    told = json.loads(capsys.readouterr().out)
    assert told == {"kind": "report"} | found.plain() | {"failed": False, "exit": 2}


def test_the_exit_code_is_0_only_when_every_fact_holds_1_when_one_is_false_2_when_nothing_can_be_told():
    first, true, false, open_ = (Fact("x", status) for status in (FAILS, HOLDS, FAILS, UNKNOWN))
    assert [exit_code(facts) for facts in ([true], [true, true], [true, open_], [true, open_, false])] == [0, 0, 2, 1]
    assert [exit_code(facts) for facts in ([first], [first, open_], [first, open_, false])] == [2, 2, 1]


@pytest.mark.parametrize(
    "data, code", [(b"", 2), (b"no report", 2), (b"%PDF-1.7", 2), (sealed()[:-9], 2), (sealed() + b" ", 1)]
)
def test_what_does_not_read_is_not_called_false_and_what_is_false_is_not_called_unreadable(tmp_path, data, code):
    (tmp_path / "report.pdf").write_bytes(data)
    assert main(["verify", str(tmp_path / "report.pdf"), "--trust", ISSUER]) == code


@pytest.mark.parametrize("data", [streamed(b"/W[0 0 0]/Index[0 999999999999]"), forking()])
def test_a_small_file_that_asks_for_endless_work_is_unreadable(data):
    assert len(data) < 5000
    found = verify_bounded(data, ISSUER, None, seconds=2)
    assert (found.facts[0].name, found.facts[0].status, found.facts[0].reason) == ("is_pdf", FAILS, "unreadable")
    assert [fact.name for fact in found.facts] == [fact.name for fact in verify_again(b"", [ISSUER]).facts]


def test_work_that_takes_more_memory_than_there_is_is_unreadable():
    first = verify_bounded(sealed(), ISSUER, None, memory=1024).facts[0]
    assert (first.name, first.status, first.reason) == ("is_pdf", FAILS, "unreadable")


@pytest.mark.parametrize("language", ["en", "es"])
def test_of_what_nobody_could_count_no_number_is_told(tmp_path, capsys, language):
    (tmp_path / "report.pdf").write_bytes(b"no report")
    main(["verify", "--redraw", "--lang", language, str(tmp_path / "report.pdf")])
    assert "{" not in capsys.readouterr().out
