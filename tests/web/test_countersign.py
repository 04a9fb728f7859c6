"""Countersigning over HTTP: a key handed over for one signature, a file from elsewhere, and the seal to compare."""

import base64
import threading
from concurrent.futures import ThreadPoolExecutor

import pytest

from inspect_app.evidence.verify import verify
from inspect_app.report.countersign import CannotCountersign, look
from inspect_app.report.judged import judge_apart
from inspect_app.report.seal_key import UnreadableKey, key_in
from tests.evidence.sealed import key, sealed, signed_again
from tests.office import Office
from tests.report.countersigners import WORD, desk, file_of, pkcs12_of, shelved

ENGINEER = "Engineer (invented)"


@pytest.fixture
def office(tmp_path):
    office = Office(tmp_path / "data")
    desk(office).judge, desk(office).opens = look, key_in  # in this process: the same answers, sooner
    return office


@pytest.fixture
def job(office):
    return shelved(office)


@pytest.fixture
def engineer(office, job):
    return office.phone("ines", "engineer", job)


def key_of(name=ENGINEER, passphrase=WORD, **more):
    return {"pkcs12": base64.b64encode(pkcs12_of(name)).decode(), "passphrase": passphrase, **more}


def signing(phone, job, number=1):
    return phone.client.get(f"/api/jobs/{job}/reports/{number}/signing", headers=phone.bearer)


def signs(phone, job, given, number=1):
    return phone.client.post(f"/api/jobs/{job}/reports/{number}/signing", json=given, headers=phone.bearer)


def brings(phone, job, data):
    headers = phone.bearer | {"Content-Type": "application/pdf"}
    return phone.client.post(f"/api/jobs/{job}/reports/1/signed", data=data, headers=headers)


def code(reply):
    return reply.status_code, reply.json["error"]["code"]


def test_a_report_tells_its_signatures_and_takes_one_more_which_the_trail_names(office, job, engineer):
    before = signing(engineer, job).json
    assert (before["free"], before["may"], [one["name"] for one in before["signatures"]]) == (
        3, True, ["Issuer (invented)"])  # fmt: skip
    done = signs(engineer, job, key_of(words="Read and agreed"))
    assert done.status_code == 201
    last = done.json["signatures"][-1]
    assert (last["name"], last["holds"], last["by"], last["stamp"]) == (ENGINEER, True, engineer.person.id, None)
    assert signing(engineer, job).json == done.json and done.json["free"] == 2
    assert done.json["size"] == file_of(office, job).stat().st_size
    with office.app.app_context():
        step = office.app.extensions["office"].trail.of(job)[0]
    assert (step.what, step.facts) == ("countersigned", {"name": ENGINEER, "number": 1})


def test_a_report_signed_elsewhere_is_brought_back(office, job, engineer):
    signed = signed_again(sealed(), key(ENGINEER), "Countersignature")
    assert brings(engineer, job, signed).status_code == 201
    assert file_of(office, job).read_bytes() == signed and not verify(signed).failed
    assert code(brings(engineer, job, signed)) == (400, "countersign_other_file")
    assert not list(file_of(office, job).parent.glob("*.part"))


def test_a_body_far_beyond_the_report_is_not_read(job, engineer):
    assert brings(engineer, job, bytes(5 * 1024 * 1024)).status_code == 413


def test_a_file_that_comes_to_no_end_is_refused_in_words_and_the_report_stays(office, job, engineer):
    desk(office).judge = lambda path: judge_apart(path, 0.0)
    before = file_of(office, job).read_bytes()
    refused = brings(engineer, job, signed_again(sealed(), key(ENGINEER), "Countersignature"))
    assert code(refused) == (400, "countersign_takes_long") and refused.json["error"]["way_out"]
    assert file_of(office, job).read_bytes() == before and not list(file_of(office, job).parent.glob("*.part"))


def test_files_that_take_long_to_look_at_keep_two_threads_and_nobody_from_signing(office, job, engineer):
    looking, go_on = threading.Semaphore(0), threading.Event()

    def slowly(path):
        looking.release()
        assert go_on.wait(10)
        raise CannotCountersign("takes_long")

    desk(office).judge = slowly
    signed = signed_again(sealed(), key(ENGINEER), "Countersignature")
    with ThreadPoolExecutor(2) as people:
        waiting = [people.submit(brings, engineer, job, signed) for _ in range(2)]
        try:
            assert looking.acquire(timeout=10) and looking.acquire(timeout=10)
            busy = brings(engineer, job, signed)
            assert signs(engineer, job, key_of("Owner (invented)")).status_code == 201
        finally:
            go_on.set()
    assert code(busy) == (503, "countersign_looking") and busy.headers["Retry-After"] == "20"
    assert [code(one.result()) for one in waiting] == [(400, "countersign_takes_long")] * 2
    assert not list(file_of(office, job).parent.glob("*.part"))


@pytest.mark.parametrize(
    "given", [key_of(passphrase="Zwölf Ziegel"), {"pkcs12": "!"}, {"pkcs12": "AAAA"}, {"pkcs12": "ñAAA"}]
)
def test_a_key_that_does_not_open_is_refused_without_a_word_of_its_passphrase(job, engineer, given):
    reply = signs(engineer, job, given)
    assert code(reply) == (400, "countersign_not_pkcs12")
    assert "Ziegel" not in reply.text and reply.json["error"]["value"] == ""


def test_keys_that_take_long_to_open_keep_only_two_threads(office, job, engineer):
    opening, go_on = threading.Semaphore(0), threading.Event()

    def slowly(data, passphrase):
        opening.release()
        assert go_on.wait(10)
        raise UnreadableKey(None, "not_pkcs12")

    desk(office).opens = slowly
    with ThreadPoolExecutor(2) as people:
        waiting = [people.submit(signs, engineer, job, key_of()) for _ in range(2)]
        try:
            assert opening.acquire(timeout=10) and opening.acquire(timeout=10)
            busy = signs(engineer, job, key_of())
        finally:
            go_on.set()
    assert code(busy) == (429, "countersign_busy") and busy.headers["Retry-After"] == "20"
    assert [code(one.result()) for one in waiting] == [(400, "countersign_not_pkcs12")] * 2
    desk(office).opens = key_in
    assert signs(engineer, job, key_of()).status_code == 201


def test_a_passphrase_in_the_wrong_form_is_not_told_back(job, engineer):
    for given in (key_of(passphrase="secret " * 400), key_of(passphrase=["secret"]), {"pkcs12": ["secret"]}):
        reply = signs(engineer, job, given)
        assert reply.status_code == 400 and "secret" not in reply.text


def test_what_cannot_be_countersigned_says_why(office, job, engineer):
    assert code(signs(engineer, job, key_of(), 9)) == (404, "report_number_unknown")
    assert code(signing(engineer, job, 9)) == (404, "report_number_unknown")
    assert signs(engineer, job, key_of()).status_code == 201
    assert code(signs(engineer, job, key_of())) == (409, "countersign_same_key")
    file_of(office, job).write_bytes(b"%PDF-1.7 of somebody else")
    assert code(signing(engineer, job)) == (409, "countersign_not_a_report")


def test_who_may_not_countersign_sees_the_signatures_all_the_same(office, job):
    foreman = office.phone("fay", "foreman", job)
    assert signing(foreman, job).json["may"] is False
    assert code(signs(foreman, job, key_of())) == (403, "role_may_not")


def test_the_seal_is_told_to_be_compared(office, engineer):
    told = engineer.client.get("/api/seal", headers=engineer.bearer).json
    with office.app.app_context():
        from inspect_app.web.reports_desk import maker

        assert told["fingerprint"] == maker().key().fingerprint
    assert len(told["server"]) == 64 and told["authority"] is False and told["until"] > "2040"


def test_a_number_that_no_column_of_a_database_holds_is_nobody_s(job, engineer):
    for path in (f"{10**30}/signing", f"{10**30}.pdf", f"asked/{10**30}"):
        assert engineer.client.get(f"/api/jobs/{job}/reports/{path}", headers=engineer.bearer).status_code == 404
