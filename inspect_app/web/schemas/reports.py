from marshmallow import fields, validate

from inspect_app.record.scope import FIELDS
from inspect_app.web.schemas.wire import Wire, text


class ReportQuantitySchema(Wire):
    """A quantity: a decimal string and a unit."""

    value = text(30, required=True)
    unit = text(10, required=True)


class ReportAskedSchema(Wire):
    """What is wanted: ``kind``, and what that kind names: ``walk``; ``lot`` of an audit; ``area``, ``panel``,
    ``from_low_end`` and ``radius`` of a place. Without a form the job's own."""

    kind = text(20, load_default="closeout")
    walk = text(200)
    lot = text(200)
    area = text(200)
    panel = fields.Integer(strict=True)
    from_low_end = fields.Nested(ReportQuantitySchema)
    radius = fields.Nested(ReportQuantitySchema)
    paper = fields.String(validate=validate.OneOf(["letter", "a4"]), allow_none=True, load_default=None)
    language = fields.String(validate=validate.OneOf(["en", "es"]), allow_none=True, load_default=None)
    units = fields.String(validate=validate.OneOf(["US", "SI"]), allow_none=True, load_default=None)


class ReportProgressSchema(Wire):
    """``state``: ``waiting`` ``making`` ``ready`` ``same`` (nothing had changed since ``number``) ``failed``, then with
    ``trouble``, a code; ``stage``: ``waiting`` ``gather`` ``decide`` ``count`` ``lay_out`` ``seal``; ``share``:
    0 to 1."""

    id = fields.Integer()
    kind = fields.String()
    scope = fields.Dict()
    state = fields.String()
    stage = fields.String()
    share = fields.Float()
    number = fields.Integer(allow_none=True)
    trouble = fields.String(allow_none=True)
    asked_at = fields.String()


class ListedReportSchema(Wire):
    """A report that is ready. ``superseded_by``: the number that took its place, null where it holds; ``missing``: how
    many things are; ``about``: what its scope is about; ``size``: bytes, null where the file is gone."""

    number = fields.Integer()
    kind = fields.String()
    scope = fields.Dict()
    about = fields.Dict(allow_none=True)
    issued = fields.String(allow_none=True)
    issuer = fields.String(allow_none=True)
    language = fields.String(allow_none=True)
    paper = fields.String(allow_none=True)
    units = fields.String(allow_none=True)
    final = fields.Boolean(allow_none=True)
    missing = fields.Integer()
    supersedes = fields.Integer(allow_none=True)
    superseded_by = fields.Integer(allow_none=True)
    contents = fields.String(allow_none=True)
    size = fields.Integer(allow_none=True)


class ReportsSchema(Wire):
    """Every report that is ready, the newest first, and what is asked for and waits, is being made or failed;
    ``state`` of the newest of the whole job: ``none`` ``making`` ``ready`` ``failed``; ``kinds``: what can be asked."""

    state = fields.String()
    reports = fields.List(fields.Nested(ListedReportSchema))
    asked = fields.List(fields.Nested(ReportProgressSchema))
    kinds = fields.Constant(list(FIELDS))
