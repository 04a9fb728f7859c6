"""A job's reports: the list, asking for one, how far it is, and each as a sealed PDF."""

from typing import Any

from flask import Response, send_file
from flask_smorest import Blueprint

from inspect_app.errors import BadInput, NotFound, TooOften
from inspect_app.record.scope import narrowed, scope_of
from inspect_app.report.asked import Asked
from inspect_app.report.asks import Ask, Full
from inspect_app.report.shelf import Shelved
from inspect_app.report.shelf_list import listed
from inspect_app.rules.refused import Refused
from inspect_app.web.entitled import require_whole
from inspect_app.web.office_desk import office
from inspect_app.web.parts import parts
from inspect_app.web.reports_desk import asks, begin, maker
from inspect_app.web.schemas.reports import ReportAskedSchema, ReportProgressSchema, ReportsSchema

blueprint = Blueprint("reports", __name__, url_prefix="/api", description="Reports")
AGAIN = 30  # seconds: as long as a large report takes


@blueprint.route("/jobs/<job>/reports")
@blueprint.response(200, ReportsSchema)
def every(job: str) -> dict[str, object]:
    """The job's reports, superseded ones too, and what is being made."""
    require_whole(job)
    shelf = maker().shelf
    newest = shelf.newest(job)
    return {
        "reports": listed(shelf.ready(job)), "asked": [_told(one) for one in asks().of(job)],
        "state": newest.state if newest else "none",
    }  # fmt: skip


@blueprint.route("/jobs/<job>/reports", methods=["POST"])
@blueprint.arguments(ReportAskedSchema)
@blueprint.response(202, ReportProgressSchema)
def ask(given: dict[str, Any], job: str) -> dict[str, object]:
    """Have a report made. It is made in the background; ask its progress by ``id``."""
    person = require_whole(job)
    try:
        scope = scope_of(given["kind"], given)
        narrowed(parts().records.record(job), scope)
    except Refused as refused:
        raise BadInput(refused.code, refused.field, refused.value) from None
    try:
        asked = asks().add(job, person.id, Asked(scope, given["paper"], given["language"], given["units"]))
    except Full as full:
        raise TooOften(full.code, "reports", full.seconds or AGAIN) from None
    office().trail.note("report_asked", job, person.id, kind=scope["kind"])
    begin(asked)
    return _told(asked)


@blueprint.route("/jobs/<job>/reports/asked/<int:identity>")
@blueprint.response(200, ReportProgressSchema)
def progress(job: str, identity: int) -> dict[str, object]:
    """How far it is."""
    require_whole(job)
    asked = asks().find(job, identity)
    if asked is None:
        raise NotFound("report_not_asked", "report", identity)
    return _told(asked)


@blueprint.route("/jobs/<job>/reports/<int:number>.pdf")
@blueprint.response(200, {"type": "string", "format": "binary"}, content_type="application/pdf")
def pdf(job: str, number: int) -> Response:
    """The sealed PDF of that number, superseded or not."""
    person = require_whole(job)
    file = sent(job, maker().shelf.numbered(job, number), number)
    office().trail.note("report_seen", job, person.id, number=number)
    return file


def sent(job: str, shelved: Shelved | None, number: int | None = None) -> Response:
    """The file of a report. ``NotFound`` where there is none of that number, or where its file is gone."""
    if shelved is None:
        raise NotFound("report_none" if number is None else "report_number_unknown", "job", number or job)
    if shelved.pdf is None or not shelved.pdf.is_file():
        raise NotFound("report_lost", "report", shelved.number)
    # Countersigned, a report keeps its number and grows: its size tells the two apart.
    response = send_file(shelved.pdf.resolve(), mimetype="application/pdf", download_name=shelved.pdf.name,
                         etag=f"{job}-{shelved.number}-{shelved.pdf.stat().st_size}")  # fmt: skip
    response.headers["Cache-Control"] = "private, no-cache"
    response.headers["X-Content-Type-Options"] = "nosniff"
    return response


def _told(one: Ask) -> dict[str, object]:
    return {"kind": one.asked.kind, "scope": one.asked.scope} | {
        name: getattr(one, name) for name in ("id", "state", "stage", "share", "number", "trouble", "asked_at")
    }
