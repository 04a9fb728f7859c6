from marshmallow import fields, validate

from inspect_app.web.schemas.wire import Wire


class BeforeSchema(Wire):
    """Where to go on: steps before this ``seq``."""

    before = fields.Integer(load_default=None, validate=validate.Range(1, 2**53 - 1))


class StepSchema(Wire):
    """One step. ``who``: a name, null where only a link's holder did it; ``person``: their id."""

    seq = fields.Integer()
    at = fields.String()
    who = fields.String(allow_none=True)
    person = fields.String(allow_none=True)
    what = fields.String()
    facts = fields.Dict()
