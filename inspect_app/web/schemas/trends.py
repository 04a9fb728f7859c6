from marshmallow import fields, validate

from inspect_app.web.schemas.wire import Wire, text

MOST = 200  # values of one name


def several() -> fields.List:
    """Named once for each value, as ``?crew=A&crew=B``."""
    return fields.List(text(300), load_default=list, validate=validate.Length(max=MOST))


class NarrowSchema(Wire):
    """What trends are narrowed to; an empty value stands for what nobody told. Days, both inclusive, as 2026-11-25."""

    area = several()
    zone = several()
    crew = several()
    firm = several()
    assembly = several()
    severity = several()
    item = several()
    first = text(10, data_key="from", load_default=None)
    last = text(10, data_key="to", load_default=None)
    format = fields.String(load_default="json", validate=validate.OneOf(["json", "csv"]))


class TrendsSchema(Wire):
    """Trends as ``record/trends.py`` tells them. ``names``: of areas, systems and items, by their keys."""

    job = fields.String()
    names = fields.Dict()
    filters = fields.Dict()
    choices = fields.Dict()
    crews = fields.Dict()
    blind = fields.Dict()
    pareto = fields.Dict()
    shares = fields.List(fields.Dict())
    agreement = fields.Dict()
    closing = fields.Dict()
