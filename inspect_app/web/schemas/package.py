from marshmallow import fields

from inspect_app.web.schemas.wire import Wire


class PackageSchema(Wire):
    """``name`` of the package; ``bytes`` of its zip file; ``counts`` as in its ``package.json``; ``url``: where to
    fetch it until ``ends``."""

    name = fields.String()
    bytes = fields.Integer()
    counts = fields.Dict(keys=fields.String(), values=fields.Integer())
    url = fields.String()
    ends = fields.DateTime()
