"""The shape of a quantity: ``{"value": "40", "unit": "ft"}``, a decimal string and a unit of the right
dimension.

Only names are checked here; what a unit is worth is the rulebook's knowledge.
"""

from inspect_app.entry.refusal import Refused
from inspect_app.entry.shape import Check, decimal

UNITS: dict[str, tuple[str, ...]] = {
    "length": ("in", "ft", "mm", "cm", "m"),
    "temperature": ("F", "C"),
    "difference": ("dF", "dC", "K"),
    "expansion": ("/F", "/C", "/K"),
    "slope": ("/12", "deg", "%"),
    "pressure": ("psf", "kPa"),
}


def quantity(dimension: str) -> Check:
    """The check for one dimension of ``UNITS``. It raises Refused ``bad_field``, ``missing_field`` or
    ``unknown_unit`` with the path of the part at fault."""
    units = UNITS[dimension]

    def check(value: object, field: str) -> None:
        if not isinstance(value, dict):
            raise Refused("bad_field", field, value)
        for member in ("value", "unit"):
            if member not in value:
                raise Refused("missing_field", f"{field}.{member}")
        decimal(value["value"], f"{field}.value")
        if value["unit"] not in units:
            raise Refused("unknown_unit", f"{field}.unit", value["unit"])

    return check
