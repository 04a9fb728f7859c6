"""Bring in a saved copy of a phone's unsent work, whole or in parts."""

from collections import Counter

from flask import current_app, request
from flask_smorest import Blueprint

from inspect_app.errors import NotAllowed
from inspect_app.intake.copy_intake import CopyIntake
from inspect_app.intake.copy_outcome import Brought, Came, Seal, plain
from inspect_app.people.accounts import Person
from inspect_app.people.rights import may
from inspect_app.web.bearer import person_from_request
from inspect_app.web.error_body import explained
from inspect_app.web.office_desk import office
from inspect_app.web.parts import parts
from inspect_app.web.schemas.copies import BroughtSchema

blueprint = Blueprint("copies", __name__, url_prefix="/api", description="Saved copies of unsent work")

LARGEST = 48 * 1024 * 1024  # one photo of the largest size and its wrapping
TAR = "application/x-tar"
BODY = {"required": True, "content": {TAR: {"schema": {"type": "string", "format": "binary"}}}}


@blueprint.route("/copies", methods=["POST"])
@blueprint.doc(requestBody=BODY)
@blueprint.response(200, BroughtSchema)
def bring() -> dict[str, object]:
    """An answer for each thing in it; only what belongs to jobs that whoever asks is an administrator of is taken. A
    copy larger than a request may come in parts that are cut between its members, each brought as often as need be."""
    person = person_from_request()
    if not may(person.role, "imports"):
        raise NotAllowed("role_may_not", "role", person.role)
    request.max_content_length = LARGEST
    copies = current_app.extensions["copies"]
    assert isinstance(copies, CopyIntake)
    known: dict[str, bool] = {}

    def theirs(job: str) -> bool:
        known[job] = known[job] if job in known else _theirs(person, job)
        return known[job]

    brought = Brought()
    try:
        copies.bring(request.stream, theirs, brought)
    finally:  # a link that breaks on the way takes nothing back
        _note(brought, person)
    names = _names(person)
    return plain(brought) | {
        "seals": [shown_seal(one, names) for one in brought.seals],
        "items": [shown(one, names) for one in brought.came],
    }


def _theirs(person: Person, job: str) -> bool:
    """Of a job that nobody belongs to yet the ordinary intake decides who may open it."""
    if not parts().membership.belongs(person.id, job):
        return not parts().membership.members([job])
    return may(person.role, "imports", office().firms.areas_of(job, person.id) is None)


def _names(person: Person) -> dict[str, str]:
    """``{person id: name}`` of those whom they share a job with: a list may name anybody."""
    members = parts().membership.members(parts().membership.jobs_of(person.id))
    known = {one for people in members.values() for one in people}
    return {one.id: one.name for one in parts().accounts.everybody() if one.id in known}


def _note(brought: Brought, person: Person) -> None:
    """In the trail of every job that something came into."""
    came = Counter((one.job, one.what) for one in brought.came if one.status in ("accepted", "quarantined"))
    for job in sorted({job for job, _ in came}):
        counts = {"entries": came[job, "entry"], "photos": came[job, "photo"]}
        office().trail.note("copy_imported", job, person.id, **counts)


def shown_seal(seal: Seal, names: dict[str, str]) -> dict[str, object]:
    return {**seal._asdict(), "who": names.get(seal.person, "")}


def shown(one: Came, names: dict[str, str]) -> dict[str, object]:
    """One thing as it is sent, with words for what was not simply taken."""
    why = explained(one.why.code, one.why.field, one.why.value) if one.why else {}
    listed = one.listed._asdict() if one.listed else {}
    told = {"kind": listed.get("kind"), "at": listed.get("at"), "who": names.get(str(listed.get("person")))}
    return {"what": one.what, "name": one.name, "job": one.job, "status": one.status, **told, **why}
