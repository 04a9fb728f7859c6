"""Checklist definitions: which there are, and each for ever under its digest."""

from flask import Response
from flask_smorest import Blueprint

from inspect_app.errors import NotFound
from inspect_app.web.parts import parts
from inspect_app.web.schemas.definitions import ListedSchema

blueprint = Blueprint("definitions", __name__, url_prefix="/api", description="Checklist definitions")


@blueprint.route("/definitions")
@blueprint.response(200, ListedSchema(many=True))
def listing() -> list[dict[str, object]]:
    """The definitions of this release, by id and version."""
    return parts().definitions.listing()


@blueprint.route("/definitions/<digest>")
@blueprint.response(200, {"type": "object"}, description="its bytes have the digest asked by")
def one(digest: str) -> Response:
    """The compiled definition: bytes whose digest is the one asked by."""
    data = parts().archive.read(digest)
    if data is None:
        raise NotFound("definition_unknown", "digest", digest)
    headers = {"Cache-Control": "public, max-age=31536000, immutable"}
    return Response(data, mimetype="application/json", headers=headers)
