"""Reports of a part of a job: numbered in one series, each superseded within its scope, held to it when verified."""

import copy
import hashlib

import pytest
from pyhanko.pdf_utils.reader import PdfFileReader

from inspect_app.evidence.enclosure import enclosed
from inspect_app.evidence.entries import entry_facts
from inspect_app.evidence.fact import FAILS
from inspect_app.evidence.verify import verify
from inspect_app.record.scope import WHOLE
from inspect_app.report.shelf_list import listed
from inspect_app.rules.refused import Refused
from inspect_app.web.reports_desk import maker
from tests.bodies import body_of
from tests.office import Office
from tests.phone import new_uuid
from tests.report.sample_pictures import picture
from tests.report.test_make import accept, keep_photo, make


class Walked:
    """An office with a job of two signed walks on two areas, a place and a failed answer on each, a photo missing on
    the second."""

    def __init__(self, folder):
        self.office = Office(folder)
        self.job, chief = self.office.job()
        self.foreman = self.office.phone("fay", "foreman", self.job)
        assembly, self.areas = new_uuid(), (new_uuid(), new_uuid())
        accept(chief, chief.entry("assembly", self.job, assembly),
               *(chief.entry("area", self.job, area, {"assembly": assembly, "name": name})
                 for area, name in zip(self.areas, ("Low roof", "High roof"), strict=True)))  # fmt: skip
        self.missing = picture("late")
        self.first = self.walk(self.areas[0], None)
        self.second = self.walk(self.areas[1], hashlib.sha256(self.missing).hexdigest())

    def walk(self, area, photo):
        walk, station = new_uuid(), new_uuid()
        definition = next(iter(self.office.parts.definitions.by_digest))
        verdict = body_of("answer")["verdict"] | {"result": "fail", "rule": None, "reason": None, "inputs": {},
                                                  "values": {}}  # fmt: skip
        failed = {"walk": walk, "station": station, "item": "screw_centred", "choice": "fail", "reading": None,
                  "definition": definition, "verdict": verdict, "photos": [photo] if photo else []}  # fmt: skip
        phone, job = self.foreman, self.job
        tokens = [
            phone.entry("walk", job, walk, {"definition": definition, "areas": [area], "placed": []}),
            phone.entry("station", job, station, {"walk": walk, "area": area}),
            phone.entry("answer", job, f"{station}/nail-flange/screw_centred", failed),
        ]
        if photo:
            tokens.append(phone.entry("photo", job, photo, {"walk": walk, "station": station, "sha256": photo}))
        accept(phone, *tokens, phone.entry("signoff", job, walk, {"walk": walk}))
        return {"kind": "walk", "walk": walk}


@pytest.fixture(scope="module")
def walked(tmp_path_factory):
    return Walked(tmp_path_factory.mktemp("scopes") / "data")


@pytest.fixture(scope="module")
def part(walked):
    return make(walked.office, walked.job, scope=walked.first)


def facts(part, told):
    with open(part.shelved.pdf, "rb") as file:
        files = enclosed(PdfFileReader(file))
    return {fact.name: fact for fact in entry_facts(files, told)}


def failing(part, **changed):
    told = copy.deepcopy(part.contents) | changed
    return {name for name, fact in facts(part, told).items() if fact.status == FAILS}


def test_a_report_of_one_walk_tells_of_it_alone_and_every_fact_of_it_holds(walked, part):
    told = part.contents
    assert (told["kind"], told["scope"], told["about"]["areas"]) == ("walk", walked.first, ["Low roof"])
    assert [one["id"] for one in told["days"]] == [walked.first["walk"]]
    assert [area["name"] for area in told["areas"]] == ["Low roof"] and len(told["findings"]) == 1
    outside = told["outside"]
    assert (outside["walks"], outside["findings"], outside["unsettled"], outside["areas"]) == (1, 1, 1, ["High roof"])
    assert {fact.status for fact in verify(part.shelved.pdf.read_bytes()).facts} <= {"holds", "not_determinable"}
    assert failing(part) == set()


def test_what_is_missing_elsewhere_makes_no_draft_of_it(walked, part):
    assert part.contents["final"] and part.contents["missing"] == []
    other = make(walked.office, walked.job, scope=walked.second)
    assert not other.contents["final"]
    assert "photo_missing" in {one["code"] for one in other.contents["missing"]}


def test_a_part_passed_off_as_the_whole_job_is_found(part):
    assert "scope_follows" in failing(part, scope=WHOLE, kind="closeout")
    assert {"scope_follows", "answers_follow", "findings_follow"} <= failing(part, scope=WHOLE, kind="closeout")
    without = {name: value for name, value in part.contents.items() if name not in ("scope", "kind", "outside")}
    assert FAILS in {fact.status for fact in facts(part, without).values()}, "one that names no scope speaks of all"


@pytest.mark.parametrize(
    "scope",
    [{"kind": "walk", "walk": "another"}, {"kind": "walk"}, {"kind": "roof"}, {}, None, 7, [], {"kind": None},
     {"kind": "walk", "walk": None}],
)  # fmt: skip
def test_a_scope_that_cannot_be_read_or_names_nothing_confirms_nothing(part, scope):
    assert {"scope_follows", "answers_follow", "findings_follow"} <= failing(part, scope=scope)


def test_the_other_walk_s_scope_over_this_walk_s_contents_is_found(walked, part):
    assert {"scope_follows", "answers_follow"} <= failing(part, scope=walked.second)


@pytest.mark.parametrize("name", ["days", "stations", "areas", "assemblies", "signoffs"])
def test_anything_left_out_doubled_or_dropped_whole_within_the_scope_is_found(part, name):
    told = part.contents[name]
    assert told
    for changed in (told[1:], [*told, told[0]], None):
        assert "scope_follows" in failing(part, **{name: changed})


def test_other_figures_of_what_is_outside_or_another_kind_over_the_scope_are_found(part):
    milder = part.contents["outside"] | {"unsettled": 0}
    assert failing(part, outside=milder) == failing(part, kind="audit") == failing(part, outside=None) == {
        "scope_follows"
    }


def test_a_scope_that_is_not_in_the_record_takes_no_number(walked, part):
    with pytest.raises(Refused):
        make(walked.office, walked.job, scope={"kind": "walk", "walk": "none"})
    with walked.office.app.app_context():
        assert "none" not in str([one.scope for one in maker().shelf.ready(walked.job)])


def test_numbers_are_one_series_and_each_report_supersedes_the_newest_before_it_of_its_own_scope(tmp_path):
    walked = Walked(tmp_path / "data")
    office, job = walked.office, walked.job
    scopes = (walked.first, WHOLE, walked.second)
    made = [make(office, job, scope=scope) for scope in scopes]
    keep_photo(office, job, walked.missing)
    made += [make(office, job, scope=scope) for scope in scopes]
    assert [one.contents["number"] for one in made] == [1, 2, 3, 4, 5, 6], "a new receipt is a new head of the log"
    assert [one.contents["supersedes"] for one in made] == [None, None, None, 1, 2, 3]
    with office.app.app_context():
        told = listed(maker().shelf.ready(job))
    assert [(one["number"], one["superseded_by"]) for one in told] == [
        (6, None), (5, None), (4, None), (3, 6), (2, 5), (1, 4)]  # fmt: skip
    assert [one["final"] for one in told] == [True, True, True, False, False, True]
    assert all(one["size"] for one in told), "a superseded one stays readable"
    assert told[0]["about"]["areas"] == ["High roof"] and told[1]["about"] == {}
    a_reviewer_sees_them(walked)


def a_reviewer_sees_them(walked):
    office, job = walked.office, walked.job
    with office.app.app_context():
        secret = office.app.extensions["office"].links.make(job, "A reviewer", 1, walked.foreman.person.id)[1]
    client = office.client()
    rows = [row for row in client.get(f"/view/{secret}").text.split("<tr>") if "/reports/" in row]
    assert ["Current" in row for row in rows] == [True] * 3 + [False] * 3
    assert "Superseded by 5" in rows[4] and "Report of one walk" in rows[0] and "reports/6.pdf" in rows[0]
    assert client.get(f"/view/{secret}/reports/2.pdf").data.startswith(b"%PDF-"), "superseded, and still to be read"
    assert client.get(f"/view/{secret}/reports/7.pdf").status_code == 404


def test_a_report_asked_for_in_another_form_does_not_have_the_due_one_made_again(walked):
    with walked.office.app.app_context():
        spanish = maker().make(walked.job, paper="a4", language="es", units="SI")
        assert (spanish.contents["units"], spanish.contents["language"]) == ("SI", "es")
        again = maker().make_due(walked.job)
    assert not again.new and again.shelved.number == spanish.shelved.number
