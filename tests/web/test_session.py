"""Sign-in by cookie: its own token for changes, slowed guessing, and an end that harms nothing."""

import pytest

from inspect_app.application import RECOMMENDED
from tests.office import PASSWORD
from tests.phone import Phone


@pytest.fixture
def phone(office):
    return Phone(office.client(), office.add("ada", "foreman"))


def test_somebody_who_signs_in_is_known_afterwards(phone):
    reply = phone.sign_in(PASSWORD)
    assert reply.json["person"] == {"id": phone.person.id, "name": "ada (invented)", "role": "foreman"}
    assert phone.client.get("/api/session").json == reply.json


def test_nobody_is_known_before(phone):
    assert phone.client.get("/api/session").json["person"] is None


def test_a_wrong_password_is_said_and_signs_nobody_in(phone):
    reply = phone.sign_in("wrong-password")
    assert (reply.status_code, reply.json["error"]["code"]) == (401, "wrong_password")
    assert phone.client.get("/api/session").json["person"] is None


def test_an_unknown_login_is_answered_like_a_wrong_password(office, phone):
    known = phone.sign_in("wrong-password").json
    stranger = Phone(office.client(), phone.person._replace(login="nobody"))
    unknown = stranger.sign_in("wrong-password").json
    assert known["error"] | {"value": ""} == unknown["error"] | {"value": ""}


def test_guessing_has_to_wait(office, phone):
    codes = [phone.sign_in("wrong-password").status_code for _ in range(8)]
    assert codes[:6] == [401] * 6 and codes[-1] == 429
    reply = phone.sign_in(PASSWORD)
    assert reply.status_code == 429 and int(reply.headers["Retry-After"]) > 0
    office.clock.forward(seconds=int(reply.headers["Retry-After"]))
    assert phone.sign_in(PASSWORD).status_code == 200


def test_a_new_session_has_a_new_token(phone):
    before = phone.client.get("/api/session").json["csrf"]
    assert phone.sign_in(PASSWORD).json["csrf"] != before


@pytest.mark.parametrize(
    "header", [{}, {"X-Seamwalk-Csrf": ""}, {"X-Seamwalk-Csrf": "made-up"}, {"X-Seamwalk-Csrf": "ñ"}]
)
def test_changes_without_this_sessions_token_are_refused(phone, header):
    phone.sign_in(PASSWORD)
    device = {"jwk": phone.jwk, "device": "x", "proof": phone.proof("enrol")}
    login = {"login": "ada", "password": PASSWORD}
    for reply in (
        phone.client.post("/api/session", json=login, headers=header),
        phone.client.delete("/api/session", headers=header),
        phone.client.post("/api/devices", json=device, headers=header),
    ):
        assert (reply.status_code, reply.json["error"]["code"]) == (403, "csrf")
    assert phone.client.get("/api/session").json["person"]
    assert phone.enrol().status_code == 201


def test_another_sessions_token_is_refused(office, phone):
    phone.sign_in(PASSWORD)
    phone.csrf = office.client().get("/api/session").json["csrf"]
    assert phone.enrol().json["error"]["code"] == "csrf"


def test_the_cookie_cannot_be_read_by_scripts_nor_sent_by_other_sites(phone):
    cookie = phone.sign_in(PASSWORD).headers["Set-Cookie"]
    assert "HttpOnly" in cookie and "SameSite=Lax" in cookie and "Secure" not in cookie


def test_over_https_the_cookie_stays_on_https(office, phone):
    reply = office.client().get("/api/session", base_url="https://localhost")
    assert "Secure" in reply.headers["Set-Cookie"]


def test_an_expired_sign_in_does_not_strand_delivery(office):
    job, chief = office.job()
    entry = chief.entry("area", job)
    chief.client.delete_cookie("seamwalk")
    office.clock.forward(days=40)
    assert chief.enrol().status_code in (401, 403)
    assert chief.send(entry).status_code == 401  # the token of 40 days ago
    assert chief.get_token().status_code == 200
    assert chief.send(entry).json["answers"][0]["status"] == "accepted"
    assert len(chief.pull().json["entries"]) == 2


def test_signing_out_ends_the_session_and_leaves_the_key_in_force(office):
    job, chief = office.job()
    reply = chief.client.delete("/api/session", headers={"X-Seamwalk-Csrf": chief.csrf})
    assert reply.json["person"] is None
    assert chief.client.get("/api/jobs").status_code == 401
    assert chief.send(chief.entry("area", job)).json["answers"][0]["status"] == "accepted"


def test_the_passwords_of_real_servers_cost_what_the_library_recommends():
    assert (RECOMMENDED.time_cost, RECOMMENDED.memory_cost) >= (3, 65536)


@pytest.mark.parametrize("path", ["/", "/sw.js", "/shell.json", "/api/jobs", "/api/session", "/api/server", "/nowhere"])
def test_an_answer_that_comes_late_puts_no_earlier_session_back(phone, path):
    """A phone fetches the app in the background while the next person signs in on it."""
    assert "Set-Cookie" in phone.sign_in(PASSWORD).headers
    assert "Set-Cookie" not in phone.client.get(path).headers
