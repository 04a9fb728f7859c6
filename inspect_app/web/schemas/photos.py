"""What tus 1.0.0 carries in headers, and what of a photo is asked for in the address. For the API's document: the
headers themselves are read in ``intake.uploads_metadata``, whose refusals say more than a schema can."""

from typing import Any

from marshmallow import fields

from inspect_app.web.schemas.wire import Wire


def _header(name: str, description: str, **options: Any) -> fields.String:
    return fields.String(data_key=name, metadata={"description": description}, **options)


class TusSchema(Wire):
    """Every request of an upload."""

    version = _header("Tus-Resumable", "1.0.0", required=True)


class CreateSchema(TusSchema):
    """A new upload."""

    length = fields.Integer(required=True, data_key="Upload-Length", metadata={"description": "bytes of the photo"})
    metadata = _header(
        "Upload-Metadata", "`job`, `sha256` (hexadecimal) and `type`, each with its value in base64", required=True
    )


class AppendSchema(TusSchema):
    """More bytes of one."""

    offset = fields.Integer(
        required=True, data_key="Upload-Offset", metadata={"description": "bytes the server holds"}
    )
    checksum = _header("Upload-Checksum", "`sha256` or `sha1`, a blank, the base64 of these bytes' digest")


class OverrideSchema(TusSchema):
    """For networks that let only GET and POST pass."""

    method = _header("X-HTTP-Method-Override", "PATCH, DELETE or HEAD; then that method's own headers", required=True)


class HeldSchema(Wire):
    """A photo held for a job."""

    job = fields.String(required=True)
    sha256 = fields.String(required=True)


class CopySchema(Wire):
    """A photo of a job; ``size`` asks for a JPEG copy with that many pixels on its longer side, without EXIF."""

    job = fields.String(required=True)
    size = fields.Integer()


class PhotoReceiptSchema(Wire):
    """The server's signed word that it holds the photo (JWS)."""

    receipt = fields.String()
