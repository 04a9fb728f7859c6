"""Countersigning a report: whose signatures it bears, one more of them, and the seal's fingerprint to compare."""

import shutil
import threading
from base64 import b64decode
from collections.abc import Callable
from typing import Any
from uuid import uuid4

from flask import request
from flask_smorest import Blueprint

from inspect_app.entry.base64url import decode
from inspect_app.errors import BadInput, Busy, Conflict, NotFound, TooOften
from inspect_app.people.accounts import Person
from inspect_app.people.rights import may
from inspect_app.report.countersign import CannotCountersign
from inspect_app.report.countersigned import Signing
from inspect_app.report.seal_key import UnreadableKey
from inspect_app.web.bearer import person_from_request
from inspect_app.web.countersign_desk import countersigned
from inspect_app.web.entitled import require_right, require_whole
from inspect_app.web.office_desk import office
from inspect_app.web.parts import parts
from inspect_app.web.reports_desk import maker
from inspect_app.web.schemas.countersign import CountersignSchema, SealPrintSchema, SigningSchema

blueprint = Blueprint("countersign", __name__, url_prefix="/api", description="Seal and countersignatures")

GROWS = 4 * 1024 * 1024  # bytes that a countersignature by another program may add
OPENING = threading.BoundedSemaphore(2)  # keys at a time: one may take long to open, and each keeps a thread
LOOKING = threading.BoundedSemaphore(2)  # files from elsewhere at a time, for the same reason
AGAIN = 20  # seconds
PDF = "application/pdf"
BODY = {"required": True, "content": {PDF: {"schema": {"type": "string", "format": "binary"}}}}


@blueprint.route("/seal")
@blueprint.response(200, SealPrintSchema)
def seal() -> dict[str, object]:
    """What reports are sealed with, to be read out and compared."""
    person_from_request()
    try:
        key = maker().key()
    except UnreadableKey as reason:
        raise Conflict(f"seal_{reason.reason}", "SEAMWALK_SEAL_PKCS12", str(reason.path)) from None
    return {"name": key.name, "fingerprint": key.fingerprint, "until": key.until, "authority": bool(maker().authority),
            "server": decode(parts().server_key.kid, "kid").hex()}  # fmt: skip


@blueprint.route("/jobs/<job>/reports/<int:number>/signing")
@blueprint.response(200, SigningSchema)
def signatures(job: str, number: int) -> dict[str, object]:
    """Whose signatures the report bears."""
    person = require_whole(job)
    return _told(number, person, lambda: countersigned().told(job, number))


@blueprint.route("/jobs/<job>/reports/<int:number>/signing", methods=["POST"])
@blueprint.arguments(CountersignSchema)
@blueprint.response(201, SigningSchema)
def sign(given: dict[str, Any], job: str, number: int) -> dict[str, object]:
    """Countersign by a key that is handed over for this alone."""
    person = require_right(job, "countersigns")
    if not OPENING.acquire(blocking=False):
        raise TooOften("countersign_busy", "pkcs12", AGAIN)
    try:
        key = countersigned().opens(b64decode(given["pkcs12"], validate=True), given["passphrase"])
    except (UnreadableKey, ValueError) as reason:  # no base64, or letters that are none of it
        code = reason.reason if isinstance(reason, UnreadableKey) else "not_pkcs12"
        raise BadInput(f"countersign_{code}", "pkcs12") from None
    finally:
        OPENING.release()
    done = _told(number, person, lambda: countersigned().sign(job, number, key, person.id, given["words"]))
    office().trail.note("countersigned", job, person.id, number=number, name=key.name)
    return done


@blueprint.route("/jobs/<job>/reports/<int:number>/signed", methods=["POST"])
@blueprint.doc(requestBody=BODY)
@blueprint.response(201, SigningSchema)
def take(job: str, number: int) -> dict[str, object]:
    """Take the report as another program countersigned it: whoever keeps their key on a card never hands it over."""
    person = require_right(job, "countersigns")
    shelved = maker().shelf.numbered(job, number)
    if shelved is None or shelved.pdf is None or not shelved.pdf.is_file():
        raise NotFound("report_number_unknown", "number", number)
    request.max_content_length = shelved.pdf.stat().st_size + GROWS
    given = maker().shelf.work(job) / f"{uuid4().hex}.part"
    if not LOOKING.acquire(blocking=False):
        raise Busy("countersign_looking", "report", AGAIN)
    try:
        with open(given, "xb") as file:
            shutil.copyfileobj(request.stream, file)
        done = _told(number, person, lambda: countersigned().take(job, number, given, person.id))
    finally:
        LOOKING.release()
        given.unlink(missing_ok=True)
    signatures: Any = done["signatures"]
    office().trail.note("countersigned", job, person.id, number=number, name=signatures[-1]["name"])
    return done


def _told(number: int, person: Person, ask: Callable[[], Signing | None]) -> dict[str, object]:
    """Raises ``NotFound``; ``Conflict`` for a report that cannot be countersigned; ``BadInput`` for what was given."""
    try:
        found = ask()
    except CannotCountersign as cannot:
        raised = BadInput if cannot.code in ("unfit", "other_file", "takes_long") else Conflict
        raise raised(f"countersign_{cannot.code}", "report", cannot.value) from None
    if found is None:
        raise NotFound("report_number_unknown", "number", number)
    told = [one | {"holds": bool(one["intact"] and one["allowed"] and one["container"] is not False)}
            for one in found.signatures]  # fmt: skip
    return found._asdict() | {"signatures": told, "may": may(person.role, "countersigns")}
