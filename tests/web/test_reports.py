"""A job's reports over HTTP: asked for, made in the background, told how far, listed, each fetched."""

import os
import threading
import time

import pytest

from inspect_app.application import create_serving_app
from inspect_app.report.asked import Asked
from inspect_app.web.reports_desk import asks, maker
from tests.office import CHEAP
from tests.phone import new_uuid
from tests.report.test_scopes import Walked


class Serving:
    """The job of two walks, on a server that makes reports by itself."""

    def __init__(self, folder):
        self.walked = Walked(folder)
        self.job, self.office = self.walked.job, self.walked.office
        self.colleague = self.office.phone("nora", "foreman", self.job)
        self.start()

    def start(self):
        self.app = create_serving_app(self.office.settings, self.office.clock, CHEAP)
        self.background = self.app.extensions["background"]
        self.client, self.bearer = self.app.test_client(), self.walked.foreman.bearer
        assert self.background.settled(60)

    def get(self, path, **more):
        return self.client.get(f"/api/jobs/{self.job}/{path}", headers=more.pop("headers", self.bearer), **more)

    def ask(self, headers=None, **asked):
        return self.client.post(f"/api/jobs/{self.job}/reports", json=asked, headers=headers or self.bearer)

    def list(self):
        return self.get("reports").json


@pytest.fixture(scope="module")
def serving(tmp_path_factory):
    return Serving(tmp_path_factory.mktemp("reports") / "data")


class Gate:
    """Holds every report up once its pages are counted, until it is opened."""

    def __init__(self, app):
        self.maker, self.open, self.waiting = app.extensions["reports"], threading.Event(), []
        self.write = self.maker._write

    def __enter__(self):
        def held(job, contents, gathered, key, tell):
            tell("count", 0.5)
            self.waiting.append(contents["scope"])
            assert self.open.wait(30)
            return self.write(job, contents, gathered, key, tell)

        self.maker._write = held
        return self

    def __exit__(self, *_):
        self.open.set()
        self.maker._write = self.write

    def reached(self, count):
        until = time.monotonic() + 30
        while len(self.waiting) < count:
            assert time.monotonic() < until, self.waiting
            time.sleep(0.01)


def test_a_report_of_a_walk_is_asked_for_followed_listed_and_fetched(serving):
    asked = serving.ask(kind="walk", walk=serving.walked.first["walk"], language="es", paper="a4", units="SI")
    assert asked.status_code == 202 and asked.json["state"] in ("waiting", "making")
    assert serving.background.settled(60)
    told = serving.get(f"reports/asked/{asked.json['id']}").json
    assert (told["state"], told["share"], told["scope"]) == ("ready", 1.0, serving.walked.first)
    listed = serving.list()
    one = next(one for one in listed["reports"] if one["number"] == told["number"])
    assert (one["kind"], one["language"], one["paper"], one["units"]) == ("walk", "es", "a4", "SI")
    assert one["about"]["areas"] == ["Low roof"] and one["superseded_by"] is None and one["final"]
    assert listed["asked"] == [] and {"closeout", "walk", "audit"} <= set(listed["kinds"])
    pdf = serving.get(f"reports/{told['number']}.pdf")
    assert pdf.data.startswith(b"%PDF-") and len(pdf.data) == one["size"] and pdf.mimetype == "application/pdf"
    again = serving.ask(kind="walk", walk=serving.walked.first["walk"], language="es", paper="a4", units="SI").json
    assert serving.background.settled(60)
    assert serving.get(f"reports/asked/{again['id']}").json["state"] == "same"
    assert serving.get(f"reports/asked/{again['id']}").json["number"] == told["number"]


def test_several_at_once_hold_up_neither_the_server_nor_each_other(serving):
    with Gate(serving.app) as gate:
        first = serving.ask(kind="walk", walk=serving.walked.second["walk"], paper="letter").json
        gate.reached(1)
        whole = serving.ask(language="es", units="SI", paper="letter").json
        gate.reached(2)
        assert serving.get("report").status_code == serving.get("reports").status_code == 200
        states = {one["id"]: (one["state"], one["stage"], one["share"]) for one in serving.list()["asked"]}
        assert states == {first["id"]: ("making", "count", 0.5), whole["id"]: ("making", "count", 0.5)}
        same = serving.ask(language="es", units="SI", paper="letter").json
        assert same["id"] == whole["id"], "asked twice, made once"
        third = serving.ask(language="en", units="SI", paper="a4").json
        assert serving.get(f"reports/asked/{third['id']}").json["state"] == "waiting", "two are made at a time"
    assert serving.background.settled(60)
    assert serving.list()["asked"] == []
    holding = [one["number"] for one in serving.list()["reports"] if one["kind"] == "closeout"]
    listed = serving.list()["reports"]
    assert listed[0]["number"] == holding[0] and listed[0]["supersedes"] is None
    assert {one["superseded_by"] for one in listed} == {None}, "another form takes nobody's place"
    assert serving.get(f"reports/{holding[1]}.pdf").status_code == 200


def test_more_than_a_finger_can_want_is_refused_and_what_waits_is_made(serving):
    serving.walked.walk(serving.walked.areas[0], None)  # so that no form of it is there
    with Gate(serving.app) as gate:
        forms = [{"language": language, "paper": paper, "units": units}
                 for language in ("en", "es") for paper in ("letter", "a4") for units in ("US", "SI")]  # fmt: skip
        assert [serving.ask(**form).status_code for form in forms] == [202] * 8
        refused = serving.ask(kind="walk", walk=serving.walked.first["walk"])
        assert refused.status_code == 429 and refused.json["error"]["code"] == "reports_waiting_yours"
        assert refused.headers["Retry-After"] == "30"
        other = serving.colleague.bearer
        of_another = serving.ask(kind="walk", walk=serving.walked.first["walk"], headers=other)
        assert of_another.status_code == 202, "one member's asking uses up nobody else's"
        assert serving.ask(**forms[0], headers=other).json["id"], "what waits already is nobody's second"
        with serving.app.app_context():  # the rest of them would only take time
            for one in asks().of(serving.job)[:-2]:
                asks().fail(one.id, "internal")
        gate.open.set()
        assert serving.background.settled(60)


def test_what_cannot_be_made_says_why_and_the_next_one_is_made(serving):
    def broken(*_args, **_more):
        raise OSError(28, "No space left on device")

    shelf = serving.app.extensions["reports"].shelf
    finish, shelf.finish = shelf.finish, broken
    try:
        asked = serving.ask(kind="walk", walk=serving.walked.first["walk"], units="US", paper="a4").json
        assert serving.background.settled(60)
    finally:
        shelf.finish = finish
    told = serving.get(f"reports/asked/{asked['id']}").json
    assert (told["state"], told["trouble"]) == ("failed", "storage_full")
    assert asked["id"] in {one["id"] for one in serving.list()["asked"]}
    again = serving.ask(kind="walk", walk=serving.walked.first["walk"], units="US", paper="a4").json
    assert serving.background.settled(60)
    assert again["id"] != asked["id"] and serving.get(f"reports/asked/{again['id']}").json["state"] == "ready"


@pytest.mark.parametrize(
    ("asked", "status", "field"),
    [({"kind": "walk", "walk": "none"}, 400, "walk"), ({"kind": "walk"}, 400, "walk"), ({"kind": "roof"}, 400, "kind"),
     ({"kind": "audit", "lot": "x"}, 400, "lot"), ({"paper": "a3"}, 400, "paper"),
     ({"language": "fr"}, 400, "language"), ({"kind": "survey", "area": "none", "panel": 1}, 400, "area"),
     ({"units": 7}, 400, "units"), ({"kind": []}, 400, "kind")],
)  # fmt: skip
def test_what_cannot_be_asked_for_is_refused_by_its_field(serving, asked, status, field):
    before = serving.list()
    reply = serving.ask(**asked)
    assert (reply.status_code, reply.json["error"]["field"]) == (status, field)
    assert reply.json["error"]["message"] and reply.json["error"]["way_out"]
    assert serving.list() == before


def test_nobody_sees_or_asks_for_reports_of_a_job_that_is_not_theirs(serving):
    stranger = serving.office.phone("sam", "foreman")
    for path in ("reports", "reports/asked/1", "reports/1.pdf"):
        assert serving.get(path, headers=stranger.bearer).status_code == 404
        assert serving.get(path, headers={}).status_code == 401
    asked = f"/api/jobs/{serving.job}/reports"
    assert serving.client.post(asked, json={}, headers=stranger.bearer).status_code == 404
    assert serving.client.post(asked, json={}).status_code == 401
    other = serving.office.job()[0]
    with serving.app.app_context():
        known = asks().add(other, "somebody", Asked()).id
        assert maker().shelf.numbered(serving.job, 1)
    assert serving.get(f"reports/asked/{known}").status_code == 404, "a number of another job's"
    for path in ("reports/asked/999999", "reports/999.pdf"):
        assert serving.get(path).json["error"]["way_out"]


def test_a_report_whose_file_is_gone_is_said_to_be_and_the_list_still_comes(serving):
    with serving.app.app_context():
        one = maker().shelf.ready(serving.job)[0]
    kept = one.pdf.read_bytes()
    one.pdf.unlink()
    try:
        assert serving.get(f"reports/{one.number}.pdf").json["error"]["code"] == "report_lost"
        assert next(each for each in serving.list()["reports"] if each["number"] == one.number)["size"] is None
    finally:
        one.pdf.write_bytes(kept)


def test_a_server_that_ended_leaves_nothing_being_made_and_the_next_makes_what_waited(serving):
    walk = serving.walked.second["walk"]
    with serving.app.app_context():
        made = asks().add(serving.job, "fay", Asked({"kind": "walk", "walk": walk}, "a4", "es", "US"))
        assert asks().begin(made.id).state == "making" and asks().begin(made.id) is None, "taken once"
        waits = asks().add(serving.job, "fay", Asked({"kind": "walk", "walk": walk}, "letter", "es", "SI"))
        number = maker().shelf.begin(serving.job)
        old, fresh = (maker().shelf.work(serving.job) / f"{new_uuid()}.part" for _ in range(2))
    now = serving.office.clock().timestamp()
    for left, age in ((old, 3600), (fresh, 60)):
        left.write_bytes(b"half a report")
        os.utime(left, (now - age, now - age))
    serving.start()
    told = {one["id"]: one for one in serving.list()["asked"]}
    assert told[made.id]["trouble"] == "interrupted" and waits.id not in told
    assert serving.get(f"reports/asked/{waits.id}").json["state"] == "ready"
    with serving.app.app_context():
        assert maker().shelf.numbered(serving.job, number) is None
        assert maker().shelf.newest(serving.job).state != "making"
    assert not old.exists() and fresh.exists(), "somebody may be finishing the fresh one at a command's prompt"
