"""The jobs a person belongs to, and who else does."""

from typing import Any

from flask_smorest import Blueprint

from inspect_app.people.accounts import Person
from inspect_app.people.rights import may
from inspect_app.store.people_map import people_of
from inspect_app.web.bearer import person_from_request
from inspect_app.web.office_desk import office
from inspect_app.web.parts import parts
from inspect_app.web.schemas.jobs import JobsSchema

blueprint = Blueprint("jobs", __name__, url_prefix="/api", description="Jobs")


@blueprint.route("/jobs")
@blueprint.response(200, JobsSchema)
def jobs() -> dict[str, object]:
    """The jobs of whoever asks, oldest first."""
    person = person_from_request()
    mine = [shown(job, person) for job in parts().membership.jobs_of(person.id)]
    return {"jobs": with_overdue(mine, person), "restorations": parts().statements.restorations()}


def shown(job: str, person: Person) -> dict[str, Any]:
    asker = person.id
    people, scope = people_of(parts().transactions, job), office().scope
    told = scope.authors(job, asker)
    members = [{"id": person, **facts} for person, facts in people.items() if told is None or person in told]
    sight, given = scope.name(job, asker), scope.sight(job, asker)
    areas = None if given is None else sorted(given.areas)
    name = parts().records.name(job)
    return {"id": job, "name": name, "people": members, "part": bool(sight), "sight": sight, "areas": areas}


def with_overdue(jobs: list[dict[str, Any]], person: Person) -> list[dict[str, Any]]:
    """Each with the phones that hold something of it for long, where whoever asks may do something about it."""
    scope = office().scope
    told = {job["id"]: [one["id"] for one in job["people"]] for job in jobs
            if may(person.role, "revokes", scope.authors(job["id"], person.id) is None)}  # fmt: skip
    late = office().contacts.overdue(told) if told else {}
    return [{**job, "overdue": late.get(job["id"], 0)} for job in jobs]
