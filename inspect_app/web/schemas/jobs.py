from marshmallow import fields

from inspect_app.web.schemas.wire import PersonSchema, Wire


class MemberSchema(PersonSchema):
    """A member of a job, with the names of their keys."""

    kids = fields.List(fields.String())


class JobSchema(Wire):
    """A job; ``name`` is empty before its first entry."""

    id = fields.String()
    name = fields.String()
    people = fields.List(fields.Nested(MemberSchema))


class JobsSchema(Wire):
    """Jobs, oldest first."""

    jobs = fields.List(fields.Nested(JobSchema))
