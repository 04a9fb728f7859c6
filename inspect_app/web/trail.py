"""Who saw, exported, invited, revoked, admitted, joined and signed in, and when."""

from flask_smorest import Blueprint

from inspect_app.people.trail import Step
from inspect_app.web.entitled import require_right
from inspect_app.web.office_desk import office
from inspect_app.web.schemas.trail import BeforeSchema, StepSchema

blueprint = Blueprint("trail", __name__, url_prefix="/api", description="The trail of a job")


@blueprint.route("/jobs/<job>/trail")
@blueprint.arguments(BeforeSchema, location="query")
@blueprint.response(200, StepSchema(many=True))
def trail(asked: dict[str, int | None], job: str) -> list[Step]:
    """The newest 200 steps, newest first."""
    require_right(job, "reads_trail")
    return office().trail.of(job, asked["before"])
