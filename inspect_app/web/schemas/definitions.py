from marshmallow import fields

from inspect_app.web.schemas.wire import Wire


class ListedSchema(Wire):
    """A released version of a definition."""

    id = fields.String()
    version = fields.Integer()
    digest = fields.String()
