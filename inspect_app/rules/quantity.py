"""Quantities: ``{"value": "40", "unit": "ft"}``, a decimal string and a unit, checked and converted."""

from inspect_app.rules.decimal_text import read_decimal
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import change_unit, dimension_of

# What no roof can have: (least, most, unit). It catches the wrong unit and the forgotten exponent (an expansion of
# "6.5"), not bad work. Our choice, far outside anything built.
SANE = {
    "length": (-1000.0, 1000.0, "m"),
    "temperature": (-100.0, 200.0, "C"),
    "difference": (-300.0, 300.0, "K"),
    "expansion": (1e-6, 1e-4, "/K"),
    "slope": (0.0, 85.0, "deg"),
    "pressure": (-100.0, 100.0, "kPa"),
    "force": (-1000.0, 1000.0, "kN"),
    "stress": (0.0, 2000.0, "MPa"),
    "line_force": (0.0, 10000.0, "N/mm"),
}


def parse(quantity: object, field: str) -> tuple[float, str, str]:
    """``(number, unit, dimension)`` of a quantity.

    Raises Refused ``not_quantity``, ``not_decimal``, ``unknown_unit`` or ``out_of_range``.
    """
    if not isinstance(quantity, dict) or "value" not in quantity:
        raise Refused("not_quantity", field, quantity)
    number = read_decimal(quantity["value"], field)
    unit = quantity.get("unit")
    dimension = dimension_of(unit)
    if not isinstance(unit, str) or dimension is None:
        raise Refused("unknown_unit", field, unit)
    least, most, sane_unit = SANE[dimension]
    if unit == "deg" and not -90.0 < number < 90.0:  # beyond, the tangent comes round again
        raise Refused("out_of_range", field, _shown(quantity))
    if not least <= change_unit(number, unit, sane_unit) <= most:
        raise Refused("out_of_range", field, _shown(quantity))
    return number, unit, dimension


def convert(quantity: object, unit: str, field: str) -> float:
    """The quantity as a number of ``unit``. Raises as :func:`parse`, and Refused ``wrong_dimension``."""
    number, given, dimension = parse(quantity, field)
    if dimension != dimension_of(unit):
        raise Refused("wrong_dimension", field, _shown(quantity))
    return change_unit(number, given, unit)


def _shown(quantity: object) -> object:
    assert isinstance(quantity, dict)
    return quantity["value"] + " " + quantity["unit"]
