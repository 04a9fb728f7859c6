"""The enclosed files inside a whole PDF: anyone can take them out, and nobody can put in others."""

import hashlib
import io
import json
import subprocess
import zlib

import pytest
from joserfc import jws
from joserfc.jwk import ECKey
from pyhanko.pdf_utils import embed
from pyhanko.pdf_utils.generic import NameObject, StreamObject, pdf_name
from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter

from inspect_app.evidence.enclosure import LARGEST, NAMES, Enclosure
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN
from inspect_app.evidence.verify import verify
from tests.evidence.record import contents_of, files, made
from tests.evidence.sealed import RECORD, countersigned, inside, key, sealed, sealed_with

ISSUER, THIEF = key("Issuer (invented)"), key("Issuer (invented) ")


def told(data, trust=None):
    return {fact.name: fact.status for fact in verify(data, trust).facts}


def updated(change, data=None):
    """The file after an incremental update by somebody without the key."""
    writer = IncrementalPdfFileWriter(io.BytesIO(data or sealed()))
    change(writer)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def test_outside_programs_take_the_files_out_and_verify_every_token(tmp_path):
    (tmp_path / "report.pdf").write_bytes(countersigned())
    subprocess.run(["pdfdetach", "-saveall", "-o", tmp_path, tmp_path / "report.pdf"], check=True)
    got = {name: (tmp_path / name).read_bytes() for name in NAMES if (tmp_path / name).is_file()}
    assert got == files(RECORD)
    server = ECKey.import_key(json.loads(got["server-key.json"]))
    owners = {}
    for line in got["enrolments.txt"].splitlines():
        told = json.loads(jws.deserialize_compact(line, server, algorithms=["ES256"]).payload)
        owners[told["kid"]] = ECKey.import_key(told["jwk"])
        assert owners[told["kid"]].thumbprint() == told["kid"]
    for line in got["receipts.txt"].splitlines():
        jws.deserialize_compact(line, server, algorithms=["ES256"])
    assert len(got["entries.txt"].splitlines()) == 5
    for line in got["entries.txt"].splitlines():
        kid = jws.extract_compact(line).headers()["kid"]
        jws.deserialize_compact(line, owners[kid], algorithms=["ES256"])


def test_a_report_sealed_again_without_its_record_is_found_even_by_its_own_issuer():
    assert told(sealed_with(ISSUER, []))["record_enclosed"] == FAILS
    assert told(sealed_with(ISSUER, inside()[:-1]))["record_enclosed"] == FAILS


def test_better_answers_under_another_seal_fail_by_the_entries_and_by_the_fingerprint():
    better = RECORD._replace(contents=RECORD.contents | {
        "answers": [one | {"result": "pass"} for one in RECORD.contents["answers"]]})  # fmt: skip
    data = sealed_with(THIEF, inside(better), hashlib.sha256(contents_of(better)).hexdigest())
    facts = told(data, ISSUER.fingerprint)
    assert facts["seal_intact"] == facts["contents_match"] == facts["entries_signed"] == HOLDS
    assert facts["answers_follow"] == facts["signer_known"] == FAILS
    assert told(data)["signer_known"] == UNKNOWN


def test_contents_or_a_record_of_another_report_do_not_fit_the_pages():
    other = made()
    assert told(sealed_with(ISSUER, inside(other)))["contents_match"] == FAILS
    mixed = [one for one in inside(other) if one.name != "contents.json"]
    facts = told(sealed_with(ISSUER, [*mixed, inside()[0]]))
    assert facts["contents_match"] == HOLDS and facts["heads_match"] == facts["answers_follow"] == FAILS


def test_files_exchanged_after_the_seal_are_no_allowed_change():
    def exchange(writer):
        names = writer.root["/Names"]["/EmbeddedFiles"]["/Names"]
        stream = StreamObject(stream_data=files(made())["entries.txt"])
        stream.compress()
        at = [str(one) for one in names].index("entries.txt")
        names[at + 1]["/EF"]["/F"] = names[at + 1]["/EF"]["/UF"] = writer.add_object(stream)
        writer.mark_update(names.raw_get(at + 1))

    facts = told(updated(exchange))
    assert facts["only_allowed_changes"] == facts["covers_file"] == facts["entries_receipted"] == FAILS


def test_a_file_added_after_the_seal_is_no_allowed_change():
    def add(writer):
        data = embed.EmbeddedFileObject.from_file_data(writer, b"more")
        embed.embed_file(writer, embed.FileSpec("more.txt", embedded_data=data))

    assert told(updated(add))["only_allowed_changes"] == FAILS


def test_a_name_that_stands_twice_or_another_packing_is_not_read():
    assert (
        told(sealed_with(ISSUER, [*inside(), Enclosure("entries.txt", "text/plain", b"")]))["record_enclosed"] == FAILS
    )

    def repack(writer):
        names = writer.root["/Names"]["/EmbeddedFiles"]["/Names"]
        names[1]["/EF"]["/F"][pdf_name("/Filter")] = NameObject("/ASCIIHexDecode")
        writer.mark_update(names[1]["/EF"].raw_get("/F"))

    assert told(updated(repack))["record_enclosed"] == FAILS


@pytest.mark.soak
def test_a_file_that_unpacks_without_end_is_not_unpacked():
    bomb = Enclosure("entries.txt", "text/plain", b"\0" * (LARGEST + 1))
    assert len(zlib.compress(bomb.data)) < LARGEST / 900
    data = sealed_with(ISSUER, [*(one for one in inside() if one.name != bomb.name), bomb])
    assert told(data)["record_enclosed"] == FAILS


@pytest.mark.parametrize("name", ["contents.json", "server-key.json"])
def test_json_nested_without_end_is_an_answer_and_never_an_exception(name):
    deep = Enclosure(name, "application/json", b"[" * 100_000)
    digest = hashlib.sha256(deep.data if name == "contents.json" else contents_of(RECORD)).hexdigest()
    facts = told(sealed_with(ISSUER, [*(one for one in inside() if one.name != name), deep], digest))
    assert HOLDS not in (facts["heads_match"], facts["answers_follow"])


def test_a_file_of_empty_lines_alone_is_no_record():
    lines = Enclosure("entries.txt", "text/plain", b"\n" * 2_000_000)
    data = sealed_with(ISSUER, [*(one for one in inside() if one.name != lines.name), lines])
    assert told(data)["record_enclosed"] == FAILS
