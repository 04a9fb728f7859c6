"""``seamwalk verify`` on files from anybody: it always comes back with facts."""

import json

import pytest

from inspect_app.command_line import main
from inspect_app.commands.bounded import verify_bounded
from inspect_app.evidence.fact import FAILS
from inspect_app.evidence.verify import verify
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
    assert main(["verify", str(tmp_path / "report.pdf"), "--trust", ISSUER, "--json"]) == 0
    assert json.loads(capsys.readouterr().out) == verify(countersigned(), ISSUER).plain() | {"failed": False}


@pytest.mark.parametrize("data", [streamed(b"/W[0 0 0]/Index[0 999999999999]"), forking()])
def test_a_small_file_that_asks_for_endless_work_is_unreadable(data):
    assert len(data) < 5000
    found = verify_bounded(data, ISSUER, None, seconds=2)
    assert (found.facts[0].name, found.facts[0].status, found.facts[0].reason) == ("is_pdf", FAILS, "unreadable")
    assert [fact.name for fact in found.facts] == [fact.name for fact in verify(b"", ISSUER).facts]


def test_work_that_takes_more_memory_than_there_is_is_unreadable():
    first = verify_bounded(sealed(), ISSUER, None, memory=1024).facts[0]
    assert (first.name, first.status, first.reason) == ("is_pdf", FAILS, "unreadable")
