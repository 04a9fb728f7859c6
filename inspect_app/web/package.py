"""A job's evidence package: what is in it, and its download."""

from flask import Response, request
from flask_smorest import Blueprint

from inspect_app.clock import spell
from inspect_app.errors import NotAllowed, NotFound
from inspect_app.package.stored_zip import StoredZip
from inspect_app.people.rights import may
from inspect_app.web.entitled import require_right
from inspect_app.web.office_desk import office
from inspect_app.web.packages_desk import LASTS, Pass, packer, read_pass, spelled
from inspect_app.web.parts import parts
from inspect_app.web.schemas.package import PackageSchema
from inspect_app.web.zip_answer import part_asked, zip_answer

blueprint = Blueprint("package", __name__, url_prefix="/api", description="The evidence package")
PASS = {"in": "query", "name": "pass", "schema": {"type": "string"}, "description": "of the call before"}


@blueprint.route("/jobs/<job>/package")
@blueprint.response(200, PackageSchema)
def package(job: str) -> dict[str, object]:
    """What a package of the job as it stands holds, and an address that gives just this one, also in parts."""
    person = require_right(job, "exports")
    made = parts().clock()
    packed = packer().pack(job, made)
    given = spelled(Pass(job, person.id, made, packed.bag.digest))
    return {
        "name": packed.bag.name, "bytes": StoredZip(packed.bag).size, "counts": packed.told["counts"],
        "url": f"/api/jobs/{job}/package.zip?pass={given}", "ends": made + LASTS,
    }  # fmt: skip


@blueprint.route("/jobs/<job>/package.zip")
@blueprint.doc(parameters=[PASS])
@blueprint.response(200, {"type": "string", "format": "binary"}, content_type="application/zip")
def download(job: str) -> Response:
    """The package as a zip file. With a ``pass`` it can be gone on with after a break (``Range``, ``If-Range``): as
    long as the job stands as it stood it is the same file."""
    text = request.args.get("pass")
    given = _of_pass(job, text) if text is not None else Pass(job, require_right(job, "exports").id, parts().clock())
    packed = packer().pack(job, given.made)
    part = part_asked(packed.bag, given.digest if text is not None else None)
    if part.begins:
        office().trail.note("packaged", job, given.person)
    elif part.goes_on:  # the download stands there already, unless nobody ever fetched its first byte
        office().trail.once("packaged", job, given.person, LASTS)
    return zip_answer(packed.bag, part, parts=text is not None)


def _of_pass(job: str, text: str) -> Pass:
    """What the pass gives leave for, as far as its person still may. A pass from before a phone of theirs was revoked
    ends with it, as their sign-ins do: it may be on that very phone."""
    given = read_pass(text)
    if given.job != job or not parts().membership.belongs(given.person, job):
        raise NotFound("job_unknown", "job", job)
    person = parts().accounts.by_id(given.person)
    if person is None or not may(person.role, "exports", office().firms.areas_of(job, person.id) is None):
        raise NotAllowed("role_may_not", "role", person.role if person else "")
    ended = parts().accounts.sign_ins_from(person.id)
    if ended is not None and spell(given.made) <= ended:
        raise NotAllowed("package_pass", "pass", text[:20])
    return given
