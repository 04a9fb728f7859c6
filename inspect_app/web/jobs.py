"""The jobs a person belongs to, and who else does."""

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
    return {"jobs": mine, "restorations": parts().statements.restorations()}


def shown(job: str, person: Person) -> dict[str, object]:
    asker = person.id
    people, scope = people_of(parts().transactions, job), office().scope
    told = scope.authors(job, asker)
    members = [{"id": person, **facts} for person, facts in people.items() if told is None or person in told]
    sight, given = scope.name(job, asker), scope.sight(job, asker)
    areas = None if given is None else sorted(given.areas)
    overdue = office().contacts.overdue(people, job) if may(person.role, "revokes", told is None) else 0
    name = parts().records.name(job)
    return {"id": job, "name": name, "people": members, "part": bool(sight), "sight": sight, "areas": areas,
            "overdue": overdue}  # fmt: skip
