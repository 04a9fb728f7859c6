"""The tus 1.0.0 routes: read the headers, ask ``intake.uploads``, say where the upload stands."""

from typing import Any

from flask import Response, jsonify, request
from flask_smorest import Blueprint

from inspect_app.intake.uploads import Progress
from inspect_app.intake.uploads_metadata import ALGORITHMS, read_checksum, read_count, read_metadata
from inspect_app.intake.uploads_refused import UploadRefused
from inspect_app.web.language import language
from inspect_app.web.photos_desk import desk
from inspect_app.web.schemas.photos import AppendSchema, CreateSchema, OverrideSchema, TusSchema

VERSION = "1.0.0"
EXTENSIONS = "creation,creation-with-upload,checksum,termination"
BYTES = "application/offset+octet-stream"
RECEIPT = "Seamwalk-Receipt"
STATUS = {  # all others are 400
    "upload_unknown": 404, "upload_gone": 410, "upload_offset_wrong": 409, "upload_overtaken": 409,
    "upload_version": 412, "upload_beyond_length": 413, "upload_too_large": 413, "upload_content_type": 415,
    "upload_too_many": 429, "upload_too_many_bytes": 429, "upload_kept_apart_full": 429,
    "upload_checksum_wrong": 460, "upload_hash_wrong": 460,
}  # fmt: skip

uploads = Blueprint("uploads", __name__, url_prefix="/api/photos", description="Photos in pieces (tus 1.0.0)")
AT = "/<upload>"
SHOWN = {
    "Upload-Offset": {"description": "bytes the server holds on its disk", "schema": {"type": "integer"}},
    RECEIPT: {"description": "the server's receipt (JWS), once the photo is whole", "schema": {"type": "string"}},
}
PIECE = {"content": {BYTES: {"schema": {"type": "string", "format": "binary"}}}}


def told(schema: type[TusSchema], **body: Any) -> dict[str, Any]:
    """What the API's document says of a route that reads its headers itself."""
    return {"parameters": [{"in": "header", "schema": schema}], "security": [{"device": []}]} | body


@uploads.before_request
def speak_one_version() -> None:
    if request.method not in ("OPTIONS", "GET") and request.headers.get("Tus-Resumable") != VERSION:
        raise UploadRefused("upload_version", "Tus-Resumable", request.headers.get("Tus-Resumable"))


@uploads.after_request
def say_the_version(response: Response) -> Response:
    response.headers["Tus-Resumable"] = VERSION
    response.headers["Cache-Control"] = "no-store"
    return response


@uploads.errorhandler(UploadRefused)
def refused(error: UploadRefused) -> Response:
    say = desk().words.say
    body: dict[str, Any] = {
        "code": error.code, "field": error.field, "value": error.value,
        "message": say(f"error.{error.code}.message", language(), error.facts),
        "way_out": say(f"error.{error.code}.way_out", language(), error.facts), "facts": error.facts,
    }  # fmt: skip
    response = jsonify(error=body)
    response.status_code = STATUS.get(error.code, 400)
    response.headers["Tus-Version"] = VERSION
    return response


@uploads.route("", methods=["OPTIONS"], provide_automatic_options=False)
@uploads.route(AT, methods=["OPTIONS"], provide_automatic_options=False)
@uploads.response(204)
def options(upload: str = "") -> Response:
    """What of tus is spoken here, and the largest photo taken."""
    return Response(status=204, headers={
        "Tus-Version": VERSION, "Tus-Extension": EXTENSIONS, "Tus-Max-Size": str(desk().uploads.caps.photo),
        "Tus-Checksum-Algorithm": ",".join(ALGORITHMS),
    })  # fmt: skip


@uploads.route("", methods=["POST"])
@uploads.doc(**told(CreateSchema, requestBody=PIECE))
@uploads.response(201, headers=SHOWN | {"Location": {"schema": {"type": "string"}}})
def create() -> Response:
    """Begin an upload, with its first bytes or without. A photo that is held already is answered with its receipt."""
    declared = read_metadata(request.headers.get("Upload-Metadata"))
    length = read_count("Upload-Length", request.headers.get("Upload-Length"))
    device = desk().delivers(declared.job)
    progress = desk().uploads.create(device.kid, length, declared)
    if request.mimetype == BYTES and progress.offset == 0 and not progress.receipt:
        progress = _append(device.kid, progress.id, 0)
    response = _stands(progress, 201)
    response.headers["Location"] = f"/api/photos/{progress.id}"
    return response


@uploads.route(AT, methods=["HEAD"])
@uploads.doc(**told(TusSchema))
@uploads.response(200, headers=SHOWN)
def head(upload: str) -> Response:
    """How many bytes of it the server holds."""
    progress = desk().uploads.head(desk().device().kid, upload)
    response = _stands(progress, 200)
    response.headers["Upload-Length"] = str(progress.length)
    return response


@uploads.route(AT, methods=["PATCH"])
@uploads.doc(**told(AppendSchema, requestBody=PIECE))
@uploads.response(204, headers=SHOWN)
def patch(upload: str) -> Response:
    """The next bytes. The last ones are answered with the receipt."""
    if request.mimetype != BYTES:
        raise UploadRefused("upload_content_type", "Content-Type", request.content_type)
    offset = read_count("Upload-Offset", request.headers.get("Upload-Offset"))
    return _stands(_append(desk().device().kid, upload, offset), 204)


@uploads.route(AT, methods=["DELETE"])
@uploads.doc(**told(TusSchema))
@uploads.response(204)
def delete(upload: str) -> Response:
    """Give an unfinished upload up."""
    desk().uploads.terminate(desk().device().kid, upload)
    return Response(status=204)


@uploads.route(AT, methods=["POST"])
@uploads.doc(**told(OverrideSchema, requestBody=PIECE))
@uploads.response(204, headers=SHOWN)
def override(upload: str) -> Response:
    """For networks that let only GET and POST pass (tus 1.0.0, X-HTTP-Method-Override)."""
    method = request.headers.get("X-HTTP-Method-Override", "")
    meant = {"PATCH": patch, "DELETE": delete, "HEAD": head}.get(method)
    if meant is None:
        raise UploadRefused("upload_method", "X-HTTP-Method-Override", method)
    return meant(upload)


def _append(device: str, upload: str, offset: int) -> Progress:
    # The length that was declared is the limit here, block by block; the app's own is for other bodies.
    request.max_content_length = desk().uploads.caps.photo * 2
    checksum = read_checksum(request.headers.get("Upload-Checksum"))
    return desk().uploads.patch(device, upload, offset, request.stream, checksum, request.content_length)


def _stands(progress: Progress, status: int) -> Response:
    response = Response(status=status, headers={"Upload-Offset": str(progress.offset)})
    if progress.receipt:
        response.headers[RECEIPT] = progress.receipt
    return response
