from marshmallow import fields, validate

from inspect_app.people.invitations import LONGEST
from inspect_app.people.roles import ROLES
from inspect_app.web.schemas.wire import PersonSchema, Wire, text, uuid


class InviteSchema(Wire):
    """Whom to invite: to which firm of the job, as what, for how many days."""

    firm = uuid(required=True)
    role = fields.String(required=True, validate=validate.OneOf(ROLES))
    days = fields.Integer(strict=True, load_default=7, validate=validate.Range(1, LONGEST))


class MadeSchema(Wire):
    """A link, told once: ``url`` below the server's address."""

    id = fields.String()
    url = fields.String()
    expires = fields.String()


class InvitedSchema(Wire):
    """What an invitation is for. ``firm``: its name."""

    job_name = fields.String()
    firm = fields.String()
    role = fields.String()
    expires = fields.String()


class JoinSchema(Wire):
    """A new account; all three left out by somebody who is signed in already."""

    login = text(200, load_default=None, allow_none=True)
    name = text(200, load_default=None, allow_none=True)
    password = text(1000, load_default=None, allow_none=True, load_only=True)


class JoinedSchema(Wire):
    """Joined, and signed in."""

    job = fields.String()
    person = fields.Nested(PersonSchema)
    csrf = fields.String()


class DoneSchema(Wire):
    """Done."""

    time = fields.String()
