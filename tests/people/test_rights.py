"""One table of rights: the guide prints it, the record's own table feeds it, and a part of a job carries no office."""

from inspect_app.people.rights import OFFICE, SAID, may, records, rights
from inspect_app.people.roles import ROLES
from inspect_app.record.authority import MAY
from tests.people.guide import ROOT, rows


def test_the_guide_s_table_is_the_code_s():
    guide = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    assert "\n".join(rows()) in guide, "print it anew: python -m tests.people.guide"


def test_who_may_say_what_is_the_record_s_own_table():
    assert {(role, kind) for role in ROLES for kind in records(role)} == {
        (role, kind) for kind, allowed in MAY.items() for role in allowed
    }
    assert {kind for kinds in SAID.values() for kind in kinds} <= MAY.keys()


def test_whoever_sees_a_part_has_no_right_of_the_office_and_admits_nothing():
    for role in ROLES:
        told = rights(role, [])
        assert not any(told[right] for right in (*OFFICE, "admits")) and told["sees"] == "areas"
        assert told["records"] == records(role)


def test_the_office_is_the_administrator_s_and_everybody_exports():
    assert [role for role in ROLES if may(role, "invites")] == ["administrator"]
    assert all(may(role, "exports") for role in ROLES)


def test_what_the_server_keeps_is_its_owner_s_alone(office):
    office.job()
    folder = office.settings.data
    assert folder.stat().st_mode & 0o777 == 0o700
    for name in ("session.key", "server.key"):
        assert (folder / name).stat().st_mode & 0o777 == 0o600


def test_there_is_no_account_before_somebody_makes_one(office):
    with office.app.app_context():
        assert office.parts.accounts.everybody() == []
