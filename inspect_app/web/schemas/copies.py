from marshmallow import fields, validate

from inspect_app.intake.copy_outcome import STATUSES
from inspect_app.web.schemas.wire import Sparse, Wire


class SealSchema(Wire):
    """Who vouches for the list. ``state``: ``good``, ``key_revoked`` (good, by a key that was ended), or what is wrong
    with it; ``who``: whose key it is, empty where that is not known."""

    kid = fields.String()
    who = fields.String()
    state = fields.String()


class DamageSchema(Wire):
    """What is wrong with the file itself, at which byte of what was sent."""

    code = fields.String()
    at = fields.Integer()
    value = fields.String()


class CameSchema(Sparse):
    """What became of one thing. ``kind``, ``at`` and ``who`` as the copy's list tells them, if it does."""

    what = fields.String(required=True, validate=validate.OneOf(["entry", "photo"]))
    name = fields.String(required=True)
    job = fields.String(required=True)
    status = fields.String(required=True, validate=validate.OneOf(STATUSES))
    kind = fields.String()
    at = fields.String()
    who = fields.String()
    code = fields.String()
    field = fields.String()
    value = fields.String()
    message = fields.String()
    way_out = fields.String()


class BroughtSchema(Wire):
    """All of a copy, or of a part. ``copy``, ``at``: from its list, null without one; ``whole``: nothing is wrong with
    it; ``absent`` items are listed and not in what was sent."""

    copy = fields.String(allow_none=True)
    at = fields.String(allow_none=True)
    sealed = fields.Boolean()
    whole = fields.Boolean()
    seals = fields.List(fields.Nested(SealSchema))
    damage = fields.List(fields.Nested(DamageSchema))
    items = fields.List(fields.Nested(CameSchema))
