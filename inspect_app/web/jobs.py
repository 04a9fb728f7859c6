"""The jobs a person belongs to, and who else does."""

from flask_smorest import Blueprint

from inspect_app.store.people_map import people_of
from inspect_app.web.bearer import person_from_request
from inspect_app.web.parts import parts
from inspect_app.web.schemas.jobs import JobsSchema

blueprint = Blueprint("jobs", __name__, url_prefix="/api", description="Jobs")


@blueprint.route("/jobs")
@blueprint.response(200, JobsSchema)
def jobs() -> dict[str, object]:
    """The jobs of whoever asks, oldest first."""
    return {"jobs": [shown(job) for job in parts().membership.jobs_of(person_from_request().id)]}


def shown(job: str) -> dict[str, object]:
    people = people_of(parts().transactions, job)
    members = [{"id": person, **facts} for person, facts in people.items()]
    return {"id": job, "name": parts().records.name(job), "people": members}
