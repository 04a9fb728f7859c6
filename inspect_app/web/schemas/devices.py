from marshmallow import fields

from inspect_app.web.schemas.wire import JwkSchema, KeySchema, Sparse, Wire, text, token


class DeviceSchema(Wire):
    """A key to enrol, what to call the device, and the proof that it holds the key."""

    jwk = fields.Nested(JwkSchema, required=True)
    device = text(100, required=True)
    proof = token(required=True)


class EnrolledSchema(Wire):
    """The server's statement, and the key it is signed with."""

    enrolment = fields.String()
    server = fields.Nested(KeySchema)


class AgainSchema(Wire):
    """The enrolment that the server signed, and the proof that the phone holds its key."""

    enrolment = token(required=True)
    proof = token(required=True)


class ProofSchema(Wire):
    """A signed nonce."""

    proof = token(required=True)


class DeliverySchema(Wire):
    """A bearer token; ``scope`` is ``full``, or ``quarantine`` for a revoked key. ``restorations``: each time that the
    server was set back to a backup, oldest first."""

    token = fields.String()
    expires_in = fields.Integer()
    scope = fields.String()
    time = fields.String()
    restorations = fields.List(fields.String(metadata={"format": "jws"}))


class OutSchema(Sparse):
    """One thing that a phone told of and that has not arrived. ``kind``: of the entry, or of that which names the
    photo; ``at``: when it was made, by the phone's clock."""

    what = fields.String()
    job = fields.String()
    name = fields.String()
    size = fields.Integer()
    kind = fields.String()
    at = fields.String()


class UnsentSchema(Wire):
    """What of this job is still only on the phone, as it told last. ``since``: when the server first heard of the first
    of it."""

    entries = fields.Integer()
    photos = fields.Integer()
    oldest = fields.String(allow_none=True)
    told_at = fields.String()
    since = fields.String(allow_none=True)
    items = fields.List(fields.Nested(OutSchema))


class HeldKeySchema(Wire):
    """A person's key on a phone. ``person``: their id, ``who`` their name; ``unsent`` null before it ever told;
    ``late``: some of that is older than two days; ``replaced``: its person enrolled another since it was last heard
    of."""

    kid = fields.String()
    name = fields.String()
    person = fields.String()
    who = fields.String()
    enrolled_at = fields.String()
    last_contact = fields.String(allow_none=True)
    unsent = fields.Nested(UnsentSchema, allow_none=True)
    revoked_at = fields.String(allow_none=True)
    late = fields.Boolean()
    replaced = fields.Boolean()


class NameSchema(Wire):
    """What to call it."""

    name = text(200, required=True)


class RevokedSchema(Wire):
    """The server's statement that ends the key (JWS)."""

    revocation = fields.String()


class MissingSchema(Wire):
    """One's other phones that told of something which has not arrived."""

    phones = fields.List(fields.Nested(HeldKeySchema))
    time = fields.String()
