from marshmallow import fields

from inspect_app.web.schemas.wire import Wire


class FactsSchema(Wire):
    """An error's facts and words."""

    code = fields.String(required=True)
    field = fields.String(required=True)
    value = fields.String(required=True)
    message = fields.String(required=True)
    way_out = fields.String(required=True)


class ErrorSchema(Wire):
    """Every error."""

    error = fields.Nested(FactsSchema, required=True)
