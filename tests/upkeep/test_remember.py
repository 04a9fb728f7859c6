"""The forgotten key of a phone that is gone is let in by a report of before the server was set back; and no other."""

import pytest

from inspect_app.command_line import main
from inspect_app.commands.restore import set_back
from inspect_app.evidence.enclosure import ENROLMENTS, Enclosure
from inspect_app.settings import settings_from
from inspect_app.upkeep.backup import back_up
from tests.evidence.sealed import key, sealed_with
from tests.office import Office
from tests.upkeep.filled import Filled, checked


@pytest.fixture
def back(office, tmp_path, monkeypatch):
    """An office set back; what ``lou``, who joined after its backup and whose phone is gone, signed is on another's;
    and the statements that a package of before enclosed."""
    filled = Filled(office)
    back_up(office.settings.data, office.settings.database_url, tmp_path / "backup", office.clock())
    lou = office.phone("lou", "inspector", filled.job)
    filled.lou, filled.work = lou, lou.entry("area", filled.job)
    assert lou.send(filled.work).json["answers"][0]["status"] == "accepted"
    with office.app.app_context():
        tokens = office.parts.reading.statements(["enrolment", "revocation"])
    filled.file = tmp_path / ENROLMENTS
    filled.file.write_text("".join(f"{one}\n" for one in ["not one", *tokens]))
    settings = settings_from({"SEAMWALK_DATA": str(tmp_path / "new")})
    set_back(settings, tmp_path / "backup", clock=office.clock)
    monkeypatch.setenv("SEAMWALK_DATA", str(tmp_path / "new"))
    monkeypatch.delenv("SEAMWALK_DATABASE_URL", raising=False)
    again = object.__new__(Office)
    again.clock, again.told, again.settings = office.clock, [], settings
    filled.office = again.again()
    filled.foreman.client = filled.office.client()
    filled.foreman.get_token()
    return filled


def brought(back):
    """By another's phone, which had fetched it."""
    return back.foreman.send(back.work).json["answers"][0]


def join(back):
    with back.office.app.app_context():
        back.office.parts.membership.join(back.lou.person.id, back.job)


@pytest.mark.parametrize("form", ["a package's list", "a report"])
def test_work_of_a_phone_that_is_gone_comes_in_by_another_s_once_its_key_is_let_in(back, capsys, form):
    if form == "a report":
        enclosed = [Enclosure(ENROLMENTS, "text/plain", back.file.read_bytes())]
        back.file.write_bytes(sealed_with(key("Issuer (invented)"), enclosed))
    assert brought(back)["code"] == "unknown_key"
    assert main(["remember", str(back.file)]) == 0
    (line,) = capsys.readouterr().out.splitlines()
    assert back.lou.kid in line and "lou (invented) (inspector)" in line, "the only one that was forgotten"
    assert brought(back)["code"] == "unknown_key", "listing lets nothing in"
    assert main(["remember", str(back.file), back.lou.kid[:8], "--lang", "es"]) == 0
    assert "✓" in capsys.readouterr().out
    join(back)
    assert brought(back)["status"] == "accepted"
    assert main(["remember", str(back.file)]) == 0 and capsys.readouterr().out == ""
    assert checked(back.office).faults == []


def test_let_in_as_ended_its_work_waits_for_an_administrator(back):
    assert main(["remember", str(back.file), back.lou.kid, "--ended"]) == 0
    join(back)
    assert brought(back)["status"] == "quarantined"


def test_what_our_key_did_not_sign_or_no_restoration_undid_lets_nobody_in(back, office, tmp_path, capsys):
    other = Office(tmp_path / "other")
    stranger = other.phone("eve", "administrator")
    with other.app.app_context():
        (foreign,) = other.parts.reading.statements(["enrolment"])
    genuine = back.file.read_text().splitlines()
    forged = [one[:-4] + ("AAAA" if one[-4:] != "AAAA" else "BBBB") for one in genuine if one.count(".") == 2]
    back.file.write_text("\n".join([foreign, *forged]))
    assert main(["remember", str(back.file)]) == 0 and capsys.readouterr().out == ""
    assert main(["remember", str(back.file), stranger.kid]) == 2
    back.file.write_text("\n".join(genuine))
    assert main(["remember", str(back.file), back.foreman.kid]) == 2, "it is known, and stays as it is"
    assert main(["remember", str(back.file), back.lou.kid[:7]]) == 2, "too short to say which"
    assert brought(back)["code"] == "unknown_key"


@pytest.mark.parametrize("data", [b"", b"%PDF-1.7\njunk", b"a list of nothing\n", bytes(range(256)) * 9])
def test_a_file_without_enrolments_is_refused_in_words(back, data, capsys):
    back.file.write_bytes(data)
    assert main(["remember", str(back.file)]) == 2
    assert "enrolments" in capsys.readouterr().err
    assert main(["remember", str(back.file.with_name("absent"))]) == 2
