"""Photos: receipts, originals and small copies for the people of the job that holds them.

Bytes that strangers handed over are served as what they are by
content, or as plain bytes to download; a browser is never left to guess.
"""

from flask import Response, jsonify, request, send_file
from flask_smorest import Blueprint

from inspect_app.entry.picture_type import type_of
from inspect_app.errors import BadInput, Conflict, NotFound
from inspect_app.intake.uploads_metadata import JOB, SHA256
from inspect_app.store.vault_copies import SIZES, NoCopy
from inspect_app.web.parts import parts
from inspect_app.web.photos_desk import desk
from inspect_app.web.schemas.photos import CopySchema, HeldSchema, PhotoReceiptSchema

ENDINGS = {"image/jpeg": "jpg", "image/png": "png", "image/webp": "webp", "image/heic": "heic"}
SAFE = {
    "X-Content-Type-Options": "nosniff",
    "Content-Security-Policy": "default-src 'none'; sandbox",
    "Cross-Origin-Resource-Policy": "same-origin",
    # The bytes under a hash never change; who may see them does, so no shared cache keeps them.
    "Cache-Control": "private, max-age=604800, immutable",
    "Vary": "Authorization, Cookie",
}

blueprint = Blueprint("photos", __name__, description="Photos held")


@blueprint.route("/api/photos/receipt")
@blueprint.doc(parameters=[{"in": "query", "schema": HeldSchema}], security=[{"device": []}])
@blueprint.response(200, PhotoReceiptSchema)
def receipt() -> Response:
    """The receipt of a photo, once more. 409 for one that is kept apart: it is safe, and waits for a decision."""
    job, sha256 = _job(), request.args.get("sha256", "")
    device = desk().delivers(job)
    given = desk().uploads.receipt(device.kid, job, sha256) if SHA256.fullmatch(sha256) else None
    if given is None:
        kept = parts().quarantine.photo(job, sha256)
        if kept is not None and kept.kid == device.kid:
            raise Conflict("photo_kept_apart", "sha256", sha256)
        raise NotFound("photo_receipt_none", "sha256", sha256)
    return jsonify(receipt=given)


@blueprint.route("/photos/<sha256>")
@blueprint.doc(parameters=[{"in": "query", "schema": CopySchema}], security=[{"device": []}, {"person": []}])
@blueprint.response(200, {"type": "string", "format": "binary"}, content_type="image/*")
def photo(sha256: str) -> Response:
    """The original bytes, or with ``size`` (1600 or 320) a JPEG copy without EXIF."""
    job = _job()
    person = desk().member(job)
    # A hash that another job holds, or that others of this one see, is as unknown here as one that nobody holds.
    if not SHA256.fullmatch(sha256) or not desk().receipts.photo_receipt(job, sha256) or not desk().scope.shows_photo(
        job, person.id, sha256
    ):
        raise NotFound("photo_unknown", "sha256", sha256)
    try:
        return copy(sha256, request.args["size"]) if "size" in request.args else original(sha256)
    except FileNotFoundError:
        raise NotFound("photo_lost", "sha256", sha256) from None


def _job() -> str:
    job = request.args.get("job", "")
    if not JOB.fullmatch(job):
        raise NotFound("job_unknown", "job", job)
    return job


def original(sha256: str) -> Response:
    path = desk().vault.path(sha256).resolve()
    with path.open("rb") as file:
        kind = type_of(file.read(32))
    name = f"{sha256}.{ENDINGS[kind]}" if kind else f"{sha256}.bin"
    response = send_file(
        path, mimetype=kind or "application/octet-stream", as_attachment=kind is None, download_name=name,
        etag=sha256,
    )  # fmt: skip
    response.headers.update(SAFE)
    return response


def copy(sha256: str, size: str) -> Response:
    if size not in map(str, SIZES):
        raise BadInput("photo_size", "size", size)
    try:
        path = desk().copies.path(sha256, int(size))
    except NoCopy as none:
        raise NotFound(f"photo_{none.reason}", "sha256", sha256) from none
    response = send_file(path.resolve(), mimetype="image/jpeg", etag=f"{sha256}-{size}")
    response.headers.update(SAFE)
    return response
