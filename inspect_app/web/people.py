"""Who takes part in a job: its firms, their people, what is open for others, and what whoever asks may do."""

from typing import Any

from flask_smorest import Blueprint

from inspect_app.people.firms import Firm
from inspect_app.people.rights import may, rights
from inspect_app.store.people_map import people_of
from inspect_app.web.bearer import require_member
from inspect_app.web.entitled import require_right
from inspect_app.web.office_desk import office
from inspect_app.web.parts import parts
from inspect_app.web.schemas.people import FirmSchema, NewFirmSchema, PeopleSchema

blueprint = Blueprint("people", __name__, url_prefix="/api", description="Firms and people of a job")
NONE = Firm("", "", "", None)


@blueprint.route("/jobs/<job>/people")
@blueprint.response(200, PeopleSchema)
def people(job: str) -> dict[str, object]:
    """The job's firms with their people. Somebody whose firm sees only its areas is told of their own firm."""
    person = require_member(job)
    desk, areas = office(), office().firms.areas_of(job, person.id)
    whole = areas is None
    firms = [one for one in _firms(job) if whole or any(member["id"] == person.id for member in one["people"])]
    return {
        "firms": firms,
        "invitations": desk.invitations.of(job) if may(person.role, "invites", whole) else [],
        "links": desk.links.of(job) if may(person.role, "links", whole) else [],
        "rights": rights(person.role, areas),
    }


@blueprint.route("/jobs/<job>/firms", methods=["POST"])
@blueprint.arguments(NewFirmSchema)
@blueprint.response(200, FirmSchema)
def add_firm(given: dict[str, Any], job: str) -> Firm:
    """Let a firm take part; said again of the same name, its side and areas are changed."""
    person = require_right(job, "invites")
    with parts().transactions.writing():
        firm = office().firms.join(job, given["name"], given["side"], given["areas"])
        office().trail.note("firm", job, person.id, firm=firm.name, side=firm.side, areas=firm.areas)
    return firm


def _firms(job: str) -> list[dict[str, Any]]:
    everybody = people_of(parts().transactions, job)
    placed = office().firms.people(job)
    found = [
        {**firm._asdict(), "people": [{"id": one, **facts} for one, facts in everybody.items()
                                      if placed.get(one, "") == firm.id]}
        for firm in [*office().firms.of(job), NONE]
    ]  # fmt: skip
    return [one for one in found if one["id"] or one["people"]]
