"""Deliver entries and fetch those of others."""

from typing import Any

from flask_smorest import Blueprint

from inspect_app.clock import spell
from inspect_app.errors import BadInput, NotFound
from inspect_app.intake.batch import MOST, Answer
from inspect_app.web.bearer import device_from_bearer
from inspect_app.web.error_body import explained
from inspect_app.web.page import page
from inspect_app.web.parts import parts
from inspect_app.web.schemas.entries import AnswersSchema, BatchSchema, CursorSchema, PageSchema

blueprint = Blueprint("entries", __name__, url_prefix="/api", description="Signed entries")


@blueprint.route("/entries", methods=["POST"])
@blueprint.arguments(BatchSchema)
@blueprint.response(200, AnswersSchema)
def deliver(given: dict[str, Any]) -> dict[str, object]:
    """An answer for each entry, in order. Sending again what is held gives the same receipts."""
    device_from_bearer(scope="quarantine")
    if len(given["entries"]) > MOST:
        raise BadInput("too_many", "entries", len(given["entries"]))
    answers = parts().batches.receive(given["entries"])
    parts().completion.entries_arrived(answers)
    return {"answers": [shown(answer) for answer in answers], "time": spell(parts().clock())}


@blueprint.route("/entries")
@blueprint.arguments(CursorSchema, location="query")
@blueprint.response(200, PageSchema)
def fetch(asked: dict[str, Any]) -> dict[str, object]:
    """Entries that the person sees of their jobs (or of one of them) after a number of the server's order."""
    person = device_from_bearer().person
    jobs = parts().membership.jobs_of(person)
    if asked["job"] is not None and asked["job"] not in jobs:
        raise NotFound("job_unknown", "job", asked["job"])
    return page(person, asked["after"], [asked["job"]] if asked["job"] else jobs, asked["limit"])


def shown(answer: Answer) -> dict[str, object]:
    """One answer as it is sent, with words for what was not taken."""
    why = explained(answer.why.code, answer.why.field, answer.why.value) if answer.why else {}
    return {"digest": answer.digest, "status": answer.status, "receipt": answer.receipt, **why}
