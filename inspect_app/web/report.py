"""The report of the job as a whole: how far it is, and the sealed PDF of the one that holds."""

import json

from flask import Response
from flask_smorest import Blueprint
from marshmallow import fields

from inspect_app.report.shelf import Shelved
from inspect_app.web.entitled import require_whole
from inspect_app.web.office_desk import office
from inspect_app.web.reports import sent
from inspect_app.web.reports_desk import maker
from inspect_app.web.schemas.wire import Wire

blueprint = Blueprint("report", __name__, url_prefix="/api", description="Reports")


class ReportSchema(Wire):
    """``state`` of the newest; ``number`` and ``missing`` of the one that is ready."""

    state = fields.String()
    number = fields.Integer(allow_none=True)
    missing = fields.List(fields.Dict())


@blueprint.route("/jobs/<job>/report")
@blueprint.response(200, ReportSchema)
def report(job: str) -> dict[str, object]:
    """How far the job's report is. ``missing``: ``{"code", "facts", "blocks"}`` each."""
    require_whole(job)
    newest, ready = maker().shelf.newest(job), maker().shelf.newest_ready(job)
    return {
        "state": newest.state if newest else "none",
        "number": ready.number if ready else None,
        "missing": _missing(ready),
    }


@blueprint.route("/jobs/<job>/report.pdf")
@blueprint.response(200, {"type": "string", "format": "binary"}, content_type="application/pdf")
def pdf(job: str) -> Response:
    """The sealed PDF of the newest report that is ready."""
    person = require_whole(job)
    ready = maker().shelf.newest_ready(job)
    file = sent(job, ready)
    office().trail.note("report_seen", job, person.id, number=ready.number if ready else None)
    return file


def _missing(ready: Shelved | None) -> list[dict[str, object]]:
    if ready is None or ready.contents_file is None or not ready.contents_file.is_file():
        return []
    found: list[dict[str, object]] = json.loads(ready.contents_file.read_bytes())["missing"]
    return found
