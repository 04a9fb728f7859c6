"""A QR code (ISO/IEC 18004) as the path of an SVG: drawn by the page in its own colours, never as markup from here."""

from collections.abc import Iterable

import segno
from flask_smorest import Blueprint

from inspect_app.web.bearer import person_from_request
from inspect_app.web.schemas.qr import QrSchema, TextSchema

blueprint = Blueprint("qr", __name__, url_prefix="/api", description="QR codes")

QUIET = 4  # modules of white around it, the least that the standard allows


@blueprint.route("/qr", methods=["POST"])
@blueprint.arguments(TextSchema)
@blueprint.response(200, QrSchema)
def draw(given: dict[str, str]) -> dict[str, object]:
    """The code of a text, such as a link with the address by which this browser knows the server. Nothing is kept."""
    person_from_request()
    return drawn(given["text"])


def drawn(text: str) -> dict[str, object]:
    """``{"size", "path"}``: the side in modules, quiet zone included, and an SVG path that fills the dark ones, row by
    row. A quarter of the code may be unreadable (level Q): it is read off a screen in the sun. Raises
    ``RuntimeError`` for more text than a code holds, which no link of ours has."""
    try:
        code = segno.make_qr(text, error="q")
    except segno.DataOverflowError as error:
        raise RuntimeError(f"no QR code holds {len(text)} characters") from error
    rows = list(code.matrix_iter(border=QUIET))
    return {"size": len(rows), "path": "".join(_runs(y, row) for y, row in enumerate(rows))}


def _runs(y: int, row: Iterable[int]) -> str:
    path = ""
    start: int | None = None
    for x, dark in enumerate([*row, 0]):
        if dark and start is None:
            start = x
        elif not dark and start is not None:
            path += f"M{start} {y}h{x - start}v1h{start - x}z"
            start = None
    return path
