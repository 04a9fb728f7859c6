"""A job's trends, as data or as a table for a spreadsheet; the phone computes the same from its own record."""

import json
from typing import Any

from flask import Response
from flask_smorest import Blueprint

from inspect_app.errors import BadInput
from inspect_app.record.trends import trends as trends_of
from inspect_app.rules.refused import Refused
from inspect_app.web.entitled import require_right, require_whole
from inspect_app.web.language import language
from inspect_app.web.office_desk import office
from inspect_app.web.parts import parts
from inspect_app.web.schemas.trends import NarrowSchema, TrendsSchema
from inspect_app.web.spreadsheet import written
from inspect_app.web.trends_table import Names, Table

blueprint = Blueprint("trends", __name__, url_prefix="/api", description="Trends")


@blueprint.route("/jobs/<job>/trends")
@blueprint.arguments(NarrowSchema, location="query")
@blueprint.response(200, TrendsSchema, description="with format=csv a table, text/csv")
def trends(asked: dict[str, Any], job: str) -> dict[str, object] | Response:
    """What fails on a job, how often, whether the looks agree, how long findings stay open; narrowed as asked."""
    require_whole(job)
    person = require_right(job, "exports")
    record = parts().records.record(job)
    wanted = {name: value for name, value in asked.items() if name not in ("first", "last", "format")}
    try:
        told = trends_of(record, wanted | {"from": asked["first"], "to": asked["last"]})
    except Refused as refused:
        raise BadInput(refused.code, refused.field, refused.value) from refused
    office().trail.note("exported", job, person.id, of="trends", format=asked["format"])
    names = _names(record)
    if asked["format"] == "json":
        return {"job": job, "names": names, **told}
    response = Response(written(Table(told, names, parts().words, language()).rows()), mimetype="text/csv")
    response.headers["Content-Disposition"] = f'attachment; filename="seamwalk-trends-{job[:8]}.csv"'
    return response


def _names(record: dict[str, Any]) -> Names:
    """``{"area" | "assembly" | "item": {key: name}}``; an item's is its question."""
    names: Names = {kind: {key: str(thing.get("name", "")) for key, thing in record[things].items()}
                    for kind, things in (("area", "areas"), ("assembly", "assemblies"))}  # fmt: skip
    pinned = {answer["definition"] for answer in record["answers"].values()}
    pinned |= set(((record["job"] or {}).get("definitions") or {}).values())
    names["item"] = {}
    for digest in sorted(pinned):
        data = parts().archive.read(digest)
        definition = json.loads(data) if data else {"items": []}
        for item in definition["items"]:
            names["item"][f"{definition['id']}/{item['id']}"] = item["question"][language()]
    return names
