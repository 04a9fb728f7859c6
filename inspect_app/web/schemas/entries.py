from marshmallow import fields, validate

from inspect_app.web.schemas.wire import Sparse, Wire, uuid


class BatchSchema(Wire):
    """At most 100 entries (JWS). Members that are not text are refused each on its own."""

    entries = fields.List(fields.Raw(allow_none=True, metadata={"type": "string"}), required=True)


class AnswerSchema(Sparse):
    """What became of one entry."""

    digest = fields.String(required=True)
    status = fields.String(
        required=True, validate=validate.OneOf(["accepted", "duplicate", "quarantined", "refused"])
    )
    receipt = fields.String()
    code = fields.String()
    field = fields.String()
    value = fields.String()
    message = fields.String()
    way_out = fields.String()


class AnswersSchema(Wire):
    """One answer for each entry, in order."""

    answers = fields.List(fields.Nested(AnswerSchema))
    time = fields.String()


class CursorSchema(Wire):
    """Where to go on from. ``job``: only that one, as a phone needs that has just joined it."""

    after = fields.Integer(load_default=0, validate=validate.Range(0, 2**53 - 1))
    limit = fields.Integer(load_default=200, validate=validate.Range(1, 500))
    job = uuid(load_default=None)


class ReceivedSchema(Wire):
    """An entry in the server's order."""

    seq = fields.Integer()
    entry = fields.String()
    receipt = fields.String()


class PageSchema(Wire):
    """Some entries; ``next`` is the cursor for the next page."""

    entries = fields.List(fields.Nested(ReceivedSchema))
    next = fields.Integer()
    more = fields.Boolean()
