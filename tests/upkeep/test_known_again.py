"""After a restoration the server knows again, by its own signed word, a key that it has forgotten; and no other."""

import pytest

from inspect_app.commands.restore import set_back
from inspect_app.entry.statement import parse_statement
from inspect_app.people.tickets import AUDITS
from inspect_app.settings import settings_from
from inspect_app.upkeep.backup import back_up
from tests.office import Office
from tests.phone import Phone
from tests.upkeep.filled import Filled, checked


@pytest.fixture
def back(office, tmp_path):
    """An office set back, and two phones that joined after its backup: one of a known person, one of a new one."""
    filled = Filled(office)
    back_up(office.settings.data, office.settings.database_url, tmp_path / "backup", office.clock())
    second = office.phone("lou", "inspector", filled.job)
    with office.app.app_context():
        second.enrolment = office.parts.devices.enrol(second.person, second.jwk, "test")
        filled.foreman.enrolment = office.parts.devices.enrol(filled.foreman.person, filled.foreman.jwk, "test")
        filled.gone.enrolment = office.parts.devices.enrol(filled.gone.person, filled.gone.jwk, "test")
    settings = settings_from({"SEAMWALK_DATA": str(tmp_path / "new")})
    set_back(settings, tmp_path / "backup", clock=office.clock)
    again = object.__new__(Office)
    again.clock, again.told, again.settings = office.clock, [], settings
    filled.office, filled.new = again.again(), second
    for phone in (second, filled.foreman, filled.gone, filled.chief):
        phone.client = filled.office.client()
    return filled


def known_again(phone, enrolment=None, proof=None):
    asked = {"enrolment": enrolment or phone.enrolment, "proof": proof or phone.proof("enrol")}
    return phone.client.post("/api/devices/again", json=asked)


def test_a_forgotten_key_and_person_are_known_again_and_their_work_waits_only_for_a_job(back):
    lou = back.new
    assert lou.get_token().status_code == 400
    assert known_again(lou).status_code == 201 and lou.get_token().status_code == 200
    (answer,) = lou.send(lou.entry("area", back.job)).json["answers"]
    assert (answer["status"], answer["code"]) == ("refused", "not_a_member")
    with back.office.app.app_context():
        parts = back.office.parts
        person = parts.accounts.by_id(lou.person.id)
        assert (person.login, person.name, person.role) == (lou.person.id, lou.person.name, "inspector")
        parts.membership.join(person.id, back.job)
        parts.accounts.give_login(person.id, "lou", "a-password-for-tests")
    lou.chains.clear()
    assert lou.send(lou.entry("area", back.job)).json["answers"][0]["status"] == "accepted"
    assert lou.sign_in("a-password-for-tests").status_code == 200
    assert checked(back.office).faults == []


def test_its_delivery_tells_a_phone_that_the_server_was_set_back(back):
    assert len(back.foreman.get_token().json["restorations"]) == 1
    jobs = back.foreman.client.get("/api/jobs", headers=back.foreman.bearer).json
    assert jobs["restorations"] == back.foreman.get_token().json["restorations"]


def test_nobody_else_is_known_by_it(back):
    lou, fay, gone = back.new, back.foreman, back.gone
    assert known_again(lou, proof=fay.proof("enrol")).status_code == 400  # not the key's own proof
    assert known_again(lou, proof=lou.proof("deliver")).status_code == 400
    assert known_again(lou, enrolment=lou.enrolment[:-4] + "AAAA").status_code == 400
    assert known_again(gone).status_code == 201  # known already, and ended: it stays so
    assert gone.get_token().json["scope"] == "quarantine"


def test_on_a_server_that_was_never_set_back_a_forgotten_key_stays_forgotten(office, tmp_path):
    other = Office(tmp_path / "other")
    lou = office.phone("lou", "inspector")
    with office.app.app_context():
        lou.enrolment = office.parts.devices.enrol(lou.person, lou.jwk, "test")
    lou.client = other.client()
    assert known_again(lou).status_code == 400
    (other.settings.data / "server.key").write_bytes((office.settings.data / "server.key").read_bytes())
    lou.client = other.again().client()
    reply = known_again(lou)
    assert (reply.status_code, reply.json["error"]["code"]) == (400, "unknown_key")


def test_tickets_that_it_has_forgotten_stay_good_and_the_next_ones_follow_them(office, tmp_path):
    filled = Filled(office)
    fay, job = filled.foreman, filled.job
    back_up(office.settings.data, office.settings.database_url, tmp_path / "backup", office.clock())
    lots = [fay.lot(job, n) for n in range(3)]
    fay.send(*lots)
    assert numbers(fay.tickets(job, have=11)) == [12, 13, 14]
    settings = settings_from({"SEAMWALK_DATA": str(tmp_path / "new")})
    set_back(settings, tmp_path / "backup", clock=office.clock)
    again = object.__new__(Office)
    again.clock, again.told, again.settings = office.clock, [], settings
    fay.client = again.again().client()
    fay.get_token()
    assert numbers(fay.tickets(job, have=14)) == []
    fay.send(*lots, fay.lot(job, 3))
    assert numbers(fay.tickets(job, have=14)) == [15]
    assert fay.tickets(job, have=5000).status_code == 400


def numbers(reply):
    return [parse_statement(one).payload["n"] for one in reply.json["tickets"]]


def test_whoever_took_a_forgotten_person_s_id_as_their_login_keeps_no_phone_out(back):
    back.office.add(back.new.person.id, "foreman")
    assert known_again(back.new).status_code == 201 and back.new.get_token().status_code == 200


def test_numbers_said_to_be_forgotten_give_no_more_audit_tickets_in_a_day_than_any_others(back):
    fay, job, given = back.foreman, back.job, 0
    fay.get_token()
    for have in range(24, 24 + 25 * (AUDITS + 5), 25):
        given += fay.tickets(job, "audit", have).status_code == 200
    assert given == AUDITS, "whoever could read a hundred of them could look for the one that suits them"


def test_the_trail_tells_of_each_key_that_comes_back_since_it_may_have_been_ended_in_the_time_undone(office, tmp_path):
    filled = Filled(office)
    back_up(office.settings.data, office.settings.database_url, tmp_path / "backup", office.clock())
    stolen = Phone(office.client(), filled.foreman.person)
    with office.app.app_context():
        stolen.enrolment = office.parts.devices.enrol(stolen.person, stolen.jwk, "stolen")
        office.parts.devices.revoke(stolen.kid, "server")
    settings = settings_from({"SEAMWALK_DATA": str(tmp_path / "new")})
    set_back(settings, tmp_path / "backup", clock=office.clock)
    again = object.__new__(Office)
    again.clock, again.told, again.settings = office.clock, [], settings
    stolen.client = filled.chief.client = again.again().client()
    assert [known_again(stolen).status_code for _ in range(2)] == [201, 201]
    filled.chief.get_token()
    asked = filled.chief.client.get(f"/api/jobs/{filled.job}/trail", headers=filled.chief.bearer)
    told = [(one["person"], one["facts"]) for one in asked.json if one["what"] == "known_again"]
    assert told == [(stolen.person.id, {"key": stolen.kid, "name": "stolen"})]
    ended = filled.chief.client.delete(f"/api/devices/{stolen.kid}", headers=filled.chief.bearer)
    assert ended.status_code == 200 and known_again(stolen).status_code == 201
    assert stolen.get_token().json["scope"] == "quarantine", "ended again, it stays so"
