"""A second person's signature: it leaves the first intact, is stated by the server, and is missed when it is gone."""

import io
import subprocess
from concurrent.futures import ThreadPoolExecutor

import pytest
from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter

from inspect_app.entry.statement import parse_statement
from inspect_app.evidence.countersigned import countersigned, countersigned_fact, statements_in
from inspect_app.evidence.fact import FAILS, HOLDS
from inspect_app.evidence.verify import verify
from inspect_app.report.countersign import CannotCountersign, look
from inspect_app.report.judged import judge_apart
from inspect_app.report.seal_key import key_in
from inspect_app.web.reports_desk import maker
from tests.evidence.sealed import key, sealed, signed_again
from tests.office import Office
from tests.report.countersigners import WORD, desk, file_of, pkcs12_of, sha256, shelved

ENGINEER, OWNER, THIRD, FOURTH = (f"{name} (invented)" for name in ("Engineer", "Owner", "Third", "Fourth"))


@pytest.fixture
def office(tmp_path):
    return Office(tmp_path / "data")


def signs(office, job, name, kind="ec", words=None, **more):
    with office.app.app_context():
        return desk(office).sign(job, 1, key_in(pkcs12_of(name, kind, **more), WORD), "chief", words)


def refusal(call, *given, **more):
    with pytest.raises(CannotCountersign) as raised:
        call(*given, **more)
    return raised.value.code


def stated(office):
    with office.app.app_context():
        return [parse_statement(one).payload for one in office.parts.reading.statements(("countersignature",))]


def there(office, job, prints):
    with office.app.app_context():
        lines = [one.encode() for one in office.parts.reading.statements(("enrolment", "countersignature"))]
    fact = countersigned_fact(statements_in(lines, office.parts.server_key.jwk), job, prints)
    return fact.status, fact.reason


def test_three_people_countersign_and_every_earlier_byte_and_signature_stays(office, tmp_path):
    job = shelved(office)
    before = file_of(office, job).read_bytes()
    for name, kind in ((ENGINEER, "ec"), (OWNER, "rsa"), (THIRD, "ec")):
        done = signs(office, job, name, kind, "Read and agreed")
        after = file_of(office, job).read_bytes()
        assert after.startswith(before) and len(after) > len(before)
        assert done.signatures[-1]["name"] == name and done.signatures[-1]["by"] == "chief"
        before = after
    found = verify(before)
    assert not found.failed and [one.certifies for one in found.signatures] == [True, False, False, False]
    told = subprocess.run(["pdfsig", str(file_of(office, job))], capture_output=True, text=True, check=False).stdout
    assert told.count("Signature is Valid") == 4 and told.count("  - Total document signed") == 1
    assert refusal(signs, office, job, FOURTH) == "no_room"
    assert file_of(office, job).read_bytes() == before


def test_what_they_say_and_who_they_are_stands_in_the_box(office):
    job = shelved(office)
    signs(office, job, ENGINEER, words="Read; agreed as to areas 1 and 2")
    shown = subprocess.run(["pdftotext", "-layout", str(file_of(office, job)), "-"], capture_output=True, text=True,
                           check=True).stdout  # fmt: skip
    assert "Read; agreed as to areas 1 and 2" in shown and ENGINEER in shown and "Without time stamp" in shown


def test_the_server_states_each_and_a_file_cut_back_is_missed(office):
    job = shelved(office)
    prints = [sha256(file_of(office, job))]
    for name in (ENGINEER, OWNER):
        signs(office, job, name)
        prints.append(sha256(file_of(office, job)))
    said = [(one["n"], one["before"], one["after"], one["name"]) for one in stated(office)]
    assert said == [(1, prints[0], prints[1], ENGINEER), (2, prints[1], prints[2], OWNER)]
    assert there(office, job, {1: prints[2]}) == (HOLDS, None)
    assert there(office, job, {1: prints[1]}) == (FAILS, "countersignature_gone")
    assert there(office, job, {1: prints[0]}) == (FAILS, "countersignature_gone")
    assert there(office, job, {1: "0" * 64}) == (FAILS, "countersigned_otherwise")
    assert there(office, job, {}) == (HOLDS, None), "of a report that is not here nothing is said"


def test_a_statement_that_this_server_did_not_sign_says_nothing(office, tmp_path):
    job = shelved(office)
    signs(office, job, ENGINEER)
    with office.app.app_context():
        lines = [b"no statement", *(one.encode() for one in office.parts.reading.statements(("countersignature",)))]
    assert len(statements_in(lines, office.parts.server_key.jwk)) == 1
    assert statements_in(lines, Office(tmp_path / "other").parts.server_key.jwk) == []


def test_a_later_report_encloses_the_statement_and_nothing_else_makes_it_a_new_one(office):
    from tests.report.test_make import make, walked

    job, _ = walked(office)
    first = make(office, job)
    with office.app.app_context():
        desk(office).sign(job, 1, key_in(pkcs12_of(ENGINEER), WORD), "chief")
    again = make(office, job)
    assert again.new is False and again.shelved.number == 1, "a countersignature alone supersedes nothing"
    later = make(office, job, language="es")
    assert later.shelved.number == 2 and not verify(later.shelved.pdf.read_bytes()).failed
    with office.app.app_context():
        signed = maker().source.gather(job, "0" * 64).signed
    said = statements_in([one.encode() for one in signed.enrolments], office.parts.server_key.jwk)
    assert [(n, one["name"]) for n, every in countersigned(said, job).items() for one in every] == [(1, ENGINEER)]
    cut = first.shelved.pdf.read_bytes()[: look(first.shelved.pdf).ends[0]]
    assert not verify(cut).failed, "of the file alone nobody can tell"


def test_the_one_who_sealed_or_signed_already_is_no_second_person(office):
    job = shelved(office)
    signs(office, job, ENGINEER)
    assert refusal(signs, office, job, ENGINEER) == "same_key"
    with office.app.app_context():
        assert refusal(desk(office).sign, job, 1, key("Issuer (invented)"), "chief") == "same_key"


@pytest.mark.parametrize(("more", "code"), [({"days": 5}, "unfit"), ({"usage": False}, "unfit")])
def test_a_certificate_that_has_expired_or_is_not_for_signatures_leaves_the_report_as_it_was(office, more, code):
    job = shelved(office)
    before = file_of(office, job).read_bytes()
    assert refusal(signs, office, job, ENGINEER, **more) == code
    assert file_of(office, job).read_bytes() == before and stated(office) == []
    left = sorted(one.name for one in file_of(office, job).parent.iterdir())
    assert left == ["contents-0001.json", "report-0001.pdf"]


def shadowed() -> bytes:
    """An update that paints nothing, only adds: what pdfsig lets pass."""
    writer = IncrementalPdfFileWriter(io.BytesIO(sealed()))
    writer.root["/Added"] = writer.add_object(type(writer.root)({}))
    writer.update_root()
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


@pytest.mark.parametrize(
    ("data", "code"),
    [(shadowed(), "not_intact"), (sealed() + b"\n", "not_intact"), (sealed()[:-40], "not_a_report"),
     (b"%PDF-1.7\n", "not_a_report"), (sealed().replace(b"/Rotate 0", b"/Rotate 9"), "not_intact")],
)  # fmt: skip
def test_nobody_s_name_comes_under_a_report_that_was_changed(office, data, code):
    job = shelved(office, data)
    assert refusal(signs, office, job, ENGINEER) in (code, "not_a_report")
    assert file_of(office, job).read_bytes() == data


def test_a_copy_signed_by_another_program_is_taken_in(office, tmp_path):
    job = shelved(office)
    given = tmp_path / "signed.pdf"
    given.write_bytes(signed_again(sealed(), key(ENGINEER), "Countersignature2"))
    with office.app.app_context():
        done = desk(office).take(job, 1, given, "chief")
    assert done.signatures[-1]["name"] == ENGINEER and done.free == 2
    assert file_of(office, job).read_bytes() == given.read_bytes()
    assert [one["name"] for one in stated(office)] == [ENGINEER]


def test_what_is_not_that_report_with_a_sound_signature_more_is_not_taken(office, tmp_path):
    job = shelved(office)
    good = signed_again(sealed(), key(ENGINEER), "Countersignature")
    other = signed_again(shadowed(), key(ENGINEER), "Countersignature")
    twice = signed_again(sealed(), key("Issuer (invented)"), "Countersignature")
    flipped = good[:-300] + bytes([good[-300] ^ 1]) + good[-299:]
    cases = {
        "other_file": [sealed(), good[1:], b"x" + good[1:], b""], "same_key": [twice],
        "not_intact": [other, good + b"\n", sealed() + b"trash" * 99], None: [flipped, good[:-9]],
    }  # fmt: skip
    given, desk(office).judge = tmp_path / "signed.pdf", look  # in this process: the same answers, sooner
    for code, files in cases.items():
        for data in files:
            given.write_bytes(data)
            with office.app.app_context():
                found = refusal(desk(office).take, job, 1, given, "chief")
            assert code is None or found == code
    assert file_of(office, job).read_bytes() == sealed() and stated(office) == []


def test_a_file_that_asks_for_endless_work_is_left_when_its_time_is_up(tmp_path):
    from tests.commands.test_verify import forking

    (tmp_path / "small.pdf").write_bytes(forking())
    assert refusal(judge_apart, tmp_path / "small.pdf", seconds=2) == "takes_long"


def test_a_countersignature_that_a_power_cut_left_unstated_is_stated_the_next_time(office, monkeypatch):
    job = shelved(office)

    class Cut(Exception):
        pass

    def cut(*_):
        raise Cut

    class Ends(type(office.parts.statements)):
        issue = cut

    with office.app.app_context(), pytest.raises(Cut):
        own = desk(office)
        whole, own.statements = own.statements, Ends(own.statements.transactions, own.statements.key, own.clock)
        own.sign(job, 1, key_in(pkcs12_of(ENGINEER), WORD), "chief")
    own.statements = whole
    assert stated(office) == [] and len(verify(file_of(office, job).read_bytes()).signatures) == 2
    signs(office, job, OWNER)
    assert [(one["n"], one["name"], one["by"]) for one in stated(office)] == [
        (1, ENGINEER, "server"), (2, OWNER, "chief")]  # fmt: skip
    assert stated(office)[-1]["after"] == sha256(file_of(office, job))


def test_two_servers_on_one_store_take_nobody_s_countersignature_away(office):
    job = shelved(office)
    other = office.again()
    with ThreadPoolExecutor(2) as pool:
        done = [pool.submit(signs, at, job, name) for at, name in ((office, ENGINEER), (other, OWNER))]
        assert {one.result().signatures[-1]["name"] for one in done} <= {ENGINEER, OWNER}
    names = [one.name for one in verify(file_of(office, job).read_bytes()).signatures][1:]
    assert sorted(names) == [ENGINEER, OWNER] and [one["name"] for one in stated(office)] == names
