from marshmallow import fields, validate

from inspect_app.web.schemas.wire import Wire, text, uuid


class ItemSchema(Wire):
    """One thing that is still only on the phone. ``kind``: of the entry, or of that which names the photo; ``at``: when
    it was made, by the phone's clock."""

    what = fields.String(required=True, validate=validate.OneOf(["entry", "photo"]))
    job = uuid(required=True)
    name = text(64, required=True)
    size = fields.Integer(required=True, strict=True, validate=validate.Range(0, 2**53 - 1))
    kind = text(40)
    at = text(40)


class ManifestSchema(Wire):
    """Everything that is still only on the phone, and when the oldest was made. ``more``: beside what this key told
    before, so that a long list can go in parts."""

    items = fields.List(fields.Nested(ItemSchema), required=True)
    oldest = text(40, load_default=None, allow_none=True)
    more = fields.Boolean(load_default=False)


class HeardSchema(Wire):
    """Heard."""

    time = fields.String()
