from marshmallow import fields, validate

from inspect_app.web.schemas.wire import Wire, text

MOST = 64 * 1024  # characters of a PKCS#12 file in base64; one with its chain takes some five thousand


class CountersignSchema(Wire):
    """``pkcs12``: the file in base64 (RFC 4648, 4), used for this one signature and kept nowhere; ``words``: shown over
    the countersigner's name."""

    pkcs12 = fields.String(required=True, validate=validate.Length(min=1, max=MOST))
    passphrase = fields.String(load_default="", validate=validate.Length(max=1000))
    words = text(300, load_default="", allow_none=True)


class TimeStampSchema(Wire):
    """An authority's word on when a signature was there."""

    time = fields.String()
    name = fields.String()
    fingerprint = fields.String()


class SignatureSchema(Wire):
    """``holds``: whether it verifies; ``time``: as the signer says; ``by`` and ``at``: who brought a countersignature,
    and when the server stated it."""

    name = fields.String(allow_none=True)
    fingerprint = fields.String(allow_none=True)
    time = fields.String(allow_none=True)
    stamp = fields.Nested(TimeStampSchema, allow_none=True)
    holds = fields.Boolean()
    by = fields.String(allow_none=True)
    at = fields.String(allow_none=True)


class SigningSchema(Wire):
    """The signatures of a report, the seal first; how many boxes are ``free``; whether whoever asks ``may``
    countersign; ``size`` of the file in bytes."""

    number = fields.Integer()
    signatures = fields.List(fields.Nested(SignatureSchema))
    free = fields.Integer()
    may = fields.Boolean()
    size = fields.Integer()


class SealPrintSchema(Wire):
    """The certificate that seals this server's reports, and the fingerprints to compare (64 hexadecimal digits);
    ``authority``: whether time stamps are asked for."""

    name = fields.String()
    fingerprint = fields.String()
    until = fields.String()
    server = fields.String()
    authority = fields.Boolean()
