from marshmallow import fields

from inspect_app.web.schemas.wire import PersonSchema, Wire, text


class SignInSchema(Wire):
    """Who, and their password."""

    login = text(200, required=True)
    password = text(1000, required=True, load_only=True)


class SessionSchema(Wire):
    """Who is signed in, if anybody, and the token for changes."""

    person = fields.Nested(PersonSchema, allow_none=True)
    csrf = fields.String()
