"""Passkeys: the same session as a password, for the right key, host, challenge and person, once; else words."""

from typing import Any

import pytest

from inspect_app.entry.base64url import encode
from tests.office import PASSWORD
from tests.people.authenticator import PRESENT, Authenticator
from tests.phone import Phone

HOST = "office.example"
HOME = f"https://{HOST}"


class Browser:
    """A browser at the office's address, with a cookie jar of its own."""

    def __init__(self, office: Any, base: str = HOME) -> None:
        self.client, self.base = office.client(), base

    def call(self, method: str, path: str, **json: Any) -> Any:
        csrf = self.client.get("/api/session", base_url=self.base).json["csrf"]
        given = {"json": json} if json or method == "post" else {}
        headers = {"X-Seamwalk-Csrf": csrf}
        return getattr(self.client, method)(path, base_url=self.base, headers=headers, **given)

    def password(self, login: str) -> Any:
        return self.call("post", "/api/session", login=login, password=PASSWORD)

    def who(self) -> Any:
        return self.client.get("/api/session", base_url=self.base).json["person"]

    def add(self, person: Any, key: Authenticator, **changed: Any) -> Any:
        options = self.call("post", "/api/passkeys/options", person=person.id).json["options"]
        return self.call("post", "/api/passkeys", name="Android", credential=key.make(options, **changed))

    def options(self) -> Any:
        return self.call("post", "/api/passkeys/sign-in/options").json["options"]

    def answer(self, credential: Any) -> Any:
        return self.call("post", "/api/passkeys/sign-in", credential=credential)

    def use(self, key: Authenticator, **changed: Any) -> Any:
        return self.answer(key.use(self.options(), **changed))


@pytest.fixture
def ada(office):
    return office.add("ada", "foreman")


@pytest.fixture
def key(office, ada):
    """A passkey of hers, added after signing in with the password."""
    browser, made = Browser(office), Authenticator(HOME)
    browser.password("ada")
    assert browser.add(ada, made).status_code == 201
    return made


def code(reply: Any) -> tuple[int, str]:
    error = reply.json["error"]
    assert "request_refused" not in error["code"] and min(len(error["message"]), len(error["way_out"])) > 12
    return reply.status_code, error["code"]


def test_a_passkey_gives_the_session_that_a_password_gives(office, ada, key):
    by_password, by_passkey = Browser(office), Browser(office)
    before = by_passkey.client.get("/api/session", base_url=HOME).json["csrf"]
    expected, reply = by_password.password("ada"), by_passkey.use(key)
    assert (reply.status_code, reply.json["person"]) == (200, expected.json["person"])
    assert reply.json["csrf"] not in ("", before) and by_passkey.who()["id"] == ada.id
    cookie = {one.partition("=")[0] for one in reply.headers["Set-Cookie"].split("; ")}
    assert cookie == {one.partition("=")[0] for one in expected.headers["Set-Cookie"].split("; ")}
    phone = Phone(by_passkey.client, ada)
    phone.csrf = reply.json["csrf"]
    given = {"jwk": phone.jwk, "device": "test", "proof": phone.proof("enrol")}
    assert by_passkey.call("post", "/api/devices", **given).status_code == 201


def test_nobody_is_asked_for_a_login_and_nobody_learns_who_has_a_passkey(office, key):
    assert Browser(office).options()["allowCredentials"] == []
    assert Browser(office).options()["userVerification"] == "preferred"


def test_an_answer_is_good_once_even_with_the_cookie_of_before(office, key):
    browser = Browser(office)
    options = browser.options()
    answer = key.use(options)
    kept = browser.client.get_cookie("seamwalk", domain=HOST).value
    assert browser.answer(answer).status_code == 200
    assert code(browser.answer(answer)) == (401, "passkey_unasked")
    for again in (answer, key.use(options)):
        thief = Browser(office)
        thief.client.set_cookie("seamwalk", kept, domain=HOST)
        assert code(thief.answer(again)) == (401, "passkey_spent") and thief.who() is None


def test_an_answer_for_another_browser_s_challenge_signs_nobody_in(office, key):
    victim, thief = Browser(office), Browser(office)
    answer = key.use(victim.options())
    assert code(thief.answer(answer)) == (401, "passkey_unasked")
    thief.options()
    assert code(thief.answer(answer)) == (400, "passkey_not_proved")
    assert thief.who() is None


def test_a_challenge_waits_five_minutes_and_no_longer(office, key):
    browser = Browser(office)
    answer = key.use(browser.options())
    office.clock.forward(seconds=301)
    assert code(browser.answer(answer)) == (401, "passkey_unasked")
    answer = key.use(browser.options())
    office.clock.forward(seconds=299)
    assert browser.answer(answer).status_code == 200


def test_a_challenge_to_sign_in_adds_no_passkey(office, ada, key):
    browser, other = Browser(office), Authenticator(HOME)
    browser.password("ada")
    options = browser.call("post", "/api/passkeys/options", person=ada.id).json["options"]
    browser.options()
    reply = browser.call("post", "/api/passkeys", name="x", credential=other.make(options))
    assert code(reply) == (401, "passkey_unasked")


@pytest.mark.parametrize(
    ("changed", "said"),
    [
        ({"origin": "https://office.example.evil.example"}, (403, "passkey_elsewhere")),
        ({"origin": "http://office.example"}, (403, "passkey_elsewhere")),
        ({"origin": "https://office.example:8443"}, (403, "passkey_elsewhere")),
        ({"rp_id": "evil.example"}, (400, "passkey_not_proved")),
        ({"challenge": encode(bytes(32))}, (400, "passkey_not_proved")),
        ({"kind": "webauthn.create"}, (400, "passkey_not_proved")),
        ({"flags": 0}, (400, "passkey_not_proved")),
    ],
)
def test_what_was_said_for_another_page_host_challenge_or_purpose_opens_nothing(office, key, changed, said):
    browser = Browser(office)
    assert code(browser.use(key, **changed)) == said and browser.who() is None


def test_a_key_that_verifies_nobody_still_opens_since_that_is_preferred_only(office, key):
    assert Browser(office).use(key, flags=PRESENT).status_code == 200


def test_a_signature_by_another_key_opens_nothing(office, key):
    forger = Authenticator(HOME)
    forger.id = key.id
    assert code(Browser(office).use(forger)) == (400, "passkey_not_proved")


def test_a_copied_passkey_is_told_by_its_counter(office, key):
    copy = Authenticator(HOME)
    copy.id, copy.key, copy.count = key.id, key.key, key.count
    assert Browser(office).use(key).status_code == 200
    assert code(Browser(office).use(copy)) == (403, "passkey_copied")
    assert Browser(office).use(key).status_code == 200


def test_a_key_that_never_counts_is_taken_each_time(office, ada):
    browser, still = Browser(office), Authenticator(HOME, counts=False)
    browser.password("ada")
    browser.add(ada, still)
    assert [Browser(office).use(still).status_code for _ in range(3)] == [200] * 3


def test_a_removed_passkey_opens_nothing_and_only_its_person_removes_it(office, ada, key):
    office.add("ben", "inspector")
    ben, hers = Browser(office), Browser(office)
    ben.password("ben")
    assert code(ben.call("delete", f"/api/passkeys/{encode(key.id)}")) == (404, "passkey_missing")
    assert hers.use(key).status_code == 200
    (shown,) = hers.client.get("/api/passkeys", base_url=HOME).json["passkeys"]
    assert (shown["id"], shown["name"]) == (encode(key.id), "Android") and shown["used_at"]
    assert hers.call("delete", f"/api/passkeys/{shown['id']}").status_code == 204
    assert code(Browser(office).use(key)) == (401, "passkey_unknown")
    assert hers.password("ada").status_code == 200, "her password still opens"


def test_whoever_loses_a_phone_loses_its_passkeys_and_keeps_the_password(office, ada, key):
    with office.app.app_context():
        phone = Phone(office.client(), ada)
        office.parts.devices.enrol(ada, phone.jwk, "lost")
        office.parts.devices.revoke(phone.kid, "server")
    assert code(Browser(office).use(key)) == (401, "passkey_unknown")
    assert Browser(office).password("ada").status_code == 200


def test_the_trail_tells_of_passkeys_added_and_removed(office):
    job, chief = office.job()
    browser, key = Browser(office), Authenticator(HOME)
    browser.password(chief.person.login)
    browser.add(chief.person, key)
    browser.call("delete", f"/api/passkeys/{encode(key.id)}")
    steps = chief.client.get(f"/api/jobs/{job}/trail", headers=chief.bearer).json
    assert [(one["what"], one["who"]) for one in steps][:2] == [
        ("passkey_removed", chief.person.name), ("passkey_added", chief.person.name),
    ]  # fmt: skip


def test_no_name_of_a_passkey_reaches_the_database_that_cannot_be_one(any_office):
    any_office.add("ada", "foreman")
    browser = Browser(any_office)
    browser.password("ada")
    for name in ("%00", "%F0%9F%8F%A0", "x" * 1365, "%27%20or%201=1"):
        assert code(browser.call("delete", f"/api/passkeys/{name}")) == (404, "passkey_missing")
    for name in ("\0", "\ud800", "'"):
        browser.options()
        answer = {"id": name, "rawId": name, "type": "public-key", "response": {}}
        assert code(browser.answer(answer)) == (400, "passkey_not_proved")


def test_a_passkey_is_held_by_one_person_once(office, ada, key):
    ben = office.add("ben", "inspector")
    browser = Browser(office)
    browser.password("ben")
    assert code(browser.add(ben, key)) == (409, "passkey_held")
    browser.password("ada")
    options = browser.call("post", "/api/passkeys/options", person=ada.id).json["options"]
    assert [one["id"] for one in options["excludeCredentials"]] == [encode(key.id)]


def test_ten_passkeys_are_enough_for_anybody(office, ada, key):
    browser = Browser(office)
    browser.password("ada")
    assert [browser.add(ada, Authenticator(HOME)).status_code for _ in range(9)] == [201] * 9
    assert code(browser.call("post", "/api/passkeys/options", person=ada.id)) == (409, "passkeys_full")


def test_a_passkey_is_added_for_who_is_signed_in_and_for_nobody_else(office, ada):
    ben, browser = office.add("ben", "inspector"), Browser(office)
    browser.password("ben")
    assert code(browser.call("post", "/api/passkeys/options", person=ada.id)) == (403, "passkey_other_person")
    nobody = Browser(office)
    assert code(nobody.call("post", "/api/passkeys/options", person=ben.id)) == (401, "not_signed_in")
    assert code(nobody.client.get("/api/passkeys", base_url=HOME)) == (401, "not_signed_in")


def test_a_device_key_opens_no_passkeys_at_all(office):
    _, chief = office.job()
    chief.client.delete_cookie("seamwalk")
    listing = chief.client.get("/api/passkeys", headers=chief.bearer)
    wanted = chief.client.post("/api/passkeys/options", json={"person": chief.person.id}, headers=chief.bearer)
    assert (code(listing), code(wanted)) == ((401, "not_signed_in"), (401, "not_signed_in"))


@pytest.mark.parametrize("path", ["/api/passkeys/sign-in/options", "/api/passkeys/sign-in", "/api/passkeys/options"])
def test_no_other_site_can_have_it_done(office, ada, path):
    browser = Browser(office)
    browser.password("ada")
    body = {"person": ada.id, "credential": {}}
    assert code(browser.client.post(path, base_url=HOME, json=body)) == (403, "csrf")


@pytest.mark.parametrize("spoil", [
    lambda one: one.clear(), lambda one: one.update(id=7), lambda one: one.update(id="\0"),
    lambda one: one.update(id="\ud800"), lambda one: one.update(id="x" * 1365), lambda one: one.update(response=None),
    lambda one: one["response"].update(clientDataJSON="ñ"), lambda one: one["response"].update(signature=""),
    lambda one: one["response"].update(authenticatorData="AAAA"), lambda one: one.update(rawId="AAAA"),
    lambda one: one["response"].update(clientDataJSON=encode(b"[" * 5000)), lambda one: one.update(type="x"),
])  # fmt: skip
def test_a_spoiled_answer_is_refused_in_words(office, key, spoil):
    browser = Browser(office)
    answer = key.use(browser.options())
    spoil(answer)
    assert code(browser.answer(answer))[0] in (400, 401)


def test_a_spoiled_attestation_is_refused_in_words(office, ada):
    browser, key = Browser(office), Authenticator(HOME)
    browser.password("ada")
    for spoiled in ("", "AAAA", encode(b"\xa3" + bytes(9)), encode(b"\x9b" + b"\xff" * 8)):
        options = browser.call("post", "/api/passkeys/options", person=ada.id).json["options"]
        answer = key.make(options)
        answer["response"]["attestationObject"] = spoiled
        reply = browser.call("post", "/api/passkeys", name="x", credential=answer)
        assert code(reply) == (400, "passkey_not_proved")


def test_on_one_s_own_machine_a_plain_origin_will_do(office, ada):
    browser, key = Browser(office, "http://localhost:8000"), Authenticator("http://localhost:8000")
    browser.password("ada")
    assert browser.add(ada, key).status_code == 201
    assert Browser(office, "http://localhost:8000").use(key).status_code == 200
