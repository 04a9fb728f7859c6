from marshmallow import fields, validate

from inspect_app.people.viewer_links import LONGEST
from inspect_app.web.schemas.wire import Wire, text


class NewLinkSchema(Wire):
    """For whom, and for how many days."""

    name = text(200, required=True)
    days = fields.Integer(strict=True, load_default=30, validate=validate.Range(1, LONGEST))
