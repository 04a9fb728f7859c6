from marshmallow import fields

from inspect_app.web.schemas.wire import Wire, text


class TextSchema(Wire):
    """What the code is to say."""

    text = text(300, required=True)  # below what a code holds, were each sign four bytes


class QrSchema(Wire):
    """``size``: the side in modules, quiet zone included; ``path``: an SVG path that fills the dark ones."""

    size = fields.Integer()
    path = fields.String()
