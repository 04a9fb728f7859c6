"""Make the demonstration: a server on a free port, the invented people, their job, its days, the sealed report.

It is made in a folder of its own that gets its final name only when all of it is there, so a run that is
interrupted leaves nothing half done and a second run repeats nothing.
"""

import json
import shutil
import threading
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any, NamedTuple

from flask import Flask

from inspect_app.demo.audit import audit
from inspect_app.demo.crew_day import Plan
from inspect_app.demo.dusk import walk_at_dusk
from inspect_app.demo.firms import Gathering
from inspect_app.demo.fit import check
from inspect_app.demo.followed import Followed
from inspect_app.demo.http import Http
from inspect_app.demo.phone import Phone
from inspect_app.demo.survey import later, survey
from inspect_app.demo.walk import Ticking, Walk
from inspect_app.demo.week import DAYS, WEEK, walk_the_week
from inspect_app.intake.job_file import read_yaml, sayings
from inspect_app.people.passwords import made_up
from inspect_app.record.area import longest_run, panel_length
from inspect_app.record.instruments import instruments
from inspect_app.web.listening import address, listening, stop
from inspect_app.web.reports_desk import maker

SCENARIO = Path(__file__).with_name("scenario.yaml")
ROOF = Path(__file__).with_name("roof.yaml")  # the whole of it, where the scenario has two slopes of it
NOTE = "demonstration.json"
BEFORE_DUSK = timedelta(hours=3)  # when the findings of the days before are gone to again
LENGTH = timedelta(minutes=30)  # the most that the invented walk takes, from opening the job to the signature


class Demonstration(NamedTuple):
    """Where it lies and how to sign in: ``people`` [{"login", "name", "role", "password"}]."""

    folder: Path
    job: str
    people: list[dict[str, str]]


def known(folder: Path) -> Demonstration | None:
    """The demonstration of an earlier run, or None."""
    note = folder / NOTE
    if not note.is_file():
        return None
    kept = json.loads(note.read_text("utf-8"))
    return Demonstration(folder, kept["job"], kept["people"])


def make(folder: Path, start: Callable[[Path], Flask], now: datetime, entropy: Callable[[int], bytes],
         tell: Callable[[str], None], week: tuple[tuple[int, Plan], ...] = WEEK) -> Demonstration:  # fmt: skip
    """Make it in ``folder``. ``start(data)`` gives the app of a data folder; ``now`` is the invented dusk,
    ``LENGTH`` ago or more; ``week``: the days before it."""
    making = folder.with_name(folder.name + ".making")
    shutil.rmtree(making, ignore_errors=True)
    app = start(making)
    page = whole_roof()
    server = listening(app, "127.0.0.1", 0)
    threading.Thread(target=server.run, daemon=True).start()
    try:
        people = _add_people(app, page)
        clock = Ticking(now - timedelta(days=DAYS))
        phones = {
            person["role"]: _phone(address(server), clock, entropy, person)
            for person in people
            if person["role"] in ("administrator", "foreman", "inspector", "engineer")
        }
        job = _register(app, page, phones["administrator"])
        _join(app, people, job["id"])
        tell("a week of two crews, as phones tell it: draws, stops, holds, photographs, uploads in pieces")
        _walk(app, phones, job, clock, now, week)
        people += Gathering(app, address(server), phones["administrator"], job, clock, entropy).make(making)
        if clock() > now + LENGTH:
            raise RuntimeError(f"the walk ends at {clock()}, later than {LENGTH} after {now}")
        scope = _survey(app, address(server), people, job, now, entropy) if week else None
        tell("compiling and sealing the report")
        with app.app_context():
            maker().make(job["id"])
            if scope:
                tell("and that of a warranty survey, told by an invented clock that is years ahead")
                maker().make(job["id"], scope=scope)
    finally:
        stop(server)
    _let_go(app)
    note = {"job": job["id"], "people": people, "invented": True}
    (making / NOTE).write_text(json.dumps(note, indent=1, ensure_ascii=False), "utf-8")
    making.rename(folder)
    return Demonstration(folder, job["id"], people)


def whole_roof() -> dict[str, Any]:
    """The scenario's job on its whole roof."""
    page, roof = (read_yaml(file.read_text("utf-8")) for file in (SCENARIO, ROOF))
    return {**page, "job": {**page["job"], "sampling": roof["sampling"]}, "areas": roof["areas"]}


def _add_people(app: Flask, page: dict[str, Any]) -> list[dict[str, str]]:
    parts = app.extensions["seamwalk"]
    people = [{**person, "password": made_up()} for person in page["people"]]
    with app.app_context(), parts.transactions.writing():
        for person in people:
            parts.accounts.add(person["login"], person["name"], person["role"], person["password"])
    return people


def _join(app: Flask, people: list[dict[str, str]], job: str) -> None:
    parts = app.extensions["seamwalk"]
    with app.app_context(), parts.transactions.writing():
        for person in people:
            parts.membership.join(parts.accounts.by_login(person["login"]).id, job)


def _phone(server: str, clock: Ticking, entropy: Callable[[int], bytes], person: dict[str, str]) -> Phone:
    phone = Phone(Http(server), clock, entropy)
    phone.sign_in(person["login"], person["password"], f"demonstration phone of {person['role']}")
    return phone


def _register(app: Flask, page: dict[str, Any], office: Phone) -> dict[str, Any]:
    """Sign and deliver the job, its assemblies and its areas; all of it by id and by the file's keys."""
    parts = app.extensions["seamwalk"]
    said = sayings(page, parts.definitions.newest(), office.new_id)
    job = said[0].subject
    for one in said:
        office.say(job, one.kind, one.subject, one.body)
    office.deliver()
    bodies = {one.subject: one.body for one in said}
    areas = {
        key: {"key": key, "id": one.subject, "body": {**one.body, "panel_length": panel_length(one.body),
                                                      "run": longest_run(one.body)}}
        for key, one in zip(page["areas"], [one for one in said if one.kind == "area"], strict=True)
    }
    assemblies = {key: bodies[area["body"]["assembly"]] for key, area in areas.items()}
    body = {**said[0].body, "instruments": instruments(said[0].body)}
    return {"id": job, "body": body, "areas": areas, "assemblies": assemblies}


def _walk(app: Flask, phones: dict[str, Phone], job: dict[str, Any], clock: Ticking, dusk: datetime,
          week: tuple[tuple[int, Plan], ...]) -> None:  # fmt: skip
    parts, foreman, office = app.extensions["seamwalk"], phones["foreman"], phones["administrator"]
    definitions = {
        compiled.definition["id"]: {**compiled.definition, "digest": compiled.digest}
        for digest, compiled in parts.definitions.by_digest.items()
        if digest in job["body"]["definitions"].values()
    }
    clock.advance(minutes=5)
    build = foreman.http.call("GET", "/shell.json").json()["build"]  # what a phone names as its rulebook
    check(foreman, job, build, clock().date().isoformat())

    def fold() -> dict[str, Any]:
        foreman.deliver()
        with app.app_context():
            return dict(parts.records.record(job["id"]))

    def walk() -> Walk:
        return Walk(foreman, job, definitions, build, clock)

    walk_the_week(week, walk, office, fold, dusk)
    if week:
        audit(Walk(phones["inspector"], job, definitions, build, clock), fold, dusk)
        clock.to(max(clock(), dusk - BEFORE_DUSK))
        Followed(phones, job, build, clock, fold).tell()
    clock.to(dusk)
    walk_at_dusk(walk())
    foreman.deliver()


def _survey(app: Flask, at: str, people: list[dict[str, str]], job: dict[str, Any], dusk: datetime,
            entropy: Callable[[int], bytes]) -> dict[str, Any]:  # fmt: skip
    reviewer = Phone(Http(at), later(dusk), entropy)
    person = next(one for one in people if one["role"] == "reviewer")
    reviewer.sign_in(person["login"], person["password"], "demonstration phone of a reviewer, years later")
    with app.app_context():
        record = dict(app.extensions["seamwalk"].records.record(job["id"]))
    build = reviewer.http.call("GET", "/shell.json").json()["build"]
    return survey(reviewer, job["id"], record, build, dusk)


def _let_go(app: Flask) -> None:
    """Close the database's files: some systems do not rename a folder in use."""
    from inspect_app.store.database import db

    with app.app_context():
        db.session.remove()
        db.engine.dispose()
