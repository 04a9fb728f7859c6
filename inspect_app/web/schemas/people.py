from marshmallow import fields, validate

from inspect_app.people.firms import MOST_AREAS, SIDES
from inspect_app.web.schemas.wire import PersonSchema, Wire, text, uuid


class NewFirmSchema(Wire):
    """A firm to let take part. ``areas``: the only ones its people see; null for the whole job."""

    name = text(200, required=True)
    side = fields.String(required=True, validate=validate.OneOf(SIDES))
    areas = fields.List(uuid(), load_default=None, allow_none=True, validate=validate.Length(max=MOST_AREAS))


class FirmSchema(Wire):
    """A firm of a job."""

    id = fields.String()
    name = fields.String()
    side = fields.String()
    areas = fields.List(fields.String(), allow_none=True)


class FirmPeopleSchema(FirmSchema):
    """With its people there. Members of no firm stand under a firm whose ``id``, ``name`` and ``side`` are empty."""

    people = fields.List(fields.Nested(PersonSchema))


class InvitationSchema(Wire):
    """``firm``: its id; ``state``: ``open`` ``used`` ``expired`` ``withdrawn``."""

    id = fields.String()
    firm = fields.String()
    role = fields.String()
    by = fields.String()
    made_at = fields.String()
    expires = fields.String()
    state = fields.String()


class LinkSchema(Wire):
    """A reviewer's link; ``seen``: how often its page was opened."""

    id = fields.String()
    name = fields.String()
    by = fields.String()
    expires = fields.String()
    state = fields.String()
    seen = fields.Integer()


class RightsSchema(Wire):
    """What whoever asks may do here: ``records`` the kinds of entry, the others yes or no (``people/rights.py``)."""

    role = fields.String()
    sees = fields.String()
    areas = fields.List(fields.String(), allow_none=True)
    records = fields.List(fields.String())
    releases = fields.Boolean()
    rechecks = fields.Boolean()
    closes = fields.Boolean()
    concedes = fields.Boolean()
    signs = fields.Boolean()
    admits = fields.Boolean()
    exports = fields.Boolean()
    invites = fields.Boolean()
    links = fields.Boolean()
    revokes = fields.Boolean()
    reads_trail = fields.Boolean()
    imports = fields.Boolean()


class PeopleSchema(Wire):
    """Who takes part in a job. Invitations and links are told to those who may make them."""

    firms = fields.List(fields.Nested(FirmPeopleSchema))
    invitations = fields.List(fields.Nested(InvitationSchema))
    links = fields.List(fields.Nested(LinkSchema))
    rights = fields.Nested(RightsSchema)
