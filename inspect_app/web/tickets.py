"""Give a phone the random tickets that it will draw by."""

from typing import Any

from flask_smorest import Blueprint

from inspect_app.clock import spell
from inspect_app.web.bearer import device_from_bearer, require_member
from inspect_app.web.parts import parts
from inspect_app.web.schemas.tickets import AskedSchema, TicketsSchema

blueprint = Blueprint("tickets", __name__, url_prefix="/api", description="Random tickets for draws")


@blueprint.route("/tickets", methods=["POST"])
@blueprint.arguments(AskedSchema)
@blueprint.response(200, TicketsSchema)
def give(asked: dict[str, Any]) -> dict[str, object]:
    """The key's unused tickets of one job after the highest number it holds. Asked again, the same ones."""
    device = device_from_bearer()
    require_member(asked["job"])
    tickets = parts().tickets.give(asked["job"], device.kid, asked["series"], asked["have"])
    return {"tickets": tickets, "time": spell(parts().clock())}
