"""Two servers on one store, one of which is killed: nothing is made twice, and nothing is left."""

import subprocess
import sys
import time
from contextlib import contextmanager

from sqlalchemy import select

from inspect_app.report.asked import Asked
from inspect_app.report.shelf_list import listed
from inspect_app.store.tables import ReportAskRow, ReportRow
from inspect_app.web.reports_desk import asks, maker
from tests.office import Office
from tests.report.test_make import walked


@contextmanager
def server(data, gate):
    words = [sys.executable, "-m", "tests.report.server_process", str(data), str(gate)]
    process = subprocess.Popen(words, stdout=subprocess.PIPE, text=True)
    try:
        yield process
    finally:
        process.kill()
        process.wait(10)
        process.stdout.close()


def told(process, *words):
    for word in words:
        assert process.stdout.readline().strip() == word


def rows(office):
    with office.app.app_context(), office.parts.transactions.reading() as session:
        asked = {row.id: row.state for row in session.scalars(select(ReportAskRow))}
        return asked, [(row.kind, row.state) for row in session.scalars(select(ReportRow).order_by(ReportRow.number))]


def until(found, seconds=60):
    end = time.monotonic() + seconds
    while not found():
        assert time.monotonic() < end, found
        time.sleep(0.1)


def test_what_a_killed_server_was_to_make_is_made_once_by_the_one_that_goes_on(tmp_path):
    office = Office(tmp_path / "data")
    job, foreman = walked(office)  # a signed walk: the report of the whole job is due
    walk = {"kind": "walk", "walk": next(iter(_walks(office, job)))}
    never, go = tmp_path / "never", tmp_path / "go"
    with server(tmp_path / "data", never) as first:
        told(first, "serving", "making")
        with server(tmp_path / "data", go) as second:
            told(second, "serving")
            with office.app.app_context():
                taken = asks().add(job, foreman.person.id, Asked(walk)).id
            until(lambda: rows(office)[0][taken] == "making" and len(rows(office)[1]) == 2)
            time.sleep(1)  # three looks of each server
            assert [state for _, state in rows(office)[1]] == ["making"] * 2, "neither ends what the other is making"
            first.kill()
            first.wait(10)
            go.touch()
            until(lambda: [one for one in rows(office)[1] if one[1] == "ready" and one[0] == "closeout"])
            until(lambda: rows(office)[0][taken] in ("ready", "failed"))
            time.sleep(1)  # so that whatever would be made a second time is
    asked, made = rows(office)
    assert "making" not in {state for _, state in made} | set(asked.values())
    assert made.count(("closeout", "ready")) == 1
    if asked[taken] == "failed":  # the one that was killed had it: it is said so, and not begun again by itself
        with office.app.app_context():
            assert asks().find(job, taken).trouble == "interrupted"
    else:
        assert made.count(("walk", "ready")) == 1
    with office.app.app_context():
        assert [one["superseded_by"] for one in listed(maker().shelf.ready(job)) if one["kind"] == "closeout"] == [None]


def _walks(office, job):
    with office.app.app_context():
        return office.parts.records.record(job)["walks"]
