from marshmallow import fields

from inspect_app.web.schemas.wire import JwkSchema, KeySchema, Wire, text, token


class DeviceSchema(Wire):
    """A key to enrol, what to call the device, and the proof that it holds the key."""

    jwk = fields.Nested(JwkSchema, required=True)
    device = text(100, required=True)
    proof = token(required=True)


class EnrolledSchema(Wire):
    """The server's statement, and the key it is signed with."""

    enrolment = fields.String()
    server = fields.Nested(KeySchema)


class ProofSchema(Wire):
    """A signed nonce."""

    proof = token(required=True)


class DeliverySchema(Wire):
    """A bearer token; ``scope`` is ``full``, or ``quarantine`` for a revoked key."""

    token = fields.String()
    expires_in = fields.Integer()
    scope = fields.String()
    time = fields.String()


class UnsentSchema(Wire):
    """What of this job is still only on the phone, as it told last."""

    entries = fields.Integer()
    photos = fields.Integer()
    oldest = fields.String(allow_none=True)


class HeldKeySchema(Wire):
    """A person's key on a phone. ``person``: their id, ``who`` their name; ``unsent`` null before it ever told."""

    kid = fields.String()
    name = fields.String()
    person = fields.String()
    who = fields.String()
    enrolled_at = fields.String()
    last_contact = fields.String(allow_none=True)
    unsent = fields.Nested(UnsentSchema, allow_none=True)
    revoked_at = fields.String(allow_none=True)


class NameSchema(Wire):
    """What to call it."""

    name = text(200, required=True)


class RevokedSchema(Wire):
    """The server's statement that ends the key (JWS)."""

    revocation = fields.String()
