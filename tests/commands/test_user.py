"""``seamwalk user`` and ``seamwalk rebuild``, as they are typed."""

import io

import pytest

from inspect_app.command_line import main
from tests.office import PASSWORD, Office
from tests.phone import Phone, new_uuid


@pytest.fixture
def data(tmp_path, monkeypatch):
    monkeypatch.setenv("SEAMWALK_DATA", str(tmp_path / "data"))
    monkeypatch.delenv("SEAMWALK_DATABASE_URL", raising=False)
    monkeypatch.setenv("LANG", "C.UTF-8")
    monkeypatch.delenv("LC_ALL", raising=False)
    return tmp_path / "data"


def test_the_first_administrator_is_made_with_a_password_that_signs_them_in(data, capsys):
    assert main(["user", "add", "Chief", "--name", "Chief (invented)", "--role", "administrator"]) == 0
    said = capsys.readouterr().out
    password = said.split("password: ")[1].strip()
    office = Office(data)
    with office.app.app_context():
        person = office.parts.accounts.by_login("chief")
    assert Phone(office.client(), person).sign_in(password).status_code == 200


def test_a_password_can_be_given_and_is_then_not_printed(data, capsys, monkeypatch):
    monkeypatch.setattr("sys.stdin", io.StringIO(PASSWORD + "\n"))
    assert main(["user", "add", "fay", "--name", "Fay", "--role", "foreman", "--password-stdin"]) == 0
    assert PASSWORD not in capsys.readouterr().out
    office = Office(data)
    with office.app.app_context():
        assert office.parts.accounts.signing_in("fay", PASSWORD)


def test_people_join_jobs_and_the_list_shows_it(data, capsys):
    job, other = new_uuid(), new_uuid()
    assert main(["user", "add", "fay", "--name", "Fay", "--role", "foreman", "--job", job]) == 0
    assert main(["user", "join", "fay", other]) == 0
    assert main(["user", "list"]) == 0
    said = capsys.readouterr().out
    assert f"job {job}" in said and f"job {other}" in said


def test_a_key_is_revoked_by_its_name(data, capsys):
    kid = Office(data).phone("fay", "foreman").kid
    assert main(["user", "revoke", kid]) == 0
    assert main(["user", "list"]) == 0
    assert f"key {kid}  test  revoked" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("words", "field", "value"),
    [
        (["user", "add", "fay", "--name", "Fay", "--role", "king"], "role", "king"),
        (["user", "add", "fay", "--name", "Fay", "--role", "foreman", "--job", "7"], "job", "7"),
        (["user", "join", "nobody", "01a214a6-cb82-7202-8202-020202020202"], "login", "nobody"),
        (["user", "revoke", "no-such-key"], "kid", "no-such-key"),
    ],
)
def test_refused_input_is_named_with_its_way_out_on_standard_error(data, capsys, words, field, value):
    assert main(words) == 2
    said = capsys.readouterr()
    assert said.out == ""
    first, message, way_out = said.err.splitlines()
    assert first == f"{field}: {value}" and message and way_out
    assert main(["user", "list"]) == 0
    assert capsys.readouterr().out == ""  # nothing was half done


def test_refusals_speak_spanish_where_the_system_does(data, capsys, monkeypatch):
    english = refusal(capsys)
    monkeypatch.setenv("LANG", "es_MX.UTF-8")
    assert refusal(capsys) != english


def refusal(capsys):
    main(["user", "revoke", "x"])
    return capsys.readouterr().err


def test_a_database_url_of_another_kind_is_refused(data, capsys, monkeypatch):
    monkeypatch.setenv("SEAMWALK_DATABASE_URL", "mysql://secret@host/db")
    assert main(["user", "list"]) == 2
    said = capsys.readouterr().err
    assert "SEAMWALK_DATABASE_URL" in said and "secret" not in said


def test_rebuild_says_what_it_made(data, capsys):
    office = Office(data)
    job, chief = office.job()
    chief.send(chief.entry("area", job))
    assert main(["rebuild"]) == 0
    assert capsys.readouterr().out == "rebuilt from the log: 2 entries, 1 keys, 0 tickets, 1 jobs\n"
