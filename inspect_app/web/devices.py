"""Enrol a device's key, and give it tokens for delivery."""

from typing import Any

from flask_smorest import Blueprint

from inspect_app.clock import spell
from inspect_app.people.delivery import SECONDS, scope_of
from inspect_app.people.enrolment import enrol
from inspect_app.people.enrolment_again import enrol_again
from inspect_app.web.bearer import person_from_request
from inspect_app.web.office_desk import office
from inspect_app.web.parts import parts
from inspect_app.web.schemas.devices import AgainSchema, DeliverySchema, DeviceSchema, EnrolledSchema, ProofSchema

blueprint = Blueprint("devices", __name__, url_prefix="/api", description="Device keys")


@blueprint.route("/devices", methods=["POST"])
@blueprint.arguments(DeviceSchema)
@blueprint.response(201, EnrolledSchema)
def add(given: dict[str, Any]) -> dict[str, object]:
    """Tie a key to the person signed in; the proof shows that the phone holds it."""
    part = parts()
    statement = enrol(
        part.devices, part.nonces, person_from_request(), given["jwk"], given["device"], given["proof"]
    )
    return {"enrolment": statement, "server": {"kid": part.server_key.kid, "jwk": part.server_key.jwk}}


@blueprint.route("/devices/again", methods=["POST"])
@blueprint.arguments(AgainSchema)
@blueprint.response(201, EnrolledSchema)
def again(given: dict[str, str]) -> dict[str, object]:
    """Know a key again that was enrolled in the time that a restoration undid."""
    part, trail = parts(), office().trail
    key = part.server_key
    statement = enrol_again(
        part.devices, part.accounts, part.nonces, trail, key.jwk, given["enrolment"], given["proof"]
    )
    return {"enrolment": statement, "server": {"kid": key.kid, "jwk": key.jwk}}


@blueprint.route("/delivery", methods=["POST"])
@blueprint.arguments(ProofSchema)
@blueprint.response(200, DeliverySchema)
def deliver(given: dict[str, str]) -> dict[str, object]:
    """A bearer token for the key that signed the nonce. No sign-in: an expired one never strands work."""
    token, device = parts().delivery.token(given["proof"])
    office().contacts.heard(device.kid)
    return {
        "token": token, "expires_in": SECONDS, "scope": scope_of(device), "time": spell(parts().clock()),
        "restorations": parts().statements.restorations(),
    }  # fmt: skip
