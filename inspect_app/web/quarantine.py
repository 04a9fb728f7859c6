"""What is kept apart of a job, for a person to decide about. It is let in by an entry of kind ``admission``."""

from flask_smorest import Blueprint

from inspect_app.store.people_map import people_of
from inspect_app.store.quarantine import KeptApart
from inspect_app.web.entitled import require_right
from inspect_app.web.parts import parts
from inspect_app.web.schemas.quarantine import KeptApartSchema

blueprint = Blueprint("quarantine", __name__, url_prefix="/api", description="Entries kept apart")


@blueprint.route("/jobs/<job>/quarantine")
@blueprint.response(200, KeptApartSchema(many=True))
def listing(job: str) -> list[dict[str, object]]:
    """In order of arrival; only what the job's own people signed: nobody else's could be let in."""
    require_right(job, "admits")
    people = people_of(parts().transactions, job)
    held = parts().quarantine.photos(job) | set(parts().reading.photos(job))
    return [shown(one, str(people[one.by]["name"]), held) for one in parts().quarantine.of(job) if one.by in people]


def shown(one: KeptApart, who: str, held: set[str]) -> dict[str, object]:
    return {**one._asdict(), "who": who, "photos": len(one.photos), "held": len(held & set(one.photos))}
