"""Hear what is still only on a phone."""

from typing import Any

from flask_smorest import Blueprint

from inspect_app.clock import spell
from inspect_app.web.bearer import device_from_bearer, device_or_none, person_from_request
from inspect_app.web.office_desk import office
from inspect_app.web.parts import parts
from inspect_app.web.schemas.devices import MissingSchema
from inspect_app.web.schemas.manifest import HeardSchema, ManifestSchema

blueprint = Blueprint("manifest", __name__, url_prefix="/api", description="What has not arrived")


@blueprint.route("/manifest", methods=["POST"])
@blueprint.arguments(ManifestSchema)
@blueprint.response(200, HeardSchema)
def hear(given: dict[str, Any]) -> dict[str, object]:
    """Replace what this key said before, or with ``more`` say that there is this, too."""
    device = device_from_bearer(scope="quarantine")
    parts().manifests.keep(device.kid, given["items"], given["oldest"], given["more"])
    office().contacts.heard(device.kid)
    return {"time": spell(parts().clock())}


@blueprint.route("/missing")
@blueprint.response(200, MissingSchema)
def missing() -> dict[str, object]:
    """What the other phones of whoever asks told of and what has never arrived: after a phone was erased its new key
    asks, and learns what the old one still had."""
    person, device = person_from_request(), device_or_none()

    def shown(job: str, photo: str) -> bool:
        return parts().membership.belongs(person.id, job) and office().scope.shows_photo(job, person.id, photo)

    phones = office().contacts.never_arrived(person.id, device.kid if device else None, shown)
    return {"phones": phones, "time": spell(parts().clock())}
