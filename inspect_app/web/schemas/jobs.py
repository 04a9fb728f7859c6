from marshmallow import fields

from inspect_app.web.schemas.wire import PersonSchema, Wire


class MemberSchema(PersonSchema):
    """A member of a job, with the names of their keys."""

    kids = fields.List(fields.String())


class JobSchema(Wire):
    """A job; ``name`` is empty before its first entry. ``partial``: whoever asks sees a part of it, and ``people`` are
    those whom they meet there; ``sight`` is another word whenever that part has changed, empty for the whole.
    ``areas``: the ids of those given to their firm, null for the whole.
    ``overdue``: how many phones hold something of it for more than two days, to who may end phones; else none."""

    id = fields.String()
    name = fields.String()
    people = fields.List(fields.Nested(MemberSchema))
    part = fields.Boolean(data_key="partial")
    sight = fields.String()
    areas = fields.List(fields.String(), allow_none=True)
    overdue = fields.Integer()


class JobsSchema(Wire):
    """Jobs, oldest first; ``restorations`` as a delivery's."""

    jobs = fields.List(fields.Nested(JobSchema))
    restorations = fields.List(fields.String(metadata={"format": "jws"}))
