"""Whatever goes wrong: one JSON shape, the right status, words in two languages, and no traceback."""

import json
import re
from pathlib import Path

import pytest

from inspect_app import errors
from inspect_app.settings import shipped
from inspect_app.store.database import db
from inspect_app.web.errors import STATUS
from tests.store.test_trouble import let_it_be_full

MEMBERS = {"code", "field", "value", "message", "way_out"}


def error_of(reply):
    assert reply.mimetype == "application/json"
    assert set(reply.json) == {"error"} and set(reply.json["error"]) == MEMBERS
    assert "Traceback" not in reply.text
    return reply.json["error"]


@pytest.mark.parametrize("spare", [0, 30])  # full at once, and full in the middle of the batch
def test_a_full_disk_is_507_without_a_receipt_and_the_same_batch_goes_in_later(office, spare):
    job, chief = office.job()
    batch = [chief.entry("area", job, body={"later": "x" * 30_000}) for _ in range(10)]
    with office.app.app_context():
        make_room = let_it_be_full(db.engine, spare)
        reply = chief.send(*batch)
        make_room()
    assert reply.status_code == 507 and error_of(reply)["code"] == "storage_full"
    assert "receipt" not in reply.text
    assert len(chief.pull().json["entries"]) == 1
    answers = chief.send(*batch).json["answers"]
    assert [answer["status"] for answer in answers] == ["accepted"] * 10


@pytest.mark.parametrize(
    "body",
    [
        b"",
        b"{",
        b"[" * 200_000,
        b"\xff\xfe",
        b"null",
        b"[]",
        b'"x"',
        b'{"login": 1}',
        b"NaN",
        b'{"a":' * 5000,
        b"9" * 5000,
        b'{"login": ' + b"9" * 5000 + b"}",
    ],
)
def test_a_body_that_is_not_what_it_should_be_is_refused_in_words(office, body):
    reply = office.client().post("/api/session", data=body, content_type="application/json")
    assert reply.status_code == 400
    assert error_of(reply)["code"] in ("bad_json", "field_missing", "field_wrong")


def test_a_body_of_another_type_is_refused_in_words(office):
    reply = office.client().post(
        "/api/session", data=b"login=x", content_type="application/x-www-form-urlencoded"
    )
    assert reply.status_code in (400, 415)
    error_of(reply)


def test_nul_and_half_characters_never_reach_the_database(any_office):
    for login in ("a\0b", "\ud800"):
        body = json.dumps({"login": login, "password": "x"})
        reply = any_office.client().post("/api/session", data=body, content_type="application/json")
        assert (reply.status_code, error_of(reply)["field"]) == (400, "login")


@pytest.mark.parametrize(
    ("method", "address", "status", "code"),
    [("GET", "/nothing/here", 404, "not_found"), ("PUT", "/api/session", 405, "wrong_method"),
     ("GET", "/api/jobs", 401, "not_signed_in"), ("POST", "/api/delivery", 400, "field_missing")],
)  # fmt: skip
def test_each_kind_of_mistake_has_its_status(office, method, address, status, code):
    reply = office.client().open(address, method=method, json={} if method == "POST" else None)
    assert (reply.status_code, error_of(reply)["code"]) == (status, code)


def test_an_unforeseen_failure_is_told_without_its_insides(office, caplog):
    office.app.config["PROPAGATE_EXCEPTIONS"] = False

    @office.app.get("/broken")
    def broken():
        raise KeyError("a secret")

    reply = office.client().get("/broken")
    assert (reply.status_code, error_of(reply)["code"]) == (500, "internal")
    assert "secret" not in reply.text
    assert "a secret" in caplog.text  # whoever runs the server finds it in the log


def test_a_database_that_went_away_is_busy_and_may_be_asked_again(office):
    chief = office.phone("chief", "administrator")
    with office.app.app_context():
        db.engine.dispose()
        (office.settings.data / "seamwalk.sqlite3").rename(office.settings.data / "away")
        (office.settings.data / "seamwalk.sqlite3").mkdir()
    reply = chief.pull()
    assert reply.status_code in (503, 507)
    error_of(reply)


def test_every_problem_has_a_status():
    kinds = {kind for kind in vars(errors).values() if isinstance(kind, type)} - {errors.Problem}
    assert kinds == set(STATUS)


def test_every_code_in_our_sources_has_words_in_two_languages():
    texts = {}
    for file in (shipped("static") / "words").glob("*.json"):
        texts.update(json.loads(file.read_text("utf-8")))
    names = "|".join(kind.__name__ for kind in STATUS)
    package = Path(errors.__file__).parent
    said = set()
    for file in package.rglob("*.py"):
        if file.name.startswith("calc"):
            continue  # says its refusals itself, with the rules' own words
        said.update(re.findall(rf'(?:{names})\(\s*"([a-z_]+)"', file.read_text("utf-8")))
    assert len(said) > 20
    for code in sorted(said):
        for part in ("message", "way_out"):
            text = texts.get(f"error.{code}.{part}")
            assert text, f"error.{code}.{part}"
            assert text["en"] != text["es"]


def test_the_log_keeps_no_link_s_secret(office, caplog):
    def broken(secret):
        raise RuntimeError("a bug")

    office.app.add_url_rule("/broken/<secret>", "broken_link", broken)
    assert office.client().get(f"/broken/{'S' * 43}").status_code == 500
    assert "/broken/<secret>" in caplog.text and "S" * 43 not in caplog.text
