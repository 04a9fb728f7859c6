from marshmallow import fields, validate

from inspect_app.entry.statement import SERIES
from inspect_app.web.schemas.wire import Wire, uuid


class AskedSchema(Wire):
    """Which tickets are wanted; ``have``: the highest number held, −1 for none."""

    job = uuid(required=True)
    series = fields.String(required=True, validate=validate.OneOf(SERIES))
    have = fields.Integer(required=True, strict=True, validate=validate.Range(-1, 2**53 - 1))


class TicketsSchema(Wire):
    """Signed random tickets (JWS), in order of their number."""

    tickets = fields.List(fields.String(metadata={"format": "jws"}))
    time = fields.String()
