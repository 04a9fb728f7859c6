from marshmallow import fields

from inspect_app.web.schemas.wire import JwkSchema, Wire


class ServerSchema(Wire):
    """The server's key, time and version."""

    kid = fields.String()
    jwk = fields.Nested(JwkSchema)
    time = fields.String()
    build = fields.String()


class NonceSchema(Wire):
    """A nonce to sign."""

    nonce = fields.String()
    time = fields.String()
