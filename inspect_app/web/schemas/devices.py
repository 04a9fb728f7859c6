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
