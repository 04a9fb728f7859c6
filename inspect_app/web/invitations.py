"""Invite people to a job, and join one by an invitation."""

from typing import Any

from flask_smorest import Blueprint

from inspect_app.clock import spell
from inspect_app.errors import BadInput, Conflict
from inspect_app.people.accounts import Person
from inspect_app.web.bearer import person_from_request
from inspect_app.web.csrf import csrf_token, require_csrf
from inspect_app.web.entitled import by_secret, require_right
from inspect_app.web.office_desk import office
from inspect_app.web.parts import parts
from inspect_app.web.schemas.invitations import (
    DoneSchema,
    InvitedSchema,
    InviteSchema,
    JoinedSchema,
    JoinSchema,
    MadeSchema,
)
from inspect_app.web.signed_in import sign_in

blueprint = Blueprint("invitations", __name__, url_prefix="/api", description="Invitations to a job")
AT = "/#/join/{}"  # behind the hash, so that the secret is in no server's or proxy's log


@blueprint.route("/jobs/<job>/invitations", methods=["POST"])
@blueprint.arguments(InviteSchema)
@blueprint.response(201, MadeSchema)
def invite(given: dict[str, Any], job: str) -> dict[str, str]:
    """A link for one person. It is told once: only what tells it from others is kept."""
    person, desk = require_right(job, "invites"), office()
    with parts().transactions.writing():
        id, secret, expires = desk.invitations.make(job, given["firm"], given["role"], given["days"], person.id)
        firm = desk.firms.one(job, given["firm"]).name
        desk.trail.note("invited", job, person.id, invitation=id, firm=firm, role=given["role"], expires=expires)
    return {"id": id, "url": AT.format(secret), "expires": expires}


@blueprint.route("/jobs/<job>/invitations/<invitation>", methods=["DELETE"])
@blueprint.response(200, DoneSchema)
def withdraw(job: str, invitation: str) -> dict[str, str]:
    """End an invitation that nobody has used."""
    person = require_right(job, "invites")
    with parts().transactions.writing():
        office().invitations.withdraw(job, invitation)
        office().trail.note("invitation_withdrawn", job, person.id, invitation=invitation)
    return {"time": spell(parts().clock())}


@blueprint.route("/invitations/<secret>")
@blueprint.response(200, InvitedSchema)
def look(secret: str) -> dict[str, str]:
    """What it is an invitation to. 410 when it was used, is withdrawn or has expired."""
    found = by_secret(office().invitations.find, secret)
    return {
        "job_name": parts().records.name(found.job), "firm": office().firms.one(found.job, found.firm).name,
        "role": found.role, "expires": found.expires,
    }  # fmt: skip


@blueprint.route("/invitations/<secret>", methods=["POST"])
@blueprint.arguments(JoinSchema)
@blueprint.response(201, JoinedSchema)
def join(given: dict[str, str | None], secret: str) -> dict[str, object]:
    """Join, with a new account or as who is signed in. It works once."""
    desk = office()
    new = given["login"] is not None
    if new:
        require_csrf()
    found = by_secret(desk.invitations.find, secret)
    person = None if new else person_from_request()
    with parts().transactions.writing():
        person = person or _account(given, found.role)
        desk.invitations.take(secret, person)
        firm = desk.firms.one(found.job, found.firm).name
        desk.trail.note("joined", found.job, person.id, invitation=found.id, firm=firm, role=found.role)
    if new:
        sign_in(person)
    return {"job": found.job, "person": person, "csrf": csrf_token()}


def _account(given: dict[str, str | None], role: str) -> Person:
    for field in ("name", "password"):
        if given[field] is None:
            raise BadInput("field_missing", field)
    try:
        return parts().accounts.add(str(given["login"]), str(given["name"]), role, str(given["password"]))
    except Conflict as taken:
        raise Conflict("invitation_login_taken", taken.field, taken.value) from None
