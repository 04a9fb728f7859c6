"""Where every run begins: a server's folder with two jobs, four people and their accounts, made once and copied."""

import tempfile
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from inspect_app.store.database import db
from tests.office import Office
from tests.phone import new_uuid

PEOPLE = {"fay": "foreman", "gus": "foreman", "nan": "inspector"}


class Town(NamedTuple):
    """``members``: job → person ids; ``gus`` is not yet of the second job."""

    folder: Path
    jobs: tuple[str, str]
    chief: Any
    people: dict[str, Any]
    members: dict[str, set[str]]


@cache
def town() -> Town:
    folder = Path(tempfile.mkdtemp(prefix="seamwalk-state-"))
    office = Office(folder / "data")
    people = {login: office.add(login, role) for login, role in PEOPLE.items()}
    chief = office.phone("chief", "administrator")
    jobs = (new_uuid(), new_uuid())
    for job in jobs:
        assert chief.send(chief.job(job)).json["answers"][0]["status"] == "accepted"
    members = {job: {chief.person.id} for job in jobs}
    with office.app.app_context():
        for login, person in people.items():
            for job in jobs[: 1 if login == "gus" else 2]:
                office.parts.membership.join(person.id, job)
                members[job].add(person.id)
        db.engine.dispose()
    return Town(folder / "data", jobs, chief.person, people, members)
