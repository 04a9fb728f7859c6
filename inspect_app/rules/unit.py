"""The one table of units, and the conversion between units of one dimension.

Exact by definition: 1 in = 25.4 mm (international yard, 1959), 0 °C = 32 °F with 5 K = 9 °F. A temperature and a
temperature difference are two dimensions: 200 °F of difference is 111.1 K and never meets the offset of 32.
psf: 0.45359237 kg × 9.80665 m/s² over (0.3048 m)²; lbf, psi and lbf/in from the same pound.
"""

import math

POUND = 0.45359237 * 9.80665  # of force, in newtons

# unit: (dimension, size in the dimension's own grain). The grains are chosen so that sizes are whole numbers:
# a tenth of a millimetre; a ninth of a kelvin; for 1/K and 1/°F, a fifth of 1/K.
UNITS = {
    "in": ("length", 254.0),
    "ft": ("length", 3048.0),
    "mm": ("length", 10.0),
    "cm": ("length", 100.0),
    "m": ("length", 10000.0),
    "F": ("temperature", 5.0),
    "C": ("temperature", 9.0),
    "dF": ("difference", 5.0),
    "dC": ("difference", 9.0),
    "K": ("difference", 9.0),
    "/F": ("expansion", 9.0),
    "/C": ("expansion", 5.0),
    "/K": ("expansion", 5.0),
    "/12": ("slope", 1.0),
    "deg": ("slope", 1.0),
    "%": ("slope", 1.0),
    "psf": ("pressure", POUND / 0.09290304),
    "kPa": ("pressure", 1000.0),
    "lbf": ("force", POUND),
    "N": ("force", 1.0),
    "kN": ("force", 1000.0),
    "psi": ("stress", POUND / 645.16),
    "ksi": ("stress", POUND / 0.64516),
    "MPa": ("stress", 1.0),
    "lbf/in": ("line_force", POUND / 25.4),
    "N/mm": ("line_force", 1.0),
}

SYSTEMS = {
    "US": {
        "length": "in",
        "temperature": "F",
        "difference": "dF",
        "expansion": "/F",
        "slope": "/12",
        "pressure": "psf",
        "force": "lbf",
        "stress": "psi",
        "line_force": "lbf/in",
    },
    "SI": {
        "length": "mm",
        "temperature": "C",
        "difference": "K",
        "expansion": "/K",
        "slope": "/12",
        "pressure": "kPa",
        "force": "N",
        "stress": "MPa",
        "line_force": "N/mm",
    },
}

US_UNITS = ("in", "ft", "F", "dF", "/F", "psf", "lbf", "psi", "ksi", "lbf/in")
SI_UNITS = ("mm", "cm", "m", "C", "dC", "K", "/C", "/K", "kPa", "N", "kN", "MPa", "N/mm")


def dimension_of(unit: object) -> "str | None":
    """The dimension of ``unit``, or None for a unit that is not in the table."""
    if not isinstance(unit, str) or unit not in UNITS:
        return None
    return UNITS[unit][0]


def system_of(unit: str) -> "str | None":
    """``US`` or ``SI``, or None for a unit that belongs to both (slopes, counts)."""
    if unit in US_UNITS:
        return "US"
    return "SI" if unit in SI_UNITS else None


def change_unit(number: float, source: str, target: str) -> float:
    """``number`` in ``target``, given in ``source``; both of one dimension, which the caller has checked."""
    if source == target:
        return number
    dimension, size = UNITS[source]
    if dimension == "slope":
        return from_rise(to_rise(number, source), target)
    if dimension == "temperature":
        return number * 9.0 / 5.0 + 32.0 if target == "F" else (number - 32.0) * 5.0 / 9.0
    return number * size / UNITS[target][1]


def to_rise(number: float, unit: str) -> float:
    """A slope as rise in 12, from ``/12``, ``deg`` or ``%`` (rise over run, times 100)."""
    if unit == "deg":
        return 12.0 * math.tan(number * math.pi / 180.0)
    return number * 12.0 / 100.0 if unit == "%" else number


def from_rise(rise: float, unit: str) -> float:
    """The inverse of :func:`to_rise`."""
    if unit == "deg":
        return math.atan(rise / 12.0) * 180.0 / math.pi
    return rise * 100.0 / 12.0 if unit == "%" else rise
