"""The call for random tickets: numbered without a gap, the same when asked again, never many ahead, each its key's
alone, and none for anybody else."""

import threading
from collections import Counter
from collections.abc import Iterator

import pytest

from inspect_app.entry.jws import verify
from inspect_app.entry.statement import parse_statement
from inspect_app.people.tickets import AHEAD, AUDITS
from inspect_app.store.database import db
from tests.office import Office
from tests.phone import new_uuid


@pytest.fixture(scope="module")
def office(tmp_path_factory) -> Iterator[Office]:
    """One server for all: every test has a job and phones of its own."""
    made = Office(tmp_path_factory.mktemp("office") / "data")
    yield made
    with made.app.app_context():
        db.engine.dispose()


@pytest.fixture
def crew(office):
    fay = office.phone(f"fay-{new_uuid()}", "foreman")
    job, chief = office.job(fay.person.id)
    return fay, job, chief


def issued(office, job):
    """The tickets of this job, as the store holds them."""
    with office.app.app_context():
        every = [parse_statement(one).payload for one in office.parts.reading.statements(("ticket",))]
    return [one for one in every if one["job"] == job]


def said(reply):
    assert reply.status_code == 200, reply.json
    return [parse_statement(one).payload for one in reply.json["tickets"]]


def numbers(reply):
    return [one["n"] for one in said(reply)]


def accepted(phone, token):
    return phone.send(token).json["answers"][0]["status"] == "accepted"


def test_a_phone_gets_twelve_signed_tickets_of_its_own_each_with_other_random_bytes(office, crew):
    fay, job, _ = crew
    reply = fay.tickets(job)
    for one in reply.json["tickets"]:
        verify(parse_statement(one), office.parts.server_key.jwk)
    told = said(reply)
    assert [one["n"] for one in told] == list(range(12))
    assert {(one["job"], one["kid"], one["series"]) for one in told} == {(job, fay.kid, "work")}
    assert len({one["random"] for one in told}) == 12


def test_asked_again_the_same_tickets_come_and_none_is_issued(office, crew):
    fay, job, _ = crew
    first = fay.tickets(job).json["tickets"]
    assert fay.tickets(job).json["tickets"] == first
    assert fay.tickets(job, have=4).json["tickets"] == first[5:]
    assert fay.tickets(job, have=11).json["tickets"] == []
    assert len(issued(office, job)) == 12


def test_an_accepted_lot_brings_the_tickets_up_to_twelve_ahead_again(crew):
    fay, job, _ = crew
    fay.tickets(job)
    assert accepted(fay, fay.lot(job, 0)) and numbers(fay.tickets(job, have=11)) == [12]
    assert accepted(fay, fay.lot(job, 4)) and numbers(fay.tickets(job, have=12)) == [13, 14, 15, 16]
    assert numbers(fay.tickets(job)) == list(range(5, 17)), "what lies below a used number is skipped for good"


def test_a_lot_under_a_number_never_given_or_of_another_key_issues_nothing(office, crew):
    fay, job, chief = crew
    fay.tickets(job)
    assert accepted(fay, fay.lot(job, 999_999_999)) and accepted(fay, fay.lot(job, 12))
    stolen = chief.lot(job, 8, owner=fay.kid)
    assert accepted(chief, stolen) and accepted(chief, chief.lot(job, 3))
    assert numbers(fay.tickets(job, have=11)) == []
    assert len(issued(office, job)) == AHEAD


def test_series_jobs_and_keys_count_each_for_themselves(office, crew):
    fay, job, chief = crew
    other, _ = office.job(fay.person.id)
    fay.tickets(job)
    assert numbers(fay.tickets(other)) == list(range(12))
    assert numbers(fay.tickets(job, "audit")) == [0]
    assert numbers(chief.tickets(job)) == list(range(12))
    everything = [one["random"] for phone, where in ((fay, job), (fay, other), (chief, job))
                  for one in said(phone.tickets(where))]  # fmt: skip
    assert len(set(everything)) == 36


def test_an_audit_takes_one_at_a_time_and_a_lost_answer_costs_none(crew):
    fay, job, _ = crew
    first = fay.tickets(job, "audit").json["tickets"]
    assert fay.tickets(job, "audit").json["tickets"] == first
    assert numbers(fay.tickets(job, "audit", have=0)) == [1]
    assert accepted(fay, fay.lot(job, 1, "audit")) and numbers(fay.tickets(job, "audit", have=1)) == [2]


def test_audit_tickets_are_capped_for_a_day_and_the_refusal_says_how_long(office, crew):
    fay, job, _ = crew
    with office.app.app_context(), office.parts.transactions.writing():
        for have in range(-1, AUDITS - 1):
            assert len(office.parts.tickets.give(job, fay.kid, "audit", have)) == 1
    refused = fay.tickets(job, "audit", AUDITS - 1)
    assert (refused.status_code, refused.json["error"]["code"]) == (429, "too_many_tickets")
    assert 0 < int(refused.headers["Retry-After"]) <= 24 * 3600 + 1
    assert numbers(fay.tickets(job, "audit", AUDITS - 2)) == [AUDITS - 1], "what was given can still be fetched"
    office.clock.forward(hours=25)
    fay.get_token()
    assert numbers(fay.tickets(job, "audit", AUDITS - 1)) == [AUDITS]


def test_asked_at_once_from_many_threads_no_number_is_missing_or_given_twice(office, crew):
    fay, job, _ = crew
    told, start = [], threading.Barrier(4)

    def ask(series):
        start.wait()
        with office.app.app_context():
            told.append((series, office.parts.tickets.give(job, fay.kid, series, -1)))

    threads = [threading.Thread(target=ask, args=(series,)) for series in ("work", "work", "audit", "audit")]
    for one in threads:
        one.start()
    for one in threads:
        one.join()
    assert len(told) == 4
    for series, wanted in (("work", 12), ("audit", 1)):
        same = [given for name, given in told if name == series]
        assert same[0] == same[1] and [parse_statement(one).payload["n"] for one in same[0]] == list(range(wanted))
    counted = Counter((one["series"], one["n"]) for one in issued(office, job))
    assert set(counted.values()) == {1} and len(counted) == 13


def test_only_a_member_s_own_key_is_given_tickets_and_a_stranger_learns_nothing(office, crew):
    _, job, _ = crew
    eve = office.phone("eve", "administrator")
    told, absent = eve.tickets(job), eve.tickets(new_uuid())
    assert told.status_code == absent.status_code == 404
    assert told.json["error"] | {"value": ""} == absent.json["error"] | {"value": ""}
    assert not issued(office, job)


def test_a_sign_in_without_a_key_is_given_none(office, crew):
    fay, job, _ = crew
    fay.bearer = {"X-Seamwalk-Csrf": fay.csrf}
    assert fay.tickets(job).status_code == 401 and not issued(office, job)


def test_a_revoked_key_is_given_none_though_it_may_still_deliver(office, crew):
    fay, job, _ = crew
    with office.app.app_context():
        office.parts.devices.revoke(fay.kid, "server")
    refused = fay.tickets(job)
    assert (refused.status_code, refused.json["error"]["code"]) == (403, "key_revoked")
    assert fay.get_token().json["scope"] == "quarantine"
    assert fay.tickets(job).status_code == 403 and not issued(office, job)


@pytest.mark.parametrize(
    ("changed", "code", "field"),
    [
        ({"series": "play"}, "field_wrong", "series"), ({"series": None}, "field_wrong", "series"),
        ({"job": "x"}, "field_wrong", "job"), ({"have": -2}, "field_wrong", "have"),
        ({"have": "3"}, "field_wrong", "have"), ({"have": 2**60}, "field_wrong", "have"),
        ({"have": 12}, "ticket_unknown", "have"), ({"have": 10**9}, "ticket_unknown", "have"),
    ],
)  # fmt: skip
def test_what_makes_no_sense_is_named_and_issues_nothing(office, crew, changed, code, field):
    fay, job, _ = crew
    asked = {"job": job, "series": "work", "have": -1} | changed
    reply = fay.client.post("/api/tickets", headers=fay.bearer, json=asked)
    assert reply.status_code == 400
    assert (reply.json["error"]["code"], reply.json["error"]["field"]) == (code, field)
    assert not issued(office, job)


@pytest.mark.parametrize("language", ["en", "es"])
def test_a_refusal_has_words_and_a_way_out_in_both_languages(office, crew, language):
    fay, job, _ = crew
    fay.bearer |= {"Accept-Language": language}
    error = fay.tickets(job, have=40).json["error"]
    assert "40" in error["message"] and error["way_out"]
    assert ("boleto" in error["message"]) == (language == "es")
