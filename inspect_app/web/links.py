"""Make and withdraw reviewers' links; the page they lead to is ``view.py``."""

from typing import Any

from flask_smorest import Blueprint

from inspect_app.clock import spell
from inspect_app.web.entitled import require_right
from inspect_app.web.office_desk import office
from inspect_app.web.parts import parts
from inspect_app.web.schemas.invitations import DoneSchema, MadeSchema
from inspect_app.web.schemas.links import NewLinkSchema

blueprint = Blueprint("links", __name__, url_prefix="/api/jobs/<job>/links", description="Reviewers' links")


@blueprint.route("", methods=["POST"])
@blueprint.arguments(NewLinkSchema)
@blueprint.response(201, MadeSchema)
def make(given: dict[str, Any], job: str) -> dict[str, str]:
    """A page of this job to read, for whoever has the link. It is told once."""
    person, desk = require_right(job, "links"), office()
    with parts().transactions.writing():
        id, secret, expires = desk.links.make(job, given["name"], given["days"], person.id)
        desk.trail.note("link_made", job, person.id, link=id, name=given["name"].strip(), expires=expires)
    return {"id": id, "url": f"/view/{secret}", "expires": expires}


@blueprint.route("/<link>", methods=["DELETE"])
@blueprint.response(200, DoneSchema)
def withdraw(job: str, link: str) -> dict[str, str]:
    """End a link: whoever has it reads no more."""
    person = require_right(job, "links")
    with parts().transactions.writing():
        office().links.withdraw(job, link)
        office().trail.note("link_withdrawn", job, person.id, link=link)
    return {"time": spell(parts().clock())}
