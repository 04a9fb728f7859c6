from marshmallow import fields

from inspect_app.web.schemas.wire import Wire, text, uuid


class OptionsSchema(Wire):
    """Options for the browser's ``navigator.credentials``, bytes in base64url (WebAuthn level 3, 5.1.8 and 5.1.9)."""

    options = fields.Dict()


class CredentialSchema(Wire):
    """What the browser answered, bytes in base64url (WebAuthn level 3, 5.1: ``toJSON``)."""

    credential = fields.Dict(required=True)


class ForSchema(Wire):
    """For whom a passkey is wanted."""

    person = uuid(required=True)


class NewPasskeySchema(CredentialSchema):
    """A passkey to keep, and what to call it."""

    name = text(100, required=True)


class PasskeySchema(Wire):
    """A passkey; ``used_at``: when it last signed its person in, null before."""

    id = fields.String()
    name = fields.String()
    added_at = fields.String()
    used_at = fields.String(allow_none=True)


class PasskeysSchema(Wire):
    """A person's passkeys."""

    person = fields.String()
    passkeys = fields.List(fields.Nested(PasskeySchema))
