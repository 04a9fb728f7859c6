"""The trail only grows, by the database's own rule, and tells of nobody what they did elsewhere."""

import pytest
from sqlalchemy import text
from sqlalchemy.exc import DBAPIError

from inspect_app.people.trail import PAGE


@pytest.mark.parametrize("change", ["UPDATE trail SET what = 'x'", "DELETE FROM trail"])
def test_nobody_changes_it_not_even_by_the_database(any_office, change):
    any_office.job()
    with any_office.app.app_context():
        with pytest.raises(DBAPIError, match="only grows"), any_office.parts.transactions.writing() as session:
            session.execute(text(change))
        with any_office.parts.transactions.reading() as session:
            assert session.scalar(text("SELECT count(*) FROM trail WHERE what = 'signed_in'"))


def test_sign_ins_are_told_from_when_somebody_joined(any_office):
    job, chief = any_office.job()
    nan = any_office.phone("nan", "inspector")  # signed in before she joins
    any_office.clock.forward(minutes=1)
    with any_office.app.app_context():
        any_office.parts.membership.join(nan.person.id, job)

    def told():
        steps = chief.client.get(f"/api/jobs/{job}/trail").json
        return [one["at"] for one in steps if one["what"] == "signed_in" and one["person"] == nan.person.id]

    assert told() == []
    any_office.clock.forward(minutes=1)
    nan.sign_in("a-password-for-tests")
    assert len(told()) == 1


def test_it_is_read_page_by_page_newest_first(office):
    job, chief = office.job()
    with office.app.app_context(), office.parts.transactions.writing():
        for at in range(PAGE + 5):
            office.app.extensions["office"].trail.note("exported", job, chief.person.id, n=at)
    first = chief.client.get(f"/api/jobs/{job}/trail").json
    rest = chief.client.get(f"/api/jobs/{job}/trail", query_string={"before": first[-1]["seq"]}).json
    numbers = [one["facts"]["n"] for one in first + rest if one["what"] == "exported"]
    assert len(first) == PAGE and numbers == list(reversed(range(PAGE + 5)))


def test_a_report_is_not_given_without_a_trace(office):
    job, chief = office.job()
    with office.app.app_context():
        shelf = office.app.extensions["reports"].shelf
        number, sealed = shelf.begin(job), shelf.work(job) / "sealed.part"
        sealed.write_bytes(b"%PDF-1.7")
        shelf.finish(job, number, sealed, b'{"missing": []}', "d", 1)
    assert chief.client.get(f"/api/jobs/{job}/report.pdf").status_code == 200
    step = chief.client.get(f"/api/jobs/{job}/trail").json[0]
    assert (step["what"], step["who"], step["facts"]) == ("report_seen", chief.person.name, {"number": 1})
