from marshmallow import fields

from inspect_app.web.schemas.wire import Wire


class KeptApartSchema(Wire):
    """An entry kept apart: what it says it is, whose, when it was said and when it came, and why it is not in the
    record. ``by``: the person's id, ``who`` their name; ``photos``: how many it names, ``held`` how many are here."""

    digest = fields.String()
    kind = fields.String()
    subject = fields.String()
    by = fields.String()
    who = fields.String()
    at = fields.String()
    received_at = fields.String()
    reason = fields.String()
    photos = fields.Integer()
    held = fields.Integer()
