"""The phones of a job's people: listed, named, ended."""

from flask_smorest import Blueprint

from inspect_app.clock import spell
from inspect_app.errors import NotFound
from inspect_app.people.accounts import Person
from inspect_app.people.contacts import Contact
from inspect_app.people.devices import Device
from inspect_app.people.rights import may
from inspect_app.web.bearer import person_from_request, require_member
from inspect_app.web.office_desk import office
from inspect_app.web.parts import parts
from inspect_app.web.schemas.devices import HeldKeySchema, NameSchema, RevokedSchema
from inspect_app.web.schemas.invitations import DoneSchema
from inspect_app.web.signed_in import stay_signed_in

blueprint = Blueprint("job_devices", __name__, url_prefix="/api", description="The phones of a job's people")


@blueprint.route("/jobs/<job>/devices")
@blueprint.response(200, HeldKeySchema(many=True))
def listing(job: str) -> list[Contact]:
    """Everybody's, to who may end them; to others their own."""
    person = require_member(job)
    whole = office().firms.areas_of(job, person.id) is None
    everybody = parts().membership.members([job])[job] if may(person.role, "revokes", whole) else {person.id}
    return office().contacts.of(everybody, job)


@blueprint.route("/devices/<kid>", methods=["POST"])
@blueprint.arguments(NameSchema)
@blueprint.response(200, DoneSchema)
def name(given: dict[str, str], kid: str) -> dict[str, str]:
    """What people call it. By its own person, or an administrator of a job they share."""
    person, _, jobs = _theirs(kid)
    with parts().transactions.writing():
        office().contacts.name(kid, given["name"])
        for job in jobs:
            office().trail.note("device_named", job, person.id, key=kid, name=given["name"].strip())
    return {"time": spell(parts().clock())}


@blueprint.route("/devices/<kid>", methods=["DELETE"])
@blueprint.response(200, RevokedSchema)
def revoke(kid: str) -> dict[str, str]:
    """End a key, and every sign-in of its person but the one that says so. What it signs from now on is kept apart. By
    its own person, or an administrator of a job they share."""
    person, device, jobs = _theirs(kid)
    with parts().transactions.writing():
        statement = parts().devices.revoke(kid, person.id)
        for job in jobs if not device.revoked else []:
            office().trail.note("revoked", job, person.id, key=kid, of=device.person)
    if device.person == person.id:
        stay_signed_in()
    return {"revocation": statement}


def _theirs(kid: str) -> tuple[Person, Device, list[str]]:
    """Who asks, the device, and the jobs in which this is told of. Raises ``NotFound`` for a key that is not theirs
    to speak of, whether or not there is one."""
    person = person_from_request()
    device = parts().devices.find(kid)
    if device is not None:
        jobs = parts().membership.jobs_of(device.person)
        if device.person == person.id:
            return person, device, jobs
        ours = [job for job in jobs if parts().membership.belongs(person.id, job)
                and may(person.role, "revokes", office().firms.areas_of(job, person.id) is None)]  # fmt: skip
        if ours:
            return person, device, ours
    raise NotFound("device_unknown", "key", kid)
