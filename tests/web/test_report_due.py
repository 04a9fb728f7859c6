"""From a signed walk to its report without anybody asking for it."""

from inspect_app.application import create_serving_app
from tests.office import CHEAP, Office


def serving(tmp_path):
    """An office whose server makes reports by itself."""
    office = Office(tmp_path / "data")
    return office, lambda: create_serving_app(office.settings, office.clock, CHEAP)


def state(app, job, phone):
    return app.test_client().get(f"/api/jobs/{job}/report", headers=phone.bearer).json["state"]


def test_a_signed_walk_gets_its_report_by_itself(tmp_path):
    office, serve = serving(tmp_path)
    job, _ = office.job()
    foreman = office.phone("fay", "foreman", job)
    app = serve()
    foreman.client = app.test_client()
    assert state(app, job, foreman) == "none"
    assert foreman.send(*office.walk(foreman, job)).status_code == 200
    assert app.extensions["background"].settled(30)
    assert state(app, job, foreman) == "ready"
    pdf = foreman.client.get(f"/api/jobs/{job}/report.pdf", headers=foreman.bearer)
    assert pdf.data.startswith(b"%PDF-") and pdf.mimetype == "application/pdf"


def test_a_server_that_ended_before_it_made_the_report_makes_it_at_its_next_start(tmp_path):
    office, serve = serving(tmp_path)
    job, _ = office.job()
    foreman = office.phone("fay", "foreman", job)
    foreman.send(*office.walk(foreman, job))  # this server only notes that it is due
    app = serve()
    assert app.extensions["background"].settled(30)
    assert state(app, job, foreman) == "ready"
